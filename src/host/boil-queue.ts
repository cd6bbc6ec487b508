// Works out one boil after the other, in the background, in the order in which somebody looks at them.
import type { MachineClock } from './clock.ts';

export class BoilQueue {
  readonly #machine: MachineClock;
  readonly #workOut: (boil: string) => Promise<unknown>;
  #wanted: string[] = [];
  /** Boils that cannot be worked out; they are not tried again and again. */
  readonly #failed = new Set<string>();
  #working: Promise<void> | null = null;
  #isClosed = false;

  /** `workOut` works in slices and keeps what comes of it. */
  constructor(machine: MachineClock, workOut: (boil: string) => Promise<unknown>) {
    this.#machine = machine;
    this.#workOut = workOut;
  }

  /** How many are still to be done. */
  get left(): number {
    return this.#wanted.length;
  }

  /** It was tried and cannot be read. */
  hasFailed(boil: string): boolean {
    return this.#failed.has(boil);
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

  /** Works nothing out any more; what is under way is left. */
  close(): void {
    this.#isClosed = true;
    this.#wanted = [];
  }

  async #work(): Promise<void> {
    for (let boil = this.#wanted[0]; boil !== undefined; boil = this.#wanted[0]) {
      await new Promise<void>((goOn) => this.#machine.after(0, goOn));
      if (this.#isClosed) break;
      try {
        await this.#workOut(boil);
      } catch {
        // A boil that the notebook cannot read is told of by its own check; its figures stay not known.
        this.#failed.add(boil);
      }
      this.#wanted = this.#wanted.filter((one) => one !== boil);
    }
    this.#working = null;
  }
}
