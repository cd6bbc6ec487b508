// Which number somebody asked about, and the button that gets the keyboard back afterwards.
import { signal } from '@preact/signals';
import type { Explained } from '../client/types.ts';

export interface Asked {
  pan: string | null;
  what: Explained;
  button: HTMLElement;
}

export const asked = signal<Asked | null>(null);

/** The same number again closes it. */
export function askAbout(next: Asked): void {
  if (asked.value?.button === next.button) stopAsking();
  else asked.value = next;
}

/** Closes what was asked about a number. */
export function stopAsking(): void {
  const button = asked.value?.button;
  asked.value = null;
  if (button?.isConnected === true) button.focus({ preventScroll: true });
}
