// A pan's state in words: its stage, its probe, and what is not known yet with the mark that would help.
import { isBurnt } from '../../core/quantities/burnt.ts';
import { boardCalled } from '../../protocol/boards.ts';
import { counts } from '../../protocol/mark-flow.ts';
import { calledById } from '../probes/kept.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Advice, MarkKind, Now, Reading } from '../client/types.ts';
import type { Header, Pan } from '../client/types.ts';

const STAGE_WORDS: Record<Reading['stage'], MessageKey> = {
  unknown: 'pan.stage.unknown',
  warming: 'pan.stage.warming',
  boiling: 'pan.stage.boiling',
  thickening: 'pan.stage.thickening',
  'near-finish': 'pan.stage.near_finish',
  finished: 'pan.stage.finished',
  off: 'pan.stage.off',
};

/** How far a pan is, in a word. */
function stageWords(stage: Reading['stage']): string {
  return say(STAGE_WORDS[stage]);
}

/** Without a thermometer nobody sees these: a count tells them, so they are put as a question, short enough to stand beside a name. */
const COUNTED: ReadonlySet<Reading['stage']> = new Set(['boiling', 'thickening', 'near-finish']);

/** How far this pan is, in a word, with a question mark where no thermometer tells it. */
export function stageOf({ stage, temperature_c: celsius }: Reading): string {
  const words = stageWords(stage);
  return celsius === null && COUNTED.has(stage) ? say('pan.stage.unseen', { stage: words }) : words;
}

/** True in a live boil that runs on with no pan on the fire: what is left is to end it. A pan that was never used is waited for by nobody. */
export function isAllOff({ view, mode, ended, readings, unused, marks }: Pick<Now, OffNow>): boolean {
  const isOff = ({ stage }: Reading): boolean => stage === 'off';
  const wasUsed = ({ pan }: Reading): boolean => !isForLater(marks, pan);
  if (view !== 'live' || mode !== 'live' || ended || !readings.some((one) => isOff(one) && wasUsed(one))) return false;
  return readings.every((reading) => isOff(reading) || unused.includes(reading.pan));
}

type OffNow = 'view' | 'mode' | 'ended' | 'readings' | 'unused' | 'marks';

/** All that was noted of it is that it stands empty: it waits for what is poured into it. */
function isForLater(marks: Now['marks'], pan: string): boolean {
  const own = marks.filter(
    ({ mark, withdrawn }) =>
      !withdrawn && (mark.kind === 'transfer' ? [mark.from, mark.to].includes(pan) : 'pan' in mark && mark.pan === pan),
  );
  return own.length > 0 && own.every(({ mark }) => mark.kind === 'depth' && mark.mm === 0);
}

const PROBE_WORDS: Record<NonNullable<Reading['probe']>, MessageKey> = {
  ok: 'pan.probe.ok',
  late: 'pan.probe.late',
  lost: 'pan.probe.lost',
  broken: 'pan.probe.broken',
  stuck: 'pan.probe.stuck',
  suspect: 'pan.probe.suspect',
};

/** How a pan’s probe is, in words; null is a pan without one. */
export function probeWords(probe: Reading['probe']): string {
  return say(probe === null ? 'pan.probe.none' : PROBE_WORDS[probe]);
}

/** How one probe is: before its first number is due, that it is waited for. */
export const probeStateWords = ({ state, ageSeconds }: Pick<Now['probes'][number], 'state' | 'ageSeconds'>): string =>
  state === 'late' && ageSeconds === null ? say('pan.probe.waiting') : probeWords(state);

/** A pan whose probe is late before any number came of it: the first is waited for. */
export const isWaitedFor = ({ probes }: Pick<Now, 'probes'>, { pan, probe }: Reading): boolean =>
  probe === 'late' && probes.every((one) => one.pan !== pan || one.ageSeconds === null);

/** How a pan's probe is: one that is set up with it and hangs elsewhere leaves no readings by hand behind. */
export function probeLine(now: Pick<Now, 'header' | 'probes'>, reading: Reading): string {
  if (isWaitedFor(now, reading)) return say('pan.probe.waiting');
  if (reading.probe === 'ok' && isBurnt(reading.temperature_c)) return say('pan.probe.beyond');
  const isAway = reading.probe === null && [panNamed(now.header, reading.pan)?.probe ?? []].flat().length > 0;
  return isAway ? say('pan.probe.away') : probeWords(reading.probe);
}

