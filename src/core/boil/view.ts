// What a screen is shown of a boil at one moment: readings, limits, water, probes, ports, alarms, marks and the next thing.
import { isOfFinish, type ListedAlarm, lowBehindFinish } from '../alarms/alarm.ts';
import { type AlarmBook, listAlarms, soundNow, unansweredHigh, type UnansweredHigh } from '../alarms/engine.ts';
import { alarmWords, type AlarmWords } from '../alarms/words.ts';
import { type Advice, adviceOn } from './advice.ts';
import { type AlarmHistory, alarmHistory } from './alarm-history.ts';
import { readInstrument } from '../physics/instruments.ts';
import { depthAtLitres } from '../physics/vessel.ts';
import type { Correction } from './corrections.ts';
import type { PanReading, ProbeState } from '../pan/reading.ts';
import { Z80 } from '../quantities/spread.ts';
import type { Mark, Priority } from './entries.ts';
import type { From } from './explanation.ts';
import { counts } from './mark-flow.ts';
import { nextThing, type NextThing } from './next-thing.ts';
import { isPractice } from './practice-marks.ts';
import { periodMs, probeState, type ProbeTrack } from './probe-track.ts';
import { type LastHeat, lastHeats, panReadings } from './readings.ts';
import type { BoilState, KeptMark } from './state.ts';
import { type UnmarkedPour, unmarkedPours } from './unmarked-pours.ts';
import type { Water } from './water.ts';

export interface ProbeShown {
  id: string;
  port: string;
  channel: string;
  pan: string | null;
  /** As it comes. */
  celsius: number | null;
  /** What is added to that to put it right, °C; null for a channel that the boil does not know. */
  correctionC: number | null;
  ageSeconds: number | null;
  periodSeconds: number | null;
  state: ProbeState;
}

export interface BoilView {
  readings: PanReading[];
  /** Of pans whose temperature is not known now. */
  lastHeats: LastHeat[];
  limits: { pan: string; finish_c: number | null; scorch_c: number | null }[];
  /** `plusMinus` holds the middle 80 %, °C. */
  water: { celsius: number | null; plusMinus: number | null; from: From | null };
  probes: ProbeShown[];
  ports: {
    id: string;
    path: string | null;
    state: 'open' | 'lost' | 'waiting';
    why: string | null;
    lines: number;
    unreadable: number;
  }[];
  alarms: (ListedAlarm & AlarmWords)[];
  /** `silencedBy`: the phone on which it was; absent for the screen by the pans. */
  sound: { priority: Priority | null; silencedUntil: number | null; silencedBy?: string };
  /** High alarms that nobody has answered; null when there is none. */
  unanswered: UnansweredHigh | null;
  history: AlarmHistory;
  /**
   * `questioned`: it can hardly be meant, was asked about, and acts on nothing, and `doubt` says why. `corrections`:
   * what it changed. `cameTo`: the strength that a density reading came to, set right for its warmth, °Bx.
   * `takenC`: what a reading by hand was taken for, °C. `depths`: what the count said just before a depth was noted, and
   * what it was taken for together with that, mm; absent where there was no count to say.
   */
  marks: {
    t: number;
    at: number;
    mark: Mark;
    withdrawn: boolean;
    questioned: boolean;
    doubt: string | null;
    corrections: Correction[];
    cameTo: number | null;
    takenC: number | null;
    depths?: { countedMm: number; takenMm: number };
  }[];
  pours: UnmarkedPour[];
  /** Of each pan that has a reading, in their order. */
  advice: Advice[];
  /** Pans that take no part: nothing was noted of them, and they never showed that they are heated. */
  unused: string[];
  next: NextThing;
  notices: string[];
  /** Burner powers that were changed during the boil, W. */
  powers: BoilState['powers'];
}

/** A sentence about an entry is shown so long, ms. */
const NOTICE_LASTS_MS = 10 * 60_000;

