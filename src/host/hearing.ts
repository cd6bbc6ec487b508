// Knows whether anybody could hear a call now: a page that can sound says so once a second, and one that is gone says nothing.
import type { PageReport } from '../protocol/messages.ts';

/** Pages speak once a second; with a look each second, a page that fell silent is missed within 5 s. */
const HEARD_FOR_MS = 3500;

type Audio = PageReport['audio'];

const REASONS: Record<Exclude<Audio, 'running'>, string> = {
  suspended: 'the page may not sound before somebody taps it',
  closed: "the page's sound was closed: load it again",
  none: 'the machine of the page has no sound device',
};

export class Hearing {
  #soundingMs = Number.NEGATIVE_INFINITY;
  #silent: { audio: Exclude<Audio, 'running'>; ms: number } | null = null;

  /** A page's sign of life at a moment of a clock that never steps, ms. */
  report(audio: Audio, ms: number): void {
    if (audio === 'running') this.#soundingMs = ms;
    else this.#silent = { audio, ms };
  }

  /** The last moment at which a page said that it can sound, ms; minus infinity before the first. */
  get soundingMs(): number {
    return this.#soundingMs;
  }

  /** Whether a call could be heard now. */
  canHear(nowMs: number): boolean {
    return nowMs - this.#soundingMs < HEARD_FOR_MS;
  }

  /** Why a call could not be heard. */
  why(nowMs: number): string {
    const silent = this.#silent;
    if (silent === null || nowMs - silent.ms >= HEARD_FOR_MS) return 'no page that can sound is open or answers';
    return REASONS[silent.audio];
  }
}