/** All of it was taken out: whatever was read of it before tells of what is not there any more. */
export const isEmptied = ({ stage, litres }: Pick<Reading, 'stage' | 'litres'>): boolean =>
  stage === 'off' && litres === 0;

/** No thermometer shows it now: what is said of when it is done is a count. */
export const isUnseen = ({ temperature_c: celsius }: Pick<Reading, 'temperature_c'>): boolean => celsius === null;

/** True where the number on the card may not be what is in the pan. */
export function isDoubtful(probe: Reading['probe']): boolean {
  return probe !== null && probe !== 'ok';
}

/** The pan of this id; null where there is none. */
export function panNamed(header: Header | null, id: string | null): Pan | null {
  return header?.pans?.find((pan) => pan.id === id) ?? null;
}

/** What the person calls the pan; by its place in the list when it has no name. */
export function panName(header: Header | null, id: string): string {
  const pans = header?.pans ?? [];
  const place = pans.findIndex((pan) => pan.id === id);
  return pans[place]?.name ?? (place < 0 ? say('pan.any') : say('pan.numbered', { number: place + 1 }));
}

/** What a probe is called: as somebody named it, else by its channel and board. */
export function probeName(header: Header | null, id: string): string {
  const named = calledById(id, header);
  if (named !== null) return named;
  const probe = header?.probes?.find((each) => each.id === id);
  return probe === undefined
    ? id
    : say('probe.called', { channel: probe.channel, port: boardCalled(header, probe.port) });
}

/** Something that is not known, why, and the mark that would help (null where only waiting helps). */
export interface Unknown {
  what: string;
  how: string;
  mark: MarkKind | null;
  /** It is known, but within a wide range. */
  roughly?: boolean;
  /** What is told of it contradicts itself: no range stands beside it. */
  inDoubt?: boolean;
  /** What to press, where that is not as usual for the mark. */
  call?: string;
}

/** What to press for the mark that would help. */
const MARK_CALL: Partial<Record<MarkKind, MessageKey>> = {
  'top-up': 'pan.call.top_up',
  reading: 'pan.call.reading',
  'water-check': 'pan.call.water_check',
  depth: 'pan.call.depth',
  density: 'pan.call.density',
  pressure: 'pan.call.pressure',
};

/** What to press for the mark that would help; null for a kind that nobody is asked for. */
export function markCall(kind: MarkKind): string | null {
  const key = MARK_CALL[kind];
  return key === undefined ? null : say(key);
}

/** What is not sure of a pan, beside what its reading shows. */
interface Doubts {
  /** By how much it fell unexplained, printed with its unit. */
  fell?: string | null;
  /** Its card shows between which amounts it holds. */
  litresRoughly?: boolean;
  /** It holds far more sugar than what was noted of it can make. */
  moreThanNoted?: boolean;
}

/**
 * The most useful thing that is missing first. `ask` is the mark that would narrow the forecast most: then it alone is asked
 * for. `isPlanned`: its card shows the strength of its cold sap. `doubts`: what else is not sure of it.
 */
export function notKnownYet(
  reading: Reading,
  ask: Advice['ask'] = null,
  isPlanned = false,
  { fell = null, litresRoughly = false, moreThanNoted = false }: Doubts = {},
): Unknown[] {
  if (reading.stage === 'off') return [];
  // A probe that is late before its first number is only waited for: soon it speaks, or is lost.
  if (reading.temperature_c === null) return reading.probe === 'late' ? [] : [noTemperature(reading)];
  if (fell !== null && reading.brix === null) return [fellUnexplained(fell)];
  const found: Unknown[] = [];
  if (moreThanNoted && reading.litres !== null)
    found.push({ ...missing('pan.unknown.litres', 'pan.unknown.litres.more', 'depth'), inDoubt: true });
  if (ask !== null && reading.water_c !== null)
    return [...found, ...(isAtOdds(reading) ? [atOdds()] : []), whenDone(reading, ask)];
  if (reading.water_c === null) found.push(noWater(reading));
  if (reading.litres === null)
    found.push({ ...missing('pan.unknown.litres', 'pan.unknown.litres.how', 'depth'), roughly: litresRoughly });
  if (reading.brix === null && reading.water_c !== null && !isPlanned)
    found.push(missing('pan.unknown.strength', whyNoStrength(reading), 'density'));
  else if (isAtOdds(reading)) found.unshift(atOdds());
  if (reading.finish_in_s === null && reading.brix !== null) found.push(...noForecast(reading));
  return found;
}

