// Begins boils, live and practice, and takes up the one that was running when the program stopped.
import { advance, applyEntry, startBoil } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import type { Header, Learnt } from '../core/boil/entries.ts';
import { practiceScenario } from '../core/simulation/practice-scenario.ts';
import { practiceSource } from '../ingest/practice-source.ts';
import { serialSource } from '../ingest/serial-source.ts';
import type { Source } from '../ingest/source.ts';
import type { SerialSourceOptions } from '../ingest/serial-source.ts';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import type { Setup } from '../protocol/header-schema.ts';
import type { MovedPort, PracticeWish, Settings } from '../protocol/messages.ts';
import { parseEntry } from '../protocol/recording.ts';
import { BoardsSeen } from './boards-seen.ts';
import { BoilRun } from './boil-run.ts';
import type { RunListener } from './boil-run.ts';
import { BoilClock, isoWithOffset, resumedT } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { BUCKET_MS, CurveStore } from './curve.ts';
import { foldTools } from './fold-tools.ts';
import { learntFor } from './learnt.ts';
import { checkTeachings, keptProbes, newestFirst } from './probes/kept-probes.ts';
import { headerOf, keptSetup, portsToOpen, practiceHeader } from './setup.ts';
import { isTrial } from './trial-boil.ts';

/** The same practice for everybody: what it teaches was looked at. */
const PRACTICE_SEED = 1;
const SETUP_KEY = 'setup';
const CHANGED_KEY = 'setup_changed';
/** What the form began with before a boil that was only tried out. */
const BEFORE_KEY = 'setup_before';

/** Where a run begins. */
interface Begun {
  /** Its fire burnt before the program saw it: time goes on from there, and nothing is known of what was missed. */
  ranBefore: boolean;
  /** What its entries until now make; null where there are none. */
  kept: { state: BoilState; curve: CurveStore } | null;
  /** A practice for whoever learns to answer its calls. */
  slowForCalls?: boolean;
}
const NEW: Begun = { ranBefore: false, kept: null };

export interface StarterOptions {
  notebook: Notebook;
  machine: MachineClock;
  everyMs: number | null;
  listener: RunListener;
  changed(urgent: boolean): void;
  /** The board of a port may be elsewhere; null when that is over. */
  asks(port: string, moved: MovedPort | null): void;
  /** What lists and opens ports; the system's own list and Node's own processes where nothing is said. */
  ports?: Pick<SerialSourceOptions, 'list' | 'openPort'> | undefined;
}

export class BoilStarter {
  readonly #options: StarterOptions;
  readonly #boards: BoardsSeen;

  constructor(options: StarterOptions) {
    this.#options = options;
    this.#boards = new BoardsSeen(options.notebook);
  }