/** Everything at t (ms), which must not be before the last entry. */
export function boilView(state: BoilState, t: number): BoilView {
  const readings = panReadings(state, t);
  const advice = readings.map((reading) => adviceOn(state, reading, t));
  const calls = callsView(state.book, t, readings);
  const shownLast = lastHeats(state, readings);
  const unused = unusedPans(state, readings, shownLast);
  return {
    readings,
    lastHeats: shownLast,
    limits: readings.map((reading) => panLimits(state, reading.pan)),
    water: waterShown(state.water),
    probes: probesShown(state, t),
    ports: Object.entries(state.ports).map(([id, port]) => ({
      id,
      path: state.header.ports?.find((one) => one.id === id)?.path ?? null,
      state: port.state,
      why: port.why,
      lines: port.lines,
      unreadable: port.unreadable,
    })),
    ...calls,
    history: alarmHistory(state.history, state.marks, state.header),
    pours: unmarkedPours(state),
    advice,
    marks: state.marks.map((kept) => {
      const { t: noted, at, mark, withdrawn, questioned, doubt, corrections, takenC } = kept;
      return {
        ...{ t: noted, at, mark, withdrawn, questioned, corrections, takenC },
        doubt: questioned ? doubt : null,
        cameTo: cameTo(state, mark),
        ...depthsOf(state, kept),
      };
    }),
    unused,
    next: nextOf(state, t, readings, { alarms: calls.alarms, advice, unused }),
    powers: state.powers,
    notices: noticesShown(state, t),
  };
}

/** In the first second of a practice nothing is asked: what is in its pots it notes by itself, a moment later. */
function nextOf(
  state: BoilState,
  t: number,
  readings: readonly PanReading[],
  { alarms, advice, unused }: Pick<BoilView, 'alarms' | 'advice' | 'unused'>,
): NextThing {
  const isNoted = !isPractice(state.header) || state.marks.length > 0;
  const asked = isNoted ? readings : [];
  return nextThing(asked, alarms, state.water.celsius !== null, t, advice, new Set(unused), t - state.watchedFrom);
}

/** What was said a short while ago, without what was said of marks that were taken back or noted anew since. */
function noticesShown({ notices, marks }: BoilState, t: number): string[] {
  const recent = notices.filter((notice) => t - notice.t < NOTICE_LASTS_MS).map(({ sentence }) => sentence);
  return recent.filter((sentence) => {
    const about = marks.filter((kept) => isAbout(sentence, kept));
    return about.length === 0 || about.some((kept) => !isSettled(kept, marks));
  });
}

const isAbout = (sentence: string, { doubt, remark }: KeptMark): boolean =>
  [doubt, remark].some((said) => said !== null && sentence.startsWith(said));

/** Of these the newest stands for those before it; a second top-up says nothing of the first. */
const MEASURED: ReadonlySet<Mark['kind']> = new Set(['water-check', 'pressure', 'depth', 'density', 'reading']);

/** It was taken back, or the same was measured after it and counts. */
function isSettled(kept: BoilState['marks'][number], marks: BoilState['marks']): boolean {
  const { mark, t } = kept;
  const isLater = (other: typeof kept): boolean => counts(other) && other.t > t && other.mark.kind === mark.kind;
  const isAnew = MEASURED.has(mark.kind) && marks.some((other) => isLater(other) && isOfSame(other.mark, mark));
  return kept.withdrawn || isAnew;
}

/** Marks that name neither pan nor probe are of the place or of the thermometer in the hand. */
const isOfSame = (one: Mark, other: Mark): boolean =>
  ('pan' in one ? one.pan : null) === ('pan' in other ? other.pan : null) &&
  ('probe' in one ? one.probe : null) === ('probe' in other ? other.probe : null);

/** What was counted when a depth was noted, and what is believed since, as they stand in its pan, mm. */
function depthsOf(
  { designs }: BoilState,
  { mark, seenAs, countsAs, swell }: KeptMark,
): Pick<BoilView['marks'][number], 'depths'> {
  const vessel = mark.kind === 'depth' ? (designs[mark.pan]?.vessel ?? null) : null;
  if (vessel === null || seenAs === null || countsAs === null || swell === null) return {};
  const countedMm = depthAtLitres(vessel, seenAs * swell);
  const takenMm = depthAtLitres(vessel, countsAs * swell);
  return countedMm === null || takenMm === null ? {} : { depths: { countedMm, takenMm } };
}

function cameTo({ designs }: BoilState, mark: Mark): number | null {
  const design = mark.kind === 'density' ? designs[mark.pan] : undefined;
  return design === undefined || mark.kind !== 'density' ? null : (readInstrument(mark, design.shares)?.brix ?? null);
}