/** What is to be done first of a pan that no probe reads and nobody has read yet; null for any other. */
export function firstNote(
  now: Pick<Now, 'lastHeats' | 'marks'>,
  reading: Reading,
): { words: string; mark: MarkKind } | null {
  const { pan, probe, temperature_c: celsius, litres, stage } = reading;
  if (probe !== null || celsius !== null || stage === 'off' || now.lastHeats.some((one) => one.pan === pan))
    return null;
  if (litres !== null) return { words: say('pans.first_reading'), mark: 'reading' };
  return now.marks.some((each) => isFill(each, pan))
    ? { words: say('pans.first_gone'), mark: 'reading' }
    : { words: say('pans.first_contents'), mark: 'top-up' };
}

/** Litres that somebody noted for this pan. */
export const isFill = (noted: Now['marks'][number], pan: string): boolean =>
  counts(noted) && noted.mark.kind === 'top-up' && noted.mark.pan === pan && noted.mark.litres !== undefined;

/** A pan that is read by hand has no probe to hold into boiling water, but a thermometer. */
const noWater = ({ probe }: Reading): Unknown =>
  missing('pan.unknown.water', probe === null ? 'pan.unknown.water.by_hand' : 'pan.unknown.water.how', 'water-check');

/** Sap does not boil so far over water, °C: what was noted of it is something else than what it shows. */
const NO_SAP_C = 1.5;

/** Up to this strength nothing boils so far over water, °Bx: at 1.5 °C of rise it is over 40 (water-activity model). */
const STILL_THIN_BRIX = 25;

/** A thermometer that says thick beside a count that says thin: both stand on the card, and one of them is not so. */
export const isAtOdds = ({ rise_c: rise, brix_high: high }: Reading): boolean =>
  rise !== null && rise > NO_SAP_C && high !== null && high < STILL_THIN_BRIX;

const atOdds = (): Unknown => ({
  ...missing('pan.unknown.strength', 'pan.unknown.strength.at_odds', 'density'),
  inDoubt: true,
});

/** Somebody who stands at the pan knows what the thermometer does not: what went in, or that the tip is out. */
const fellUnexplained = (by: string): Unknown => ({
  what: say('pan.unknown.strength'),
  how: say('pan.unknown.strength.fell', { by }),
  mark: 'top-up',
  call: say('pan.call.poured'),
});

function whyNoStrength({ rise_c: rise, stage }: Reading): MessageKey {
  if (rise !== null && rise > NO_SAP_C) return 'pan.unknown.strength.at_odds';
  // At the height of a boil it may still be on its way through: that it is thin nothing shows before it stays there.
  return stage === 'warming' || stage === 'unknown' ? 'pan.unknown.strength.not_boiling' : 'pan.unknown.strength.how';
}

function noTemperature(reading: Reading): Unknown {
  const how = reading.probe === null ? 'pan.unknown.temperature.no_probe' : 'pan.unknown.temperature.probe';
  return missing('pan.unknown.temperature', how, 'reading');
}

function missing(what: MessageKey, how: MessageKey, mark: MarkKind | null): Unknown {
  return { what: say(what), how: say(how), mark };
}

const TELLS_MOST: Record<NonNullable<Advice['ask']>, MessageKey> = {
  depth: 'pan.tells_most.depth',
  'top-up': 'pan.tells_most.top_up',
  density: 'pan.tells_most.density',
  'water-check': 'pan.tells_most.water_check',
  pressure: 'pan.tells_most.pressure',
};

function whenDone({ finish_in_s: left }: Reading, ask: NonNullable<Advice['ask']>): Unknown {
  return { ...missing('pan.unknown.finish', TELLS_MOST[ask], ask), roughly: left !== null };
}

/** At its finish there is nothing to forecast; without litres, their own line says what is missing. */
function noForecast(reading: Reading): Unknown[] {
  if (reading.stage === 'finished' || reading.litres === null) return [];
  return [missing('pan.unknown.finish', whyNoForecast(reading), null)];
}

function whyNoForecast({ stage, probe }: Reading): MessageKey {
  if (stage === 'warming' || stage === 'unknown') return 'pan.no_forecast.not_boiling';
  if (probe === null) return 'pan.no_forecast.by_hand';
  return isDoubtful(probe) ? 'pan.no_forecast.probe' : 'pan.no_forecast.steady';
}
