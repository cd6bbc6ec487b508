// `tune`: runs the boils of the notebook again under each settings file, and prints how each would have done.
import { offsetSentence, probeOffsets } from '../core/tuning/probe-offset.ts';
import type { OffsetFacts } from '../core/tuning/probe-offset.ts';
import type { BoilScore } from '../core/tuning/score.ts';
import { dataFolder } from '../host/data-folder.ts';
import { tuneBoils } from '../host/tuning/tune.ts';
import type { Tuned } from '../host/tuning/tune-boil.ts';
import type { TuneAnswer } from '../host/tuning/tune-worker.ts';
import { openNotebook } from '../notebook/open-notebook.ts';
import type { BoilSummary } from '../notebook/contract.ts';
import { CommandProblem } from './failure.ts';
import { readPatch } from './patches.ts';
import { printer } from './printer.ts';

export interface TuneOptions {
  data?: string;
  json?: boolean;
  with: string[];
  boil: string[];
}

/** One line for each boil and file, in the order of `boils` and of the files. A file that does not fit a boil ends with 2. */
export async function tune(options: TuneOptions): Promise<void> {
  if (options.with.length === 0) throw new CommandProblem('tune: name a settings file with --with.', 2);
  const patches = await Promise.all(options.with.map(readPatch));
  const files = patches.map(({ file, patch }) => ({ name: file, patch }));
  const folder = dataFolder(options.data);
  const boils = chosen(folder, options.boil);
  const out = printer();
  if (!options.json) out.line(TITLES);
  const facts: OffsetFacts[] = [];
  /** Held back, for it carries what all boils together tell of the probes. */
  const held: { line: ReturnType<typeof tunedLine> | null } = { line: null };
  const isMadeUp = new Set(boils.filter(({ kind }) => kind === 'practice').map(({ boil }) => boil));
  const order = new InOrder(boils, (answer) => {
    if ('problem' in answer) return say(`${answer.boil}: ${answer.problem}`, 1);
    if (!isMadeUp.has(answer.boil)) facts.unshift(answer.facts);
    for (const one of answer.tuned) {
      if ('why' in one) say(`${one.with}: with it the header of ${one.boil} does not hold together: ${one.why}`, 2);
      if (!options.json) out.line(tunedText(one));
      else {
        if (held.line !== null) out.line(JSON.stringify(held.line));
        held.line = tunedLine(one);
      }
    }
  });
  const showsProgress = process.stderr.isTTY;
  const tuning = tuneBoils(
    folder,
    boils,
    files,
    {
      done: (answer) => order.take(answer),
      progress: (share, left) => void (showsProgress && process.stderr.write(progressText(share, left))),
    },
    () => performance.now(),
  );
  process.once('SIGINT', () => tuning.stop());
  await tuning.finished;
  order.rest();
  const probe_offsets = probeOffsets(facts);
  if (held.line !== null) out.line(JSON.stringify({ ...held.line, probe_offsets }));
  if (!options.json) for (const one of probe_offsets) out.line(offsetSentence(one));
  await out.flush();
}

function chosen(folder: string, names: readonly string[]): BoilSummary[] {
  const notebook = openNotebook(folder, { readOnly: true });
  try {
    return names.length === 0 ? notebook.boils() : names.map((name) => notebook.find(name));
  } finally {
    notebook.close();
  }
}

function say(sentence: string, code: 1 | 2): void {
  process.stderr.write(`${sentence.replace(/\.$/, '')}.\n`);
  process.exitCode = Math.max(code, Number(process.exitCode ?? 0));
}

const progressText = (share: number, left: number | null): string =>
  `\r${Math.round(share * 100)} % done${left === null ? '' : `, about ${Math.ceil(left)} s to go`}   ${share === 1 ? '\n' : ''}`;

/** Answers come as they are done; they are given on in the order of the boils. */
class InOrder {
  readonly #waiting: string[];
  readonly #take: (answer: TuneAnswer) => void;
  readonly #early = new Map<string, TuneAnswer>();

  constructor(boils: readonly BoilSummary[], take: (answer: TuneAnswer) => void) {
    this.#waiting = boils.map(({ boil }) => boil);
    this.#take = take;
  }

  take(answer: TuneAnswer): void {
    this.#early.set(answer.boil, answer);
    for (let next = this.#early.get(this.#waiting[0] ?? ''); next !== undefined;) {
      this.#take(next);
      this.#waiting.shift();
      next = this.#early.get(this.#waiting[0] ?? '');
    }
  }

  /** What is done of a work that was stopped in the middle. */
  rest(): void {
    for (const boil of this.#waiting) if (this.#early.has(boil)) this.#take(this.#early.get(boil)!);
  }
}

const NOTHING_KNOWN = {
  near_finish_lead_s: null,
  finish_brix: null,
  scorch_lead_s: null,
  false_calls: null,
  alarms: null,
};

type Shown = { [Name in keyof typeof NOTHING_KNOWN]: number | null };

function shown(tuned: Tuned): Shown {
  if ('why' in tuned) return NOTHING_KNOWN;
  const { score } = tuned;
  return { ...rounded(score), false_calls: score.false_calls, alarms: score.alarms };
}

function rounded({ near_finish_lead_s, finish_brix, scorch_lead_s }: BoilScore) {
  return {
    near_finish_lead_s: near_finish_lead_s === null ? null : Math.round(near_finish_lead_s),
    finish_brix: finish_brix === null ? null : Math.round(finish_brix * 10) / 10,
    scorch_lead_s: scorch_lead_s === null ? null : Math.round(scorch_lead_s),
  };
}

function tunedLine(tuned: Tuned): { kind: 'tuned'; boil: string; with: string } & Shown {
  return { kind: 'tuned', boil: tuned.boil, with: tuned.with, ...shown(tuned) };
}

const TITLES = 'near finish   at finish   scorch      false   all calls   boil, settings';

function tunedText(tuned: Tuned): string {
  const { near_finish_lead_s: near, finish_brix: brix, scorch_lead_s: scorch, false_calls, alarms } = shown(tuned);
  const cells = [
    minutes(near).padEnd(13),
    (brix === null ? '–' : `${brix.toFixed(1)} °Bx`).padEnd(11),
    minutes(scorch).padEnd(11),
    String(false_calls ?? '–').padEnd(7),
    String(alarms ?? '–').padEnd(11),
  ];
  return `${cells.join(' ')} ${tuned.boil}, ${tuned.with}`;
}

const minutes = (seconds: number | null): string => (seconds === null ? '–' : `${(seconds / 60).toFixed(1)} min`);
