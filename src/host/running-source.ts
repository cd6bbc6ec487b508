// The source of a boil that runs, which may be put in place of another while it runs: only what the present one brings is heard.
import type { Entry } from '../core/boil/entries.ts';
import type { Source, SourceItem, SourceNotice } from '../ingest/source.ts';

export interface RunningSourceOptions {
  /** Makes the source that the boil asks for now. */
  open(): Source;
  item(item: SourceItem): void;
  notice(notice: SourceNotice): void;
  /** Nothing is started any more. */
  isOver(): boolean;
}

export class RunningSource {
  readonly #options: RunningSourceOptions;
  #source: Source;
  #reopening: Promise<void> = Promise.resolve();

  constructor(options: RunningSourceOptions) {
    this.#options = options;
    this.#source = options.open();
  }

  start(): void {
    const source = this.#source;
    source.start({
      item: (item) => {
        if (source === this.#source) this.#options.item(item);
      },
      notice: (notice) => this.#options.notice(notice),
    });
  }

  /** One after the other: of two changes at once, the second waits until the first has its ports. */
  reopen(): Promise<void> {
    this.#reopening = this.#reopening.then(async () => {
      const old = this.#source;
      this.#source = this.#options.open();
      await old.stop();
      if (!this.#options.isOver()) this.start();
    });
    return this.#reopening;
  }

  /** Simulated pans first hand on what comes before an entry of a person. */
  hear(entry: Entry): void {
    this.#source.hear?.(entry);
  }

  stop(): Promise<void> {
    return this.#source.stop();
  }
}
