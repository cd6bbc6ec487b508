// One boil that runs: what its source brings is folded, called, and written down, in order of t; live and practice alike.
import type { AlarmTransition } from '../core/alarms/alarm.ts';
import type { Answer, Entry, Header, HeaderPatch, Mark } from '../core/boil/entries.ts';
import { explain } from '../core/boil/explain.ts';
import { panAhead } from '../core/boil/readings.ts';
import type { Explained, Explanation } from '../core/boil/explanation.ts';
import { boilView, callsView } from '../core/boil/view.ts';
import { nextDue } from '../core/boil/fold.ts';
import type { BoilState } from '../core/boil/fold.ts';
import { type ProgramAlarm, programCall } from '../core/boil/program-alarms.ts';
import type { PanReading } from '../core/pan/reading.ts';
import type { Source, SourceItem, SourceNotice } from '../ingest/source.ts';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import type { Curve, Now } from '../protocol/messages.ts';
import { entryText } from '../protocol/recording.ts';
import { changedHeader, whyNotAnswer, whyNotMark } from './check-deed.ts';
import type { Scene } from './check-deed.ts';
import { BoilWakes } from './boil-wakes.ts';
import type { BoilClock, MachineClock } from './clock.ts';
import type { CurveStore } from './curve.ts';
import { foldTools } from './fold-tools.ts';
import { Folding } from './folding.ts';
import { canTeach, keepLearnt } from './learnt.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import { Pace } from './practice-pace.ts';
import { Recorder } from './recorder.ts';
import { RunningSource } from './running-source.ts';
import { SaidNotices } from './said-notices.ts';

const CURVE_SAMPLE_MS = 1000;
const MEMORY_FULL =
  'Nothing could be written down for so long that memory is full: from now on the lines of the probes are watched, but not kept, until there is room on the disk again.';
const NO_CALLS = { alarms: [], sound: { priority: null, silencedUntil: null }, unanswered: null };

export interface RunListener {
  alarm?(transition: AlarmTransition): void;
  readings?(t: number, readings: PanReading[], header: Header): void;
  /** So many entries of the boil are on disk. */
  kept?(entries: number): void;
  notice?(notice: SourceNotice): void;
}

export interface BoilRunOptions {
  boil: BoilSummary;
  /** The state after all entries that are kept. */
  state: BoilState;
  curve: CurveStore;
  clock: BoilClock;
  machine: MachineClock;
  notebook: Notebook;
  /** Makes the source that the header asks for; called again when its ports change. */
  openSource(header: Header): Source;
  /** Interval of readings, ms of boil time; null for none. */
  everyMs: number | null;
  /** Goes slower while a call waits for whoever learns to answer it; a practice only. */
  slowForCalls?: boolean;
  listener: RunListener;
  /** Something that the screen shows has changed; at once when `urgent`. */
  changed(urgent: boolean): void;
}

export class BoilRun {
  readonly #options: BoilRunOptions;
  readonly #recorder: Recorder;
  readonly #folding: Folding;
  readonly #source: RunningSource;
  #kept: number;
  /** The t of the last entry that was handed to the recorder; the record never steps back. */
  #recordedT: number;
  /** The fold has done everything up to here. */
  #reachedT: number;
  /** Something was called since the last commit. */
  #mustCommit = false;
  /** What was called and read and is still to be told, in order: nothing is told before it was written down. */
  #toTell: (() => void)[] = [];
  readonly #notices = new SaidNotices();
  readonly #wakes: BoilWakes;
  /** Boil time of its end, ms, as of which its pans stay; null while it runs. */
  #endedAt: number | null = null;
  readonly #pace: Pace;

