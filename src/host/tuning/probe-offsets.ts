// Finds what to add to each probe's number from all boils that are kept: what each of them tells is worked out once, in slices, and kept.
import { startBoil } from '../../core/boil/fold.ts';
import { hardwareOf, offsetFrom, type ProbeError, probeErrors } from '../../core/tuning/offset.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { OffsetsView } from '../../protocol/tune-messages.ts';
import { BoilQueue } from '../boil-queue.ts';
import type { MachineClock } from '../clock.ts';
import { figuresKey } from '../figures-key.ts';
import { foldSteps } from '../fold-steps.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';
import { inSlices } from '../slices.ts';

const KEY = figuresKey('probe errors', 1);

export class ProbeOffsets {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #queue: BoilQueue;

  constructor(notebook: Notebook, machine: MachineClock) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#queue = new BoilQueue(machine, (boil) => this.#workOut(boil));
  }

  /** The probes of the last boil that is no practice, each by all boils that had the same one. */
  async all(): Promise<OffsetsView> {
    const summaries = this.#notebook.boils().filter(({ kind, running }) => kind !== 'practice' && !running);
    const errors: ProbeError[] = [];
    let working = 0;
    for await (const { boil } of inSlices(summaries.toReversed(), this.#machine)) {
      const found = this.#notebook.figures(boil, KEY) as ProbeError[] | null;
      if (found !== null) errors.push(...found);
      else if (!this.#queue.hasFailed(boil)) {
        this.#queue.want(boil);
        working += 1;
      }
    }
    const newest = summaries[0];
    const probes = newest === undefined ? [] : (this.#notebook.header(newest.boil).probes ?? []);
    const byHardware = Map.groupBy(errors, ({ hardware }) => hardware);
    return { probes: probes.map((probe) => offsetFrom(probe, byHardware.get(hardwareOf(probe)) ?? [])), working };
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
    let t = 0;
    for await (const step of inSlices(foldSteps(this.#notebook.entries(boil), folding), this.#machine)) t = step.t;
    this.#notebook.keepFigures(boil, KEY, probeErrors(folding.state, t));
  }
}
