// Single-letter keys for the whole page; the latest view to claim a letter has it, and typing is left alone.
import { useLayoutEffect, useRef } from 'preact/hooks';

type Claim = { key: string; act: () => void };
const claims: Claim[] = [];

function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || ['INPUT', 'SELECT', 'TEXTAREA'].includes(target.tagName);
}

/** Starts listening, once, when the page starts. */
export function listenForKeys(): void {
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (isTyping(event.target) && event.key !== 'Escape') return;
    const pressed = event.key === ' ' ? 'space' : event.key.toLowerCase();
    if (pressed === 'space' && event.target instanceof HTMLButtonElement) return;
    const claim = claims.findLast((each) => each.key.toLowerCase() === pressed);
    if (claim === undefined) return;
    event.preventDefault();
    claim.act();
  });
}

/** Claims a key while the component is shown; null claims nothing. */
export function useKey(key: string | null, act: () => void): void {
  const latest = useRef(act);
  latest.current = act;
  // Before the next key can be pressed, so that two quick keys both find what they are for.
  useLayoutEffect(() => {
    if (key === null) return;
    const claim: Claim = { key, act: () => latest.current() };
    claims.push(claim);
    return () => void claims.splice(claims.indexOf(claim), 1);
  }, [key]);
}
