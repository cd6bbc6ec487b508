// What is said to whoever watches a boil: its last sentences, of which those on a board that is read again go.
import type { SourceNotice } from '../ingest/source.ts';

const MOST_NOTICES = 5;

export class SaidNotices {
  #sentences: string[] = [];
  /** Those of a port that hold until it opens again. */
  #troubles: SourceNotice[] = [];

  /** The newest last. */
  get sentences(): readonly string[] {
    return this.#sentences;
  }

  /** False where the same was said last: then nobody is told again. */
  hear(notice: SourceNotice): boolean {
    if (this.#sentences.at(-1) === notice.sentence) return false;
    this.#sentences = [...this.#sentences, notice.sentence].slice(-MOST_NOTICES);
    if (notice.untilOpen === true) this.#troubles.push(notice);
    return true;
  }

  /** A board that is read again is not said to be gone. */
  troubleIsOver(port: string): void {
    const over = this.#troubles.filter((trouble) => trouble.port === port);
    this.#troubles = this.#troubles.filter((trouble) => trouble.port !== port);
    this.#sentences = this.#sentences.filter((sentence) => over.every((trouble) => trouble.sentence !== sentence));
  }

  /** Forgets what was said; gives it back for `restore`, where what was begun comes to nothing. */
  clear(): readonly string[] {
    const before = this.#sentences;
    this.#sentences = [];
    return before;
  }

  /** What was said before stands again, before what was said since. */
  restore(before: readonly string[]): void {
    this.#sentences = [...before, ...this.#sentences];
  }
}
