// Works out the facts of one boil after the other, in the background.
import type { Notebook } from '../notebook/contract.ts';
import type { MachineClock } from './clock.ts';
import { workOutFacts } from './season-facts.ts';

export class SeasonWorker {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  #wanted: string[] = [];
  /** Boils that cannot be worked out; they are not tried again and again. */
  readonly #failed = new Set<string>();
  #working: Promise<void> | null = null;
  #isClosed = false;

  constructor(notebook: Notebook, machine: MachineClock) {
    this.#notebook = notebook;
    this.#machine = machine;
  }

  /** How many are still to be done. */
  get left(): number {
    return this.#wanted.length;
  }

  /** Puts a boil at the end of those that wait, or, when somebody looks at it, at the front. */
  want(boil: string, first = false): void {
    if (this.#failed.has(boil) || this.#isClosed) return;
    if (this.#wanted.includes(boil)) {
      if (!first || this.#wanted[0] === boil) return;
      // The first one is being worked out now.
      this.#wanted = [this.#wanted[0]!, boil, ...this.#wanted.slice(1).filter((one) => one !== boil)];
      return;
    }
    this.#wanted.push(boil);
    this.#working ??= this.#work();
  }

  /** Resolves when nothing is left to do. */
  async idle(): Promise<void> {
    await this.#working;
  }

  close(): void {
    this.#isClosed = true;
    this.#wanted = [];
  }

  async #work(): Promise<void> {
    for (let boil = this.#wanted[0]; boil !== undefined; boil = this.#wanted[0]) {
      await new Promise<void>((goOn) => this.#machine.after(0, goOn));
      if (this.#isClosed) break;
      try {
        await workOutFacts(this.#notebook, boil, this.#machine);
      } catch {
        // A boil that the notebook cannot read is told of by its own check; its figures stay not known.
        this.#failed.add(boil);
      }
      this.#wanted = this.#wanted.filter((one) => one !== boil);
    }
    this.#working = null;
  }
}
