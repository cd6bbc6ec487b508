// Tunes many boils at once on all cores, says how far it is, and keeps what is done when it is stopped.
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { BoilSummary } from '../../notebook/contract.ts';
import { programFile } from '../../program/program-files.ts';
import type { SettingsFile } from './tune-boil.ts';
import type { TuneAnswer } from './tune-worker.ts';

export interface TuneListener {
  /** One boil is done; in whatever order they are. */
  done(answer: TuneAnswer): void;
  /** Share of the work that is done, 0 to 1, and the time that the rest will take, s; null until that can be told. */
  progress?(share: number, secondsLeft: number | null): void;
}

export interface Tuning {
  /** Resolves when all is done or it was stopped. Rejects where a thread fails as a whole. */
  readonly finished: Promise<void>;
  stop(): void;
}

/**
 * What a fold throws away at once has room in 16 MB a thread: left alone it takes 50 MB and is hardly faster, in 8 MB a
 * sixth slower. The other limit is far more than any boil needs, but the less an engine may take the sooner it looks for
 * what is left lying: 60 MB a thread.
 */
const resourceLimits = { maxYoungGenerationSizeMb: 16, maxOldGenerationSizeMb: 512 };

/**
 * `boils` are tuned in their order, the next one by the thread that is free first; `nowMs` is a clock that never steps.
 * A program that watches pans beside it leaves itself a core.
 */
export function tuneBoils(
  folder: string,
  boils: readonly BoilSummary[],
  files: readonly SettingsFile[],
  listener: TuneListener,
  nowMs: () => number,
  mostThreads = availableParallelism(),
): Tuning {
  const waiting = [...boils];
  const progress = new Progress(boils, nowMs);
  let stopped = false;
  const threads = Array.from({ length: Math.min(boils.length, mostThreads) }, () => startThread());

  function startThread(): { worker: Worker; ended: Promise<void> } {
    const url = programFile('./tune-worker', import.meta.url);
    const worker = new Worker(url, { workerData: { folder, files }, resourceLimits });
    const { promise, resolve, reject } = Promise.withResolvers<void>();
    const next = (): void => {
      const boil = stopped ? undefined : waiting.shift();
      if (boil === undefined) void worker.terminate();
      else worker.postMessage(boil.boil);
    };
    worker.on('message', (answer: TuneAnswer) => {
      listener.done(answer);
      listener.progress?.(...progress.after(answer.boil));
      next();
    });
    worker.on('error', reject);
    worker.on('exit', () => resolve());
    next();
    return { worker, ended: promise };
  }

  return {
    finished: Promise.all(threads.map((thread) => thread.ended)).then(() => {}),
    stop: () => {
      stopped = true;
      for (const { worker } of threads) void worker.terminate();
    },
  };
}

/** By entries, for a boil takes as long as it is. */
class Progress {
  readonly #entries: Map<string, number>;
  readonly #all: number;
  readonly #nowMs: () => number;
  readonly #startedMs: number;
  #done = 0;

  constructor(boils: readonly BoilSummary[], nowMs: () => number) {
    this.#entries = new Map(boils.map(({ boil, entries }) => [boil, entries + 1]));
    this.#all = [...this.#entries.values()].reduce((sum, entries) => sum + entries, 0);
    this.#nowMs = nowMs;
    this.#startedMs = nowMs();
  }

  after(boil: string): [share: number, secondsLeft: number | null] {
    this.#done += this.#entries.get(boil) ?? 0;
    const spentS = (this.#nowMs() - this.#startedMs) / 1000;
    return [this.#done / this.#all, (spentS / this.#done) * (this.#all - this.#done)];
  }
}
