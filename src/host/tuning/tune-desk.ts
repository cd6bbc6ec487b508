// Does what is asked of tuning: starts it beside a boil that runs, says how far it is, keeps what is done, and applies nothing by itself.
import { availableParallelism } from 'node:os';
import { mergePatch } from '../../core/boil/merge-patch.ts';
import { type SearchedSettings, type Trial, trialsOf } from '../../core/tuning/search.ts';
import type { BoilSummary, Notebook } from '../../notebook/contract.ts';
import { checkHeader } from '../../protocol/header-schema.ts';
import { AS_IT_WAS, AS_SET_NOW, BESIDE_THEM } from '../../protocol/tune-messages.ts';
import type { TuneCommand, TuneView, TuningNow } from '../../protocol/tune-messages.ts';
import type { MachineClock } from '../clock.ts';
import { done, refused } from '../outcome.ts';
import type { Outcome } from '../outcome.ts';
import { ProbeOffsets } from './probe-offsets.ts';
import { type Tuning, tuneBoils } from './tune.ts';
import type { SettingsFile, Tuned } from './tune-boil.ts';
import { proposalOf, settingRow } from './tune-view.ts';
import type { TuneAnswer } from './tune-worker.ts';

type Asked = Extract<TuneCommand, { tune_start: unknown }>['tune_start'];

/** One tuning: what it was asked and what has come of it. */
interface Work {
  boils: Map<string, BoilSummary>;
  files: SettingsFile[];
  /** Which file holds what is set now, and what each file of the search tries. */
  base: string | null;
  trials: { file: string; trial: Trial }[];
  tuned: Tuned[];
  problems: string[];
  done: number;
  share: number;
  secondsLeft: number | null;
  isRunning: boolean;
  wasStopped: boolean;
  tuning: Tuning | null;
}

const UNCHANGED: SettingsFile = { name: AS_IT_WAS, patch: {} };

export class TuneDesk {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #settings: () => SearchedSettings;
  readonly #tell: (now: TuningNow) => void;
  readonly #offsets: ProbeOffsets;
  #work: Work | null = null;

  /** `settings` are those that new boils are started with; `tell` hears how far it is. */
  constructor(
    notebook: Notebook,
    machine: MachineClock,
    settings: () => SearchedSettings,
    tell: (now: TuningNow) => void,
  ) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#settings = settings;
    this.#tell = tell;
    this.#offsets = new ProbeOffsets(notebook, machine);
  }

  async do(command: TuneCommand): Promise<Outcome> {
    if ('tune_start' in command) return this.#start(command.tune_start);
    if ('tune_look' in command) return { ok: true, data: this.#work === null ? null : viewOf(this.#work) };
    if ('probe_offsets' in command) return { ok: true, data: await this.#offsets.all() };
    this.#stop();
    return done;
  }

  /** Resolves when nothing is being worked out any more. */
  async idle(): Promise<void> {
    await Promise.all([this.#work?.tuning?.finished, this.#offsets.idle()]);
  }

  close(): void {
    this.#stop();
    this.#offsets.close();
  }

  #start(asked: Asked): Outcome {
    if (this.#work?.isRunning === true) return refused('Tuning is running already: stop it first.');
    if (asked.settings.length === 0 && asked.search.length === 0)
      return refused('Name settings to try, or what to search for.');
    const all =
      asked.boils.length === 0 ? this.#notebook.boils() : asked.boils.map((name) => this.#notebook.find(name));
    const boils = all.filter(({ running }) => !running);
    if (boils.length === 0) return refused('There is no boil that is over.');
    const names = new Set(BESIDE_THEM);
    for (const { name, patch } of asked.settings) {
      if (names.has(name)) return refused(`The name "${name}" is there twice: give each of the settings its own.`);
      names.add(name);
      const why = this.#misfit(patch, boils);
      if (why !== null) return refused(`${name}: with it the header does not hold together: ${why}.`);
    }
    this.#work = this.#begin(asked, boils);
    this.#tell(nowOf(this.#work));
    return done;
  }

  /** Why a patch fits not one of the boils; null where it fits some. */
  #misfit(patch: object, boils: readonly BoilSummary[]): string | null {
    let first: string | null = null;
    for (const { boil } of boils) {
      const checked = checkHeader(mergePatch(this.#notebook.header(boil), patch));
      if (checked.ok) return null;
      first ??= checked.why;
    }
    return first;
  }

  #begin(asked: Asked, boils: readonly BoilSummary[]): Work {
    const now = this.#settings();
    const trials = trialsOf(asked.search, now).map((trial) => ({ file: trial.name, trial }));
    const searched = trials.map(({ file, trial }) => ({
      name: file,
      patch: { settings: { ...now, ...trial.settings } },
    }));
    const base = asked.search.length === 0 ? [] : [{ name: AS_SET_NOW, patch: { settings: now } }];
    const work: Work = {
      boils: new Map(boils.map((summary) => [summary.boil, summary])),
      files: [UNCHANGED, ...asked.settings, ...base, ...searched],
      base: base[0]?.name ?? null,
      trials,
      ...{ tuned: [], problems: [], done: 0, share: 0, secondsLeft: null },
      ...{ isRunning: true, wasStopped: false, tuning: null },
    };
    const threads = Math.max(1, availableParallelism() - 1);
    const tell = (): void => this.#tell(nowOf(work));
    const listener = {
      done: (answer: TuneAnswer) => take(work, answer),
      progress: (share: number, secondsLeft: number | null) => {
        Object.assign(work, { share, secondsLeft });
        tell();
      },
    };
    work.tuning = tuneBoils(
      this.#notebook.folder,
      boils,
      work.files,
      listener,
      () => this.#machine.monotonicMs(),
      threads,
    );
    const over = (): void => {
      work.isRunning = false;
      tell();
    };
    work.tuning.finished.then(over, (error: unknown) => {
      work.problems.push(`Tuning broke off: ${error instanceof Error ? error.message : String(error)}.`);
      work.wasStopped = true;
      over();
    });
    return work;
  }

  #stop(): void {
    if (this.#work?.isRunning !== true) return;
    this.#work.wasStopped = true;
    this.#work.tuning?.stop();
  }
}

function take(work: Work, answer: TuneAnswer): void {
  work.done += 1;
  if ('problem' in answer) work.problems.push(`${answer.boil}: ${answer.problem}`);
  else work.tuned.push(...answer.tuned);
}

function nowOf({ isRunning: running, share, secondsLeft, done, boils }: Work): TuningNow {
  return { kind: 'tuning', running, share, secondsLeft: running ? secondsLeft : null, done, boils: boils.size };
}

function viewOf(work: Work): TuneView {
  const { kind: _, ...now } = nowOf(work);
  const of = (name: string): Tuned[] => work.tuned.filter((one) => one.with === name);
  const isOver = !work.isRunning && work.base !== null;
  return {
    ...now,
    stopped: work.wasStopped,
    settings: work.files.map((file) => settingRow(file, of(file.name), work.boils)),
    proposal: isOver
      ? proposalOf(
          of(work.base!),
          work.trials.map(({ file, trial }) => ({ trial, tuned: of(file) })),
        )
      : null,
    problems: work.problems,
  };
}
