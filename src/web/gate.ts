// Lets one page in: a token that is good once is traded for a session cookie; guessing is slowed down.
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

const TOKEN_BYTES = 24;
const WRONG_TRIES_A_MINUTE = 5;
const MINUTE_MS = 60_000;

export type Exchange = { kind: 'in'; session: string } | { kind: 'wrong' } | { kind: 'locked' };

export class Gate {
  readonly token = randomBytes(TOKEN_BYTES).toString('base64url');
  readonly #session = randomBytes(TOKEN_BYTES).toString('base64url');
  readonly #nowMs: () => number;
  #used = false;
  #wrongTriesMs: number[] = [];

  /** `nowMs` is a clock that never steps. */
  constructor(nowMs: () => number) {
    this.#nowMs = nowMs;
  }

  /** Trades the token, once; after five wrong tries within a minute nothing is traded until that minute is over. */
  exchange(token: string): Exchange {
    const nowMs = this.#nowMs();
    this.#wrongTriesMs = this.#wrongTriesMs.filter((triedMs) => nowMs - triedMs < MINUTE_MS);
    if (this.#wrongTriesMs.length >= WRONG_TRIES_A_MINUTE) return { kind: 'locked' };
    if (!isSame(token, this.token) || this.#used) {
      this.#wrongTriesMs.push(nowMs);
      return { kind: 'wrong' };
    }
    this.#used = true;
    return { kind: 'in', session: this.#session };
  }

  knows(session: string | undefined): boolean {
    return this.#used && session !== undefined && isSame(session, this.#session);
  }
}

/** Takes as long whatever the two hold. */
function isSame(one: string, other: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(one), digest(other));
}
