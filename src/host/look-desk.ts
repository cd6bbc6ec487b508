// Answers what the screen asks to see: boils, curves, what is behind a number, plans, which it may put by, doubts, and what was learnt, which it may forget.
import type { Mark } from '../core/boil/entries.ts';
import { waterThere } from '../core/boil/water-there.ts';
import { Z80 } from '../core/quantities/spread.ts';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import type { Setup } from '../protocol/header-schema.ts';
import type { LookCommand, WaterThere } from '../protocol/look-messages.ts';
import type { BoilListing, LearntListing, Settings } from '../protocol/messages.ts';
import type { BoilRun } from './boil-run.ts';
import { doubtAbout } from './doubt.ts';
import { learntListings } from './learnt.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import { planOf, planOfRunning } from './plan-desk.ts';
import { planPutBy, putPlanBy } from './plan-put-by.ts';
import type { ReplayDesk } from './replay/replay-desk.ts';

export interface LookDeskOptions {
  notebook: Notebook;
  settings(): Settings;
  /** The boil that runs or has just ended, and the one that is replayed. */
  run(): BoilRun | null;
  replay(): ReplayDesk['view'];
  /** What the next boil is likely to begin with. */
  nextSetup(): Setup | null;
}

type Of<Key extends string> = Extract<LookCommand, Record<Key, unknown>>[Key];

export class LookDesk {
  readonly #options: LookDeskOptions;

  constructor(options: LookDeskOptions) {
    this.#options = options;
  }

  do(command: LookCommand): Outcome {
    const { notebook, nextSetup, settings } = this.#options;
    if ('last_setup' in command) return { ok: true, data: nextSetup() };
    if ('boils' in command) return { ok: true, data: notebook.boils().map(listing) };
    if ('learnt' in command) return { ok: true, data: this.#learnt() };
    if ('forget' in command) return this.#forget(command.forget.name);
    if ('curve' in command) return this.#curve(command.curve);
    if ('explain' in command) return this.#explain(command.explain);
    if ('water_at' in command) return { ok: true, data: waterAt(command.water_at.altitude_m) };
    if ('doubt' in command) return this.#doubt(command.doubt as Mark);
    if ('plan' in command) return planOf(command.plan, settings().use_learnt ? notebook.learnt() : []);
    if ('plan_put_by' in command) return { ok: true, data: planPutBy(notebook) };
    if ('put_plan_by' in command) return putPlanBy(notebook, command.put_plan_by);
    const run = this.#options.run();
    return planOfRunning(run === null || run.isOver ? null : run.snapshot());
  }

  #learnt(): LearntListing[] {
    const { notebook } = this.#options;
    return learntListings(notebook.learnt(), (boil) => notebook.header(boil));
  }

  #forget(name: string): Outcome {
    const isKnown = this.#learnt().some((listing) => listing.name === name);
    if (!isKnown) return refused(`Nothing was learned under the name "${name}".`);
    this.#options.notebook.forget(name);
    return done;
  }

  #viewed(view: 'live' | 'replay'): Pick<BoilRun, 'curveBetween' | 'explain'> | null {
    return view === 'replay' ? this.#options.replay() : this.#options.run();
  }

  #curve({ view, pan, from, to, points }: Of<'curve'>): Outcome {
    const curve = this.#viewed(view)?.curveBetween(pan, from, to, points);
    return curve === undefined ? refused('There is no boil to draw.') : { ok: true, data: curve };
  }

  #explain({ view, pan, what }: Of<'explain'>): Outcome {
    const told = this.#viewed(view)?.explain(pan, what) ?? null;
    return told === null ? refused('That pan is not in this boil any more.') : { ok: true, data: told };
  }

  #doubt(mark: Mark): Outcome {
    const run = this.#options.run();
    if (run === null) return refused('No boil is running.');
    const { state, t } = run.look();
    return { ok: true, data: doubtAbout(mark, state, t) };
  }
}

function listing({ kind, ...boil }: BoilSummary): BoilListing {
  return { kind: 'boil', ...boil, practice: kind === 'practice' };
}

function waterAt(altitudeM: number): WaterThere | null {
  const there = waterThere({ altitude_m: altitudeM });
  if (there === null) return null;
  const { celsius, sigmaC } = there;
  return { celsius, low: celsius - Z80 * sigmaC, high: celsius + Z80 * sigmaC };
}
