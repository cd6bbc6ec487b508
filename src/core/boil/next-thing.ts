// The first line of the screen: the one thing to do next and when, over all pans.
import { foremost } from '../alarms/alarm.ts';
import type { ListedAlarm } from '../alarms/alarm.ts';
import type { PanReading } from '../pan/reading.ts';
import { isRunLow, isTopUpAdvised } from '../quantities/top-up-advice.ts';
import { isBurnt } from '../quantities/burnt.ts';
import type { Advice } from './advice.ts';

/** The next thing to do; times in ms of boil time, null where it is due now or not known. */
export interface NextThing {
  what:
    | 'alarm'
    | 'burnt'
    | 'look-in'
    | 'finish'
    | 'top-up'
    | 'smaller-pot'
    | 'foam'
    | 'tell-water'
    | 'tell-litres'
    | 'read-by-hand'
    | 'watch';
  pan: string | null;
  at: number | null;
  low: number | null;
  high: number | null;
  text: string | null;
}

type Advised = Pick<Advice, 'pan' | 'shallow'> & Partial<Pick<Advice, 'readAgainAt' | 'tooLittle' | 'fellC'>>;

/** Forecasts further ahead than this do not lead the screen, s. */
const WORTH_SAYING_S = 12 * 3600;

/** What comes sooner than this goes before a word on foam, ms. */
const PRESSING_MS = 10 * 60_000;

/** Syrup rises from about 55 to 60 °Bx on (common practice); no probe sees it, so it is said just before, once on the way up. */
const BEFORE_FOAM_BRIX = { from: 52, to: 55 };

/** A pan of which nothing was noted for so long is not used today, as long as another is, ms (judgement). */
const UNUSED_AFTER_MS = 15 * 60_000;

/**
 * An unanswered alarm first; else what comes first of all pans; else the number that would help most. `unused` are pans
 * of which nothing was noted and that show no heat: they lead last, and after a while not at all. `watchedMs` is how long
 * the boil has been watched.
 */
export function nextThing(
  readings: readonly PanReading[],
  alarms: readonly ListedAlarm[],
  waterKnown: boolean,
  t: number,
  advice: readonly Advised[] = [],
  unused: ReadonlySet<string> = new Set(),
  watchedMs = t,
): NextThing {
  const standing = alarms.filter((one) => one.condition === 'active' && one.asideUntil === null);
  const asking = foremost(standing.filter((one) => !one.answered));
  // Seen or not, what burns goes before a call that is less urgent.
  const burning = standing.find((one) => one.alarm === 'scorch-risk' && one.priority === 'high');
  const alarm = asking !== undefined && asking.priority !== 'high' ? (burning ?? asking) : asking;
  if (alarm !== undefined) return { what: 'alarm', pan: alarm.pan, at: null, low: null, high: null, text: alarm.alarm };
  // Seen or not, burnt sugar stays dangerous until it has cooled.
  const burnt = readings.find((reading) => isBurnt(reading.temperature_c));
  if (burnt !== undefined) return plain('burnt', burnt.pan);
  if (!waterKnown && readings.length > 0) return plain('tell-water', null);
  // It was thick, and nobody knows what it is now.
  const fell = advice.find(({ fellC = null }) => fellC !== null);
  if (fell !== undefined) return plain('look-in', fell.pan);
  // Seen or not, a finished pan that is still on the fire comes before everything else.
  const done = readings.find((reading) => reading.stage === 'finished');
  if (done !== undefined) return plain('finish', done.pan);
  const of = (pan: string): Advised | null => advice.find((one) => one.pan === pan) ?? null;
  const low = readings.find(isRunLow);
  if (low !== undefined) return { ...plain(cannotWaitFor(low, of(low.pan)), low.pan), at: t };
  const poured = advice.flatMap((one) => smallerPot(one, t));
  const coming = [
    ...poured,
    ...handReadings(readings, advice, t),
    ...readings.flatMap((reading) => comingUp(reading, of(reading.pan), t)),
  ].sort((a, b) => a.at! - b.at!);
  const foam = readings.find((reading) => isAboutToFoam(reading));
  const isPressing = coming[0] !== undefined && coming[0].at! - t < PRESSING_MS;
  if (foam !== undefined && !isPressing) return plain('foam', foam.pan);
  // A pan with sap in it that was never read may boil down unseen: it is read before what comes later.
  const neverRead = readings.find((reading) => reading.litres !== null && isUnread(reading, of(reading.pan)));
  const isDue = coming[0] !== undefined && coming[0].at! <= t + ONE_ROUND_MS;
  if (neverRead !== undefined && !isDue && (!isPressing || coming[0]!.what === 'read-by-hand'))
    return plain('read-by-hand', neverRead.pan);
  if (coming[0] !== undefined) return coming[0];
  const used = readings.filter(({ pan }) => !unused.has(pan));
  const asked = used.length === 0 || watchedMs < UNUSED_AFTER_MS ? [...used, ...readings] : used;
  const unsaid = asked.find(
    (reading) => reading.litres === null && reading.stage !== 'off' && reading.stage !== 'finished',
  );
  if (unsaid !== undefined) return plain('tell-litres', unsaid.pan);
  const unread = asked.find((reading) => isUnread(reading, null));
  return unread === undefined ? plain('watch', null) : plain('read-by-hand', unread.pan);
}

