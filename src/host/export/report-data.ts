// What a boil's report shows, gathered in one pass through the fold.
import { alarmHistory, type RaisingShown } from '../../core/boil/alarm-history.ts';
import type { Header } from '../../core/boil/entries.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import { counts } from '../../core/boil/mark-flow.ts';
import { panLimits } from '../../core/boil/view.ts';
import type { PanReading } from '../../core/pan/reading.ts';
import { boilFigures } from '../../core/season/boil-figures.ts';
import type { BoilFigures } from '../../core/season/figures.ts';
import { factsAtEnd, gather, gatherCall, LOOK_MS, startGathering } from '../../core/season/gather-facts.ts';
import type { BoilPage } from '../../core/season/records.ts';
import type { Notebook } from '../../notebook/contract.ts';
import { settingsSchema, type Settings } from '../../protocol/messages.ts';
import type { KeptProbe } from '../../protocol/probe-setup-messages.ts';
import { calledProbe, keptProbes } from '../probes/kept-probes.ts';
import { boilSource, type BoilSource } from './boil-source.ts';
import { foldInSlices } from './fold-in-slices.ts';
import type { SliceOptions } from './in-slices.ts';

/** So many points are drawn across the paper at most, each with the least and the greatest of its time. */
const CURVE_POINTS = 480;
const SAMPLE_MS = 10_000;
/** Of a short boil fewer: a point between two looks would hold nothing, and lift the pen. */
const pointsOf = (lastT: number): number => Math.min(CURVE_POINTS, Math.max(1, Math.floor(lastT / SAMPLE_MS)));

/** Temperatures in °C by point; null where nothing is known. */
export interface PanCurve {
  pan: string;
  /** What its probe read; null where nothing was, and throughout in a pan that has none. */
  low: (number | null)[];
  high: (number | null)[];
  /** What was read by hand and stands, in order of boil time, ms. */
  byHand: { at: number; celsius: number }[];
  water: (number | null)[];
  finish: (number | null)[];
}

export interface ReportData {
  source: BoilSource;
  settings: Settings;
  page: BoilPage;
  figures: BoilFigures;
  /** Names of the pans of which nobody noted what was filled in. */
  unnoted: string[];
  /** Boil time of the last entry, ms. */
  lastT: number;
  curves: PanCurve[];
  raisings: RaisingShown[];
  /** Raised before those, and only counted. */
  earlierRaisings: number;
  /** A probe in them is called as it was named. */
  marks: Pick<BoilState['marks'][number], 'at' | 't' | 'mark' | 'withdrawn' | 'questioned'>[];
}

/** Throws NotebookProblem (2) when there is no such boil. */
export async function reportData(notebook: Notebook, boil: string, options: SliceOptions): Promise<ReportData> {
  const source = boilSource(notebook, boil);
  const lastT = Math.round(notebook.find(source.boil).seconds * 1000);
  const gathered = startGathering();
  const curves = new Curves(lastT);
  const listener = {
    readings: (t: number, readings: PanReading[], state: BoilState) => {
      curves.add(t, readings, state);
      if (t % LOOK_MS === 0) gather(gathered, state, t, readings);
    },
    alarm: (transition: Parameters<typeof gatherCall>[1]) => gatherCall(gathered, transition),
  };
  let end: BoilState | null = null;
  for await (const state of foldInSlices(source, SAMPLE_MS, listener, options)) end = state;
  if (end === null) throw new Error('the fold has no end');
  const page = notebook.page(source.boil);
  const history = alarmHistory(end.history, end.marks, end.header);
  const facts = factsAtEnd(gathered, end, lastT);
  return {
    source,
    page,
    lastT,
    settings: settingsOf(notebook),
    figures: boilFigures(facts, page, collectionsOf(notebook, source.boil)),
    unnoted: facts.pours.length === 0 ? facts.pans.map(({ name }) => name) : facts.unnoted,
    curves: curves.all(end.marks),
    raisings: history.raisings,
    earlierRaisings: history.earlier,
    marks: withNames(end.marks, source.header, keptProbes(notebook).probes),
  };
}

function withNames(marks: BoilState['marks'], header: Header, kept: readonly KeptProbe[]): ReportData['marks'] {
  return marks.map(({ mark, ...rest }) => {
    if (!('probe' in mark) || mark.probe === undefined) return { ...rest, mark };
    return { ...rest, mark: { ...mark, probe: calledProbe(header, kept, mark.probe) } };
  });
}

/** The units that the person chose. */
export function settingsOf(notebook: Notebook): Settings {
  return settingsSchema.catch(settingsSchema.parse({})).parse(notebook.setting('settings') ?? {});
}

function collectionsOf(notebook: Notebook, boil: string) {
  return notebook.collections().filter((collection) => collection.boil === boil);
}

class Curves {
  readonly #byPan = new Map<string, PanCurve>();
  readonly #lastT: number;
  readonly #points: number;

  constructor(lastT: number) {
    this.#lastT = Math.max(1, lastT);
    this.#points = pointsOf(lastT);
  }

  add(t: number, readings: readonly PanReading[], state: BoilState): void {
    const point = Math.min(this.#points - 1, Math.floor((t / this.#lastT) * this.#points));
    for (const { pan, temperature_c: celsius, water_c: water, probe } of readings) {
      const curve = this.#curveOf(pan);
      curve.water[point] = water;
      curve.finish[point] = panLimits(state, pan).finish_c;
      // What was read by hand stands for a while; on paper it is drawn when it was read, and only then.
      if (celsius === null || probe === null) continue;
      curve.low[point] = Math.min(curve.low[point] ?? celsius, celsius);
      curve.high[point] = Math.max(curve.high[point] ?? celsius, celsius);
    }
  }

  /** Of the pans that were read at all. `marks` are those at the end of the boil. */
  all(marks: BoilState['marks']): PanCurve[] {
    return [...this.#byPan.values()]
      .map((curve) => ({ ...curve, byHand: handReadings(marks, curve.pan) }))
      .filter(({ low, byHand }) => byHand.length > 0 || low.some((celsius) => celsius !== null));
  }

  #curveOf(pan: string): PanCurve {
    const empty = () => Array<number | null>(this.#points).fill(null);
    const curve = this.#byPan.get(pan) ?? {
      pan,
      low: empty(),
      high: empty(),
      byHand: [],
      water: empty(),
      finish: empty(),
    };
    this.#byPan.set(pan, curve);
    return curve;
  }
}

/** As the program took them: less what the thermometer in the hand was known to show too much. */
function handReadings(marks: BoilState['marks'], pan: string): PanCurve['byHand'] {
  return marks
    .filter(counts)
    .flatMap(({ at, mark, takenC }) =>
      mark.kind === 'reading' && mark.pan === pan ? [{ at, celsius: takenC ?? mark.celsius }] : [],
    )
    .toSorted((one, other) => one.at - other.at);
}
