// Finds what to add to each probe's number from all boils that are kept: what each of them tells is worked out once, in slices, and kept.
import { startBoil } from '../../core/boil/fold.ts';
import { offsetFacts, type OffsetFacts, offsetSentence, probeOffsets } from '../../core/tuning/probe-offset.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { OffsetsView } from '../../protocol/tune-messages.ts';
import { BoilQueue } from '../boil-queue.ts';
import type { MachineClock } from '../clock.ts';
import { figuresKey } from '../figures-key.ts';
import { foldSteps } from '../fold-steps.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';
import { inSlices } from '../slices.ts';

const KEY = figuresKey('probe facts', 1);

export class ProbeOffsets {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #queue: BoilQueue;

  constructor(notebook: Notebook, machine: MachineClock) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#queue = new BoilQueue(machine, (boil) => this.#workOut(boil));
  }

  /** The probes of the last boil that is no practice, of which any boil told; practice boils tell nothing. */
  async all(): Promise<OffsetsView> {
    const summaries = this.#notebook.boils().filter(({ kind, running }) => kind !== 'practice' && !running);
    const facts: OffsetFacts[] = [];
    let working = 0;
    for await (const { boil } of inSlices(summaries.toReversed(), this.#machine)) {
      const found = this.#notebook.figures(boil, KEY) as OffsetFacts | null;
      if (found !== null) facts.push(found);
      else if (!this.#queue.hasFailed(boil)) {
        this.#queue.want(boil);
        working += 1;
      }
    }
    const probes = probeOffsets(facts).map((one) => ({ ...one, sentence: offsetSentence(one) }));
    return { probes, working };
  }

  /** Resolves when nothing is left to read. */
  idle(): Promise<void> {
    return this.#queue.idle();
  }

  close(): void {
    this.#queue.close();
  }

  async #workOut(boil: string): Promise<void> {
    const silent = { alarm: () => {}, readings: () => {} };
    const folding = new Folding(startBoil(this.#notebook.header(boil)), foldTools, silent, null);
    for await (const _ of inSlices(foldSteps(this.#notebook.entries(boil), folding), this.#machine));
    this.#notebook.keepFigures(boil, KEY, offsetFacts(folding.state));
  }
}