/** No probe hangs in it and no thermometer shows it; `advice` tells of one that was read, and is to be read again. */
const isUnread = ({ probe, temperature_c: celsius, stage }: PanReading, advice: Advised | null): boolean =>
  probe === null && celsius === null && stage === 'unknown' && typeof advice?.readAgainAt !== 'number';

/** Readings by hand that fall due within this are for one round, ms. */
const ONE_ROUND_MS = 2 * 60_000;

/** When pans are to be read by hand; of those that are due the strongest alone, for it has the least time. */
function handReadings(readings: readonly PanReading[], advice: readonly Advised[], t: number): NextThing[] {
  const all = advice.flatMap(readByHand);
  const due = all.filter(({ at }) => at! <= t + ONE_ROUND_MS);
  const brixOf = ({ pan }: NextThing): number => readings.find((reading) => reading.pan === pan)?.brix ?? 0;
  const first = due.toSorted((a, b) => brixOf(b) - brixOf(a) || a.at! - b.at!)[0];
  return first === undefined ? all : [first, ...all.filter((each) => !due.includes(each))];
}

function readByHand({ pan, readAgainAt }: Advised): NextThing[] {
  return typeof readAgainAt === 'number' ? [{ ...plain('read-by-hand', pan), at: readAgainAt }] : [];
}

function plain(what: NextThing['what'], pan: string | null): NextThing {
  return { what, pan, at: null, low: null, high: null, text: null };
}

function isAboutToFoam({ brix, stage }: PanReading): boolean {
  if (brix === null || (stage !== 'thickening' && stage !== 'near-finish')) return false;
  return brix >= BEFORE_FOAM_BRIX.from && brix < BEFORE_FOAM_BRIX.to;
}

/** A batch that would end too shallow is poured into a smaller pot once it is thick enough. */
function smallerPot({ pan, shallow }: Advised, t: number): NextThing[] {
  const { pourInS } = shallow ?? { pourInS: null };
  // Thicker than that, the card says it: the finish is what leads then.
  if (pourInS === null || pourInS <= 0 || pourInS > WORTH_SAYING_S) return [];
  return [{ what: 'smaller-pot', pan, at: t + pourInS * 1000, low: null, high: null, text: null }];
}

/** Into what is thick, or too little for its pot, a smaller pot is the other way out. */
const cannotWaitFor = ({ stage }: PanReading, advice: Advised | null): 'top-up' | 'smaller-pot' =>
  stage === 'near-finish' || (advice?.shallow ?? null) !== null ? 'smaller-pot' : 'top-up';

function comingUp(reading: PanReading, advice: Advised | null, t: number): NextThing[] {
  if (reading.stage === 'off' || reading.stage === 'finished') return [];
  const things: NextThing[] = [];
  const { finish_in_s: finish, top_up_in_s: topUp } = reading;
  // What cannot be finished where it is has no time at which it is done, and a smaller pot is told of only when it is of use.
  const isEarly = advice?.tooLittle === true && advice.shallow === null;
  if (finish !== null && finish < WORTH_SAYING_S && !isEarly) {
    const range = {
      low: t + (reading.finish_low_s ?? finish) * 1000,
      high: t + (reading.finish_high_s ?? finish) * 1000,
    };
    things.push({ what: 'finish', pan: reading.pan, at: t + finish * 1000, ...range, text: null });
  }
  if (topUp !== null && topUp < WORTH_SAYING_S && isTopUpAdvised(reading)) {
    things.push({ what: 'top-up', pan: reading.pan, at: t + topUp * 1000, low: null, high: null, text: null });
  }
  return things;
}