  /** The setup of the last live boil, or null. */
  lastSetup(): Setup | null {
    return keptSetup(this.#options.notebook.setting(SETUP_KEY));
  }

  /**
   * The same with what was changed while it ran: what the next boil is likely to begin with. Of a boil that was only
   * tried out, what stood here before it.
   */
  nextSetup(): Setup | null {
    const before = this.#wasTrial() ? keptSetup(this.#options.notebook.setting(BEFORE_KEY)) : null;
    return before ?? this.#lastChanged();
  }

  #lastChanged(): Setup | null {
    const setup = this.lastSetup();
    return setup === null ? null : keptSetup({ ...setup, ...(this.#options.notebook.setting(CHANGED_KEY) as object) });
  }

  #wasTrial(): boolean {
    const { notebook } = this.#options;
    const last = notebook.boils().find(({ kind }) => kind === 'live');
    return last !== undefined && isTrial(notebook, last);
  }

  /** Keeps how pans and place of a live boil stand after a change of them. */
  keepChanged({ site, pans }: Header): void {
    this.#options.notebook.keepSetting(CHANGED_KEY, JSON.parse(JSON.stringify({ site, pans })));
  }

  /**
   * Begins with what earlier boils taught, unless the setup says what to begin with, or it or the person's settings say
   * that nothing is to be used. `litMs` is when the fire was lit, ms since 1970, if that was before now: the boil is then
   * as old as its fire, and nothing is known of the time until now. Throws NotebookProblem when the boil cannot be
   * written down.
   */
  beginLive(setup: Setup, settings: Settings, litMs: number | null = null): BoilRun {
    const { notebook } = this.#options;
    const header = headerOf(setup, litMs === null ? this.#startedNow() : isoWithOffset(litMs), settings);
    const learnt = header.learnt ?? this.taught(setup, settings);
    const before = this.#wasTrial() ? null : this.#lastChanged();
    const boil = notebook.begin(learnt === undefined ? header : { ...header, learnt }, 'live');
    if (before !== null) notebook.keepSetting(BEFORE_KEY, before);
    notebook.keepSetting(SETUP_KEY, setup);
    notebook.keepSetting(CHANGED_KEY, {});
    const begun = litMs === null ? NEW : { ...NEW, ranBefore: true };
    return this.#newRun(boil, 1, begun, (clock) => this.#serialPorts(boil.boil, clock));
  }

  /** What earlier boils, where they are to count, and checks outside of a boil taught of the pans and probes of a setup. */
  taught(setup: Setup, settings: Settings): Learnt | undefined {
    const { notebook } = this.#options;
    const isUsed = setup.settings?.use_learnt ?? settings.use_learnt;
    // What somebody checked stands, whether earlier boils are to count or not.
    const checks = checkTeachings(setup, keptProbes(notebook).probes);
    return learntFor(setup, newestFirst([...(isUsed ? notebook.learnt() : []), ...checks]));
  }

  beginPractice({ speed, names, slow_for_calls: slowForCalls = false }: PracticeWish, settings: Settings): BoilRun {
    const made = practiceHeader(practiceScenario(PRACTICE_SEED).header, names);
    // A practice boil says so in its header, so that it is known as one wherever its recording goes.
    const header = { ...headerOf(made, this.#startedNow(), settings), practice: true };
    const boil = this.#options.notebook.begin(header, 'practice');
    return this.#newRun(
      boil,
      speed,
      { ...NEW, slowForCalls },
      (clock) => () => practiceSource({ seed: PRACTICE_SEED, timekeeper: clock }),
    );
  }

  /**
   * The live boil that was running when the program stopped, or null. Its entries are folded again: alarms and
   * answers come back as they were, and nothing is said again. A practice boil is over with its program.
   */
  takeUp(): BoilRun | null {
    const { notebook } = this.#options;
    for (const boil of notebook.boils()) {
      if (boil.running && boil.kind === 'practice') notebook.end(boil.boil, Math.round(boil.seconds * 1000));
    }
    const boil = notebook.running();
    return boil === null
      ? null
      : this.#newRun(boil, 1, { ranBefore: true, kept: this.#foldAgain(boil) }, (clock) =>
          this.#serialPorts(boil.boil, clock),
        );
  }

  #serialPorts(boil: string, timekeeper: BoilClock): (header: Header) => Source {
    const { asks, ports } = this.#options;
    return (header) => {
      const toOpen = portsToOpen(header, this.lastSetup(), this.#boards.of(boil));
      const learnt = (id: string, device: string): void => {
        const path = toOpen.find((port) => port.id === id)?.path;
        if (path !== undefined) this.#boards.note(boil, id, { path, device });
      };
      return serialSource({ ...ports, ports: toOpen, timekeeper, asks, learnt });
    };
  }

  #newRun(
    boil: BoilSummary,
    speed: number,
    { ranBefore, kept, slowForCalls = false }: Begun,
    sourceFor: (clock: BoilClock) => (header: Header) => Source,
  ): BoilRun {
    const { notebook, machine } = this.#options;
    const lastT = Math.round(boil.seconds * 1000);
    const clock = new BoilClock(machine, ranBefore ? resumedT(lastT, boil.started, machine.wallMs()) : 0, speed);
    const gapSeconds = ranBefore ? (clock.now() - lastT) / 1000 : null;
    const { state, curve } = kept ?? { state: startBoil(notebook.header(boil.boil)), curve: new CurveStore() };
    const run = new BoilRun({
      ...this.#options,
      boil,
      clock,
      state,
      curve,
      slowForCalls,
      openSource: sourceFor(clock),
    });
    run.start(gapSeconds);
    return run;
  }

  #foldAgain(boil: BoilSummary): { state: BoilState; curve: CurveStore } {
    const { notebook } = this.#options;
    const curve = new CurveStore();
    let state = startBoil(notebook.header(boil.boil));
    for (const text of notebook.entries(boil.boil)) {
      const parsed = parseEntry(text);
      if (!parsed.ok) continue;
      state = applyEntry(state, parsed.entry, foldTools);
      curve.sample(state, parsed.entry.t, BUCKET_MS);
    }
    // What fell due with the last entry was called before the program stopped.
    return { state: advance(state, Math.round(boil.seconds * 1000)), curve };
  }

  #startedNow(): string {
    return isoWithOffset(this.#options.machine.wallMs());
  }
}