/** What is no warmer stands in no fire, °C (judgement: no shed is so warm). */
const UNHEATED_C = 40;

/** Pans of which nothing was noted, and that show no heat: an empty pot with a probe in it, or one that nobody reads. */
function unusedPans({ marks }: BoilState, readings: readonly PanReading[], last: readonly LastHeat[]): string[] {
  const unheated = readings.filter(({ pan, temperature_c: celsius, stage }) => {
    const shown = celsius ?? last.find((one) => one.pan === pan)?.celsius ?? null;
    return stage !== 'off' && (shown === null || shown <= UNHEATED_C);
  });
  const unused = new Set(unheated.map(({ pan }) => pan));
  for (const { mark, withdrawn } of marks) {
    if (withdrawn) continue;
    if (mark.kind === 'transfer') [mark.from, mark.to].forEach((pan) => unused.delete(pan));
    else if ('pan' in mark && typeof mark.pan === 'string') unused.delete(mark.pan);
  }
  return [...unused];
}

/** The alarms with their words, the one sound, and what nobody has answered, at t (ms). */
export function callsView(
  book: AlarmBook,
  t: number,
  readings: readonly PanReading[] = [],
): Pick<BoilView, 'alarms' | 'sound' | 'unanswered'> {
  const listed = lowBehindFinish(listAlarms(book));
  const ofFinish = listed.filter(isOfFinish);
  return {
    alarms: listed.map((alarm) => {
      const reading = readings.find(({ pan }) => pan === alarm.pan) ?? null;
      const isNearlySyrup = ofFinish.some(({ pan }) => pan === alarm.pan);
      return { ...alarm, ...alarmWords(alarm.alarm, reading, alarm.why, isNearlySyrup) };
    }),
    sound: {
      priority: soundNow(book, t),
      silencedUntil: book.silencedUntil,
      ...(book.silencedBy !== undefined && { silencedBy: book.silencedBy }),
    },
    unanswered: unansweredHigh(book, t),
  };
}

/** Temperature of the finish and of the scorch limit for a pan's own sap at today's water point, °C. */
export function panLimits(
  state: BoilState,
  pan: string,
): { pan: string; finish_c: number | null; scorch_c: number | null } {
  const design = state.designs[pan]!;
  if (design.ceilingC !== null) return { pan, finish_c: null, scorch_c: design.ceilingC };
  const { waterC, limits } = state.around[pan]!;
  const at = (rise: number | null): number | null => (waterC === null || rise === null ? null : waterC + rise);
  return { pan, finish_c: at(limits.finish.riseC), scorch_c: at(limits.scorch.riseC) };
}

function probesShown(state: BoilState, t: number): ProbeShown[] {
  const known = (state.header.probes ?? []).map(({ id, port, channel }) =>
    probeShown(
      { id, port, channel, pan: state.probePan[id] ?? null },
      state.probes[id]!,
      state.corrections[id] ?? null,
      t,
    ),
  );
  const strays = Object.entries(state.strays).map(([id, track]) => {
    const blank = id.indexOf(' ');
    const [port, channel] = [id.slice(0, blank), id.slice(blank + 1)];
    return probeShown({ id, port, channel, pan: null }, track, null, t);
  });
  return [...known, ...strays];
}

function probeShown(
  of: Pick<ProbeShown, 'id' | 'port' | 'channel' | 'pan'>,
  track: ProbeTrack,
  correctionC: number | null,
  t: number,
): ProbeShown {
  const state = probeState(track, t);
  return {
    ...of,
    celsius: state === 'lost' || state === 'broken' ? null : track.celsius,
    correctionC,
    ageSeconds: track.heardAt === null ? null : (t - track.heardAt) / 1000,
    periodSeconds: track.periodMs === null ? null : periodMs(track) / 1000,
    state,
  };
}

function waterShown(water: Water): BoilView['water'] {
  const plusMinus = water.celsius === null ? null : Z80 * water.sigmaC;
  return { celsius: water.celsius, plusMinus, from: waterFrom(water) };
}

/** What the water point rests on most; null while it is not known. */
export function waterFrom({ celsius, origin }: Water): From | null {
  const { kind, at } = origin;
  if (celsius === null || kind === 'nothing') return null;
  return { kind: kind === 'check' ? 'boiling-check' : kind, at };
}