  constructor(options: BoilRunOptions) {
    const { boil, clock, machine, notebook, state } = options;
    this.#options = options;
    this.#kept = boil.entries;
    this.#pace = new Pace(clock, options.slowForCalls === true);
    this.#recordedT = Math.round(boil.seconds * 1000);
    this.#reachedT = this.#recordedT - 1;
    this.#recorder = new Recorder({
      append: (texts) => notebook.append(boil.boil, texts),
      after: (milliseconds, call) => machine.after(milliseconds, call),
      kept: (entries) => this.#keptNow(entries),
      failing: (why) => this.own('not-recording', true, `${why}; until then memory holds what comes`),
      working: () => this.own('not-recording', false, ''),
      overflowing: () => this.say(MEMORY_FULL),
    });
    const listener = {
      alarm: (transition: AlarmTransition) => this.#called(transition),
      readings: (t: number, readings: PanReading[]) => {
        const { header } = this;
        this.#toTell.push(() => options.listener.readings?.(t, readings, header));
      },
      took: (entry: Entry, text: string) => this.#record(entry.t, text, 'line' in entry ? entry.t : null),
    };
    this.#folding = new Folding(state, foldTools, listener, options.everyMs, clock.now());
    this.#wakes = new BoilWakes({
      clock,
      machine,
      isSimulated: boil.kind === 'practice',
      tick: () => {
        this.#markSleep(this.#now());
        options.changed(false);
      },
      due: (t) => {
        this.#markSleep(t);
        this.#reach(t);
        this.#wakeWhenDue();
      },
    });
    this.#source = new RunningSource({
      open: () => options.openSource(this.header),
      item: (item) => this.#take(item),
      notice: (notice) => this.#hearNotice(notice),
      isOver: () => this.isOver,
    });
  }

  get boil(): string {
    return this.#options.boil.boil;
  }

  get kind(): BoilSummary['kind'] {
    return this.#options.boil.kind;
  }

  /** What is known of it now. */
  look(): { state: BoilState; t: number } {
    return { state: this.#folding.state, t: this.#options.clock.now() };
  }

  get header(): Header {
    return this.#folding.state.header;
  }

  get kept(): number {
    return this.#kept;
  }

  get isOver(): boolean {
    return this.#endedAt !== null;
  }

  /** What was seen between two times, ms, and what is expected from now on. */
  curveBetween(pan: string, from: number, to: number, points: number): Curve {
    const seen = this.#options.curve.between(pan, from, to, points);
    return { ...seen, ahead: this.isOver ? null : panAhead(this.#folding.state, pan, this.#now()) };
  }

  /**
   * `gapSeconds` when the boil goes on after the program was stopped for so long, or its fire was lit so long before the
   * program was told of it; null for a boil that begins now.
   */
  start(gapSeconds: number | null): void {
    if (gapSeconds !== null) {
      void this.#do({ t: this.#now(), run: 'gap', seconds: gapSeconds }).then(({ ok }) => {
        // It may have been called when the program was stopped.
        if (ok) this.own('not-recording', false, '');
      });
      // The program may have been stopped between a mark and what it teaches.
      this.#keepLearnt();
    }
    this.#source.start();
    this.#wakes.start();
  }

  async mark(mark: Mark): Promise<Outcome> {
    const why = whyNotMark(mark, this.#scene());
    if (why !== null) return refused(why);
    const outcome = await this.#do({ t: this.#now(), mark });
    if (outcome.ok && canTeach(mark)) this.#keepLearnt();
    return outcome;
  }

  async answer(answer: Answer): Promise<Outcome> {
    const why = whyNotAnswer(answer, this.#scene());
    return why === null ? this.#do({ t: this.#now(), answer }) : refused(why);
  }

  async set(patch: HeaderPatch): Promise<Outcome> {
    const before = JSON.stringify(this.header.ports);
    const changed = changedHeader(this.header, patch);
    if ('why' in changed) return refused(changed.why);
    const outcome = await this.#do({ t: this.#now(), set: patch });
    if (JSON.stringify(this.header.ports) !== before) await this.#source.reopen();
    return outcome;
  }

  /** Ends the boil at boil time t, ms; refused while it cannot be written down, so that nothing of it is lost. */
  async end(t = this.#now()): Promise<Outcome> {
    this.#reach(t - 1);
    const committed = this.#recorder.commit();
    if (this.#recorder.failure !== null) {
      return refused(`The boil cannot be ended while it cannot be written down: ${this.#recorder.failure}.`);
    }
    await committed;
    if (this.isOver) return refused('The boil is over already.');
    // What was said while it boiled is over with it; what its end says stays to be read.
    const saidBefore = this.#notices.clear();
    this.#keepLearnt();
    try {
      this.#kept = this.#options.notebook.end(this.boil, t);
    } catch (error) {
      this.#notices.restore(saidBefore);
      return refused(`The boil could not be ended: ${(error as Error).message}.`);
    }
    this.#endedAt = t;
    this.#options.listener.kept?.(this.#kept);
    await this.#stop();
    this.#options.changed(true);
    return done;
  }

  /** Leaves the boil running in the notebook, with everything written down. */
  async leave(): Promise<void> {
    if (!this.isOver) {
      this.#reach(this.#now() - 1);
      this.#keepLearnt();
    }
    await this.#stop();
  }

  /**
   * An alarm of the program itself is there, or over; said again, it changes nothing. It is kept in the boil like any
   * other, so that it is answered, put aside and taken up after a restart in the same way.
   */
  own(alarm: ProgramAlarm, isThere: boolean, why: string): void {
    const called = this.isOver ? null : programCall(this.#folding.state.book, alarm, isThere, why);
    if (called === null) return;
    const t = this.#now();
    this.#apply({ t, called });
    this.#tellSoon(() => this.#options.listener.alarm?.({ t, ...called }));
    this.#tellAll();
  }

  /** Says a sentence to whoever watches. */
  say(sentence: string): void {
    this.#hearNotice({ port: null, sentence });
  }

  /** The alarms and the sound now; lighter than a snapshot. */
  calls(): Pick<Now, 'alarms' | 'sound' | 'unanswered' | 't'> {
    const t = this.#now();
    return { t, ...(this.isOver ? NO_CALLS : callsView(this.#folding.state.book, t)) };
  }

  /** How long the last pan still takes to its finish, s; null where that is not known. */
  neededSeconds(): number | null {
    const { readings } = this.snapshot();
    const ends = readings.map((reading) => reading.finish_high_s ?? reading.finish_in_s).filter((end) => end !== null);
    return ends.length === 0 ? null : Math.max(...ends);
  }

  snapshot(): Omit<Now, 'kind' | 'view' | 'mode' | 'clock'> {
    const t = this.#now();
    const { state } = this.#folding;
    const view = boilView(state, this.#endedAt ?? t);
    return {
      ...view,
      // What is over calls nobody any more.
      ...(this.isOver ? NO_CALLS : {}),
      t,
      boil: this.boil,
      header: this.header,
      ...this.#pace.told,
      ended: this.isOver,
      endedAt: this.#endedAt,
      ...(state.watchedFrom > 0 ? { watchedFrom: state.watchedFrom } : {}),
      kept: this.#kept,
      notices: [...this.#notices.sentences, ...(this.isOver ? [] : view.notices)],
      replay: null,
    };
  }

  /** What is behind a number now; null where the pan is not there. */
  explain(pan: string | null, what: Explained): Explanation | null {
    return explain(this.#folding.state, pan, what, this.#endedAt ?? this.#now());
  }

  /** `speed` in boil seconds a second. */
  async setSpeed(speed: number): Promise<void> {
    this.#pace.chosen = speed;
    await this.#keepPace();
    this.#options.changed(true);
  }

  async #keepPace(): Promise<void> {
    if (this.isOver) return;
    const { book } = this.#folding.state;
    const seconds = this.#pace.keep(book, this.#now(), this.kind === 'practice');
    if (seconds !== null) await this.answer({ silence: { seconds }, by: book.silencedBy });
  }

  /**
   * Boil time for what happens now. Simulated pans are simulated in steps: theirs is the time that they have
   * reached, or what a person does would stand in the record before lines that are still to come.
   */
  #now(): number {
    const next = Math.max(this.#reachedT + 1, this.#recordedT);
    return this.kind === 'practice' ? next : Math.max(this.#options.clock.now(), next);
  }

  #take(item: SourceItem): void {
    if (this.isOver) return;
    if (item.kind === 'idle') {
      this.#markSleep(item.t);
      this.#reach(item.t);
    } else if (item.kind === 'end') {
      void this.end(item.t);
    } else if ('run' in item.entry && item.entry.run === 'ended') {
      void this.end(item.entry.t);
    } else {
      if ('state' in item.entry && item.entry.state === 'open') this.#notices.troubleIsOver(item.entry.port);
      this.#apply(item.entry, item.raw);
    }
    if (this.kind === 'practice') void this.#keepPace();
    this.#options.changed(false);
  }

  #reach(t: number): void {
    if (t <= this.#reachedT) return;
    this.#reachedT = t;
    this.#folding.reach(t);
    this.#afterFolding(t);
  }

  /** Puts an entry in its place: what fell due before it is called first. */
  #apply(entry: Entry, raw?: string): void {
    this.#markSleep(entry.t);
    const earliest = Math.max(this.#reachedT + 1, this.#recordedT);
    const inOrder = entry.t >= earliest ? entry : { ...entry, t: earliest };
    this.#reachedT = inOrder.t - 1;
    this.#folding.take(inOrder, inOrder === entry && raw !== undefined ? raw : entryText(inOrder));
    this.#afterFolding(inOrder.t);
  }

  #afterFolding(t: number): void {
    this.#tellAll();
    this.#options.curve.sample(this.#folding.state, t, CURVE_SAMPLE_MS);
    this.#wakeWhenDue();
  }

  #wakeWhenDue(): void {
    if (!this.isOver) this.#wakes.wakeAt(nextDue(this.#folding.state));
  }

  /** An entry that somebody waits for: folded now, and done when it is on disk. */
  #do(entry: Entry): Promise<Outcome> {
    this.#source.hear(entry);
    this.#apply(entry);
    void this.#keepPace();
    this.#options.changed(true);
    return this.#recorder.commit();
  }

  /** After a sleep, nothing is known of the time that was slept through. */
  #markSleep(t: number): void {
    const sleptMs = this.#wakes.sleptMs();
    if (sleptMs === null) return;
    const gapT = Math.max(t, this.#recordedT);
    const seconds = Math.min(Math.round(sleptMs), gapT - this.#recordedT) / 1000;
    this.#apply({ t: gapT, run: 'gap', seconds });
  }

  #called(transition: AlarmTransition): void {
    const { t, about: _, ...called } = transition;
    const inOrderT = Math.max(t, this.#recordedT);
    this.#record(inOrderT, entryText({ t: inOrderT, called }));
    this.#tellSoon(() => this.#options.listener.alarm?.(transition));
  }

  #tellSoon(tell: () => void): void {
    this.#mustCommit = true;
    this.#toTell.push(tell);
  }

  /** Writes down what was called, then tells it. While writing fails it is told all the same: watching goes on. */
  #tellAll(): void {
    const isUrgent = this.#mustCommit;
    this.#mustCommit = false;
    if (isUrgent) void this.#recorder.commit();
    const toTell = this.#toTell;
    this.#toTell = [];
    for (const tell of toTell) tell();
    if (isUrgent) this.#options.changed(true);
  }

  #record(t: number, text: string, lineT: number | null = null): void {
    this.#recordedT = t;
    this.#recorder.add(text, lineT);
  }

  /** All that is learnt comes from marks that are kept: a failure is said, and keeps nobody from ending the boil. */
  #keepLearnt(): void {
    if (this.isOver) return;
    const sentence = keepLearnt(this.#options.notebook, this.#options.boil, this.#folding.state);
    if (sentence !== null) this.#hearNotice({ port: null, sentence });
  }

  #keptNow(entries: number): void {
    this.#kept = entries;
    this.#options.listener.kept?.(entries);
  }

  #hearNotice(notice: SourceNotice): void {
    if (!this.#notices.hear(notice)) return;
    this.#options.listener.notice?.(notice);
    this.#options.changed(false);
  }

  #scene(): Scene {
    const t = this.#now();
    return { t, header: this.header, ...boilView(this.#folding.state, t) };
  }

  async #stop(): Promise<void> {
    this.#wakes.stop();
    this.#recorder.close();
    await this.#source.stop();
  }
}
