// Answers what is asked of boils beside each other: up to six lines, a season's small curves, a past boil behind the live one.
import { type BoilCourse, finishOf, lineOf, panOf, wasSeen } from '../../core/compare/course.ts';
import { haveStretch, stretchDifferences } from '../../core/compare/stretches.ts';
import { yearOf } from '../../core/season/season.ts';
import type { BoilSummary, Notebook } from '../../notebook/contract.ts';
import type { CompareCommand, CompareView, ComparedBoil, Ghost, SmallCurves } from '../../protocol/compare-messages.ts';
import { BoilQueue } from '../boil-queue.ts';
import { isoWithOffset, type MachineClock } from '../clock.ts';
import { refused } from '../outcome.ts';
import type { Outcome } from '../outcome.ts';
import { inSlices } from '../slices.ts';
import { courseOf, workOutCourse } from './boil-course.ts';
import { bestGhost, ghostOf, type Tonight } from './ghost.ts';

type Asked = Extract<CompareCommand, { compare: unknown }>['compare'];

export class CompareDesk {
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #queue: BoilQueue;
  readonly #tonight: (pan: string) => Tonight | null;

  /** `tonight` is what the live boil's pan shows now; null where there is none. */
  constructor(notebook: Notebook, machine: MachineClock, tonight: (pan: string) => Tonight | null) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#queue = new BoilQueue(machine, (boil) => workOutCourse(notebook, boil, machine));
    this.#tonight = tonight;
  }

  async do(command: CompareCommand): Promise<Outcome> {
    if ('compare' in command) return { ok: true, data: this.#compare(command.compare) };
    if ('small_curves' in command)
      return { ok: true, data: await this.#smallCurves(command.small_curves.year, command.small_curves.points) };
    const tonight = this.#tonight(command.ghost.pan);
    if (tonight === null) return refused('That pan is in no boil that runs now.');
    return { ok: true, data: await this.#ghost(command.ghost.boil, tonight, command.ghost.points) };
  }

  /** Resolves when all that was asked for is worked out. */
  idle(): Promise<void> {
    return this.#queue.idle();
  }

  close(): void {
    this.#queue.close();
  }

  #compare({ boils, align: asked, what: drawn, pan, points }: Asked): CompareView {
    const all = boils.map((name) => this.#notebook.find(name)).map((summary) => ({ summary, ...this.#read(summary) }));
    const align =
      asked ??
      (all.every(({ course }) => course === null || hasFinish(course, pan ?? null)) ? 'before-finish' : 'clock');
    const what =
      drawn ??
      (all.every(({ course }) => course === null || hasStrength(course, pan ?? null)) ? 'strength' : 'temperature');
    const shown = all.map(({ summary, course, why }): ComparedBoil => {
      const { boil, name, started } = summary;
      const of = course === null ? null : panOf(course, pan ?? null);
      const head = { boil, name, started, pan: of === null ? null : { id: of.id, name: of.name, sap: of.sap } };
      if (course === null) return { ...head, isWorking: why === null, why, ...NO_LINE };
      const none = (pan ?? null) === null ? 'No pan was seen.' : 'This boil has no such pan.';
      if (of === null) return { ...head, isWorking: false, why: none, ...NO_LINE };
      const line = lineOf(course, of, started, align, what, points);
      return 'why' in line
        ? { ...head, isWorking: false, ...line, ...NO_LINE }
        : { ...head, isWorking: false, why: null, ...line };
    });
    const courses = all.map(({ summary, course }) => ({ boil: summary.boil, course }));
    const working = shown.filter(({ isWorking }) => isWorking).length;
    const seen = courses.flatMap(({ course }) => course?.pans.filter(wasSeen) ?? []);
    const pans = [...new Map(seen.toReversed().map(({ id, name }) => [id, { id, name }])).values()].toReversed();
    return { align, what, boils: shown, pans, ...differencesOf(courses, pan ?? null), working };
  }

  /** What is not read yet is read from now on; null beside the sentence why it cannot be. */
  #read({ boil, running }: BoilSummary, first = true): { course: BoilCourse | null; why: string | null } {
    if (running) return { course: null, why: 'This boil is still running.' };
    const course = courseOf(this.#notebook, boil);
    if (course !== null) return { course, why: null };
    if (this.#queue.hasFailed(boil)) return { course: null, why: 'This boil cannot be read.' };
    this.#queue.want(boil, first);
    return { course: null, why: null };
  }

  async #smallCurves(asked: number | null, points: number): Promise<SmallCurves> {
    const summaries = this.#ended();
    const year = asked ?? Math.max(...summaries.map(({ started }) => yearOf(started)), yearOf(this.#today()));
    const boils: SmallCurves['boils'] = [];
    const ofYear = summaries.filter(({ started }) => yearOf(started) === year);
    for await (const summary of inSlices(ofYear.toReversed(), this.#machine)) {
      boils.push(this.#smallCurve(summary, points));
    }
    return { year, boils, working: boils.filter(({ isWorking }) => isWorking).length };
  }

  #smallCurve(summary: BoilSummary, points: number): SmallCurves['boils'][number] {
    const { boil, name, started } = summary;
    const { course, why } = this.#read(summary, false);
    const pan = course === null ? null : panOf(course, null);
    const head = { boil, name, started, pan: pan === null ? null : { id: pan.id, name: pan.name, sap: pan.sap } };
    if (course === null) return { ...head, isWorking: why === null, why, x: [], y: [] };
    if (pan === null) return { ...head, isWorking: false, why: 'No pan was seen.', x: [], y: [] };
    const line = lineOf(course, pan, MIDNIGHT, 'clock', 'temperature', points);
    if ('why' in line) return { ...head, isWorking: false, why: line.why, x: [], y: [] };
    return { ...head, isWorking: false, why: null, x: line.x, y: line.y };
  }

  async #ghost(name: string | null, tonight: Tonight, points: number): Promise<Ghost | null> {
    if (name !== null) {
      const summary = this.#notebook.find(name);
      const { course } = this.#read(summary);
      return course === null ? null : ghostOf(summary, course, tonight, points);
    }
    const read: { summary: BoilSummary; course: BoilCourse }[] = [];
    for await (const summary of inSlices(this.#ended(), this.#machine)) {
      const { course } = this.#read(summary, false);
      if (course !== null) read.push({ summary, course });
    }
    return bestGhost(read, tonight, points);
  }

  /** Boils that are over and no practice, newest first. */
  #ended(): BoilSummary[] {
    return this.#notebook.boils().filter(({ kind, running }) => kind !== 'practice' && !running);
  }

  #today(): string {
    return isoWithOffset(this.#machine.wallMs());
  }
}

const NO_LINE = { t: [], x: [], y: [] };
/** Laid so, hours by the clock are hours since the start. */
const MIDNIGHT = '2000-01-01T00:00:00Z';

/** Whether the pan that is drawn of it was finished; what has no such pan is not drawn in any way. */
function hasFinish(course: BoilCourse, asked: string | null): boolean {
  const pan = panOf(course, asked);
  return pan === null || finishOf(course, pan.id) !== null;
}

/** Whether the strength of the pan that is drawn of it is known at any time; as above. */
function hasStrength(course: BoilCourse, asked: string | null): boolean {
  const pan = panOf(course, asked);
  return pan === null || pan.brix.some((each) => each !== null);
}

/** Of all that are read against the first. */
function differencesOf(
  all: readonly { boil: string; course: BoilCourse | null }[],
  pan: string | null,
): Pick<CompareView, 'differences' | 'untold'> {
  const pans = all.map(({ boil, course }) => ({ boil, pan: course === null ? null : panOf(course, pan) }));
  const first = pans[0]?.pan ?? null;
  const others = pans.slice(1).flatMap(({ boil, pan: other }) => (other === null ? [] : [{ boil, other }]));
  if (first === null) return { differences: [], untold: others.map(({ boil }) => boil) };
  return {
    differences: others
      .flatMap(({ boil, other }) => stretchDifferences(first, other).map((difference) => ({ boil, ...difference })))
      .sort((a, b) => Math.abs(b.minutes - b.minutesFirst) - Math.abs(a.minutes - a.minutesFirst)),
    untold: others.flatMap(({ boil, other }) => (haveStretch(first, other) ? [] : [boil])),
  };
}
