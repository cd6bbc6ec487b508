// A pan's state in words: its stage, its probe, and what is not known yet with the mark that would help.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Advice, MarkKind, Reading } from '../client/types.ts';
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

export function stageWords(stage: Reading['stage']): string {
  return say(STAGE_WORDS[stage]);
}

const PROBE_WORDS: Record<NonNullable<Reading['probe']>, MessageKey> = {
  ok: 'pan.probe.ok',
  late: 'pan.probe.late',
  lost: 'pan.probe.lost',
  broken: 'pan.probe.broken',
  stuck: 'pan.probe.stuck',
  suspect: 'pan.probe.suspect',
};

export function probeWords(probe: Reading['probe']): string {
  return say(probe === null ? 'pan.probe.none' : PROBE_WORDS[probe]);
}

/** True where the number on the card may not be what is in the pan. */
export function isDoubtful(probe: Reading['probe']): boolean {
  return probe !== null && probe !== 'ok';
}

export function panNamed(header: Header | null, id: string | null): Pan | null {
  return header?.pans?.find((pan) => pan.id === id) ?? null;
}

/** What the person calls the pan; by its place in the list when it has no name. */
export function panName(header: Header | null, id: string): string {
  const pans = header?.pans ?? [];
  const place = pans.findIndex((pan) => pan.id === id);
  return pans[place]?.name ?? (place < 0 ? say('pan.any') : say('pan.numbered', { number: place + 1 }));
}

/** What a probe is called: its pan's name when it has one to itself, else the board's letter and channel. */
export function probeName(header: Header | null, id: string): string {
  const probe = header?.probes?.find((each) => each.id === id);
  return probe === undefined ? id : say('probe.called', { channel: probe.channel, port: probe.port });
}

/** Something that is not known, why, and the mark that would help (null where only waiting helps). */
export interface Unknown {
  what: string;
  how: string;
  mark: MarkKind | null;
  /** It is known, but within a wide range. */
  roughly?: boolean;
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

export function markCall(kind: MarkKind): string | null {
  const key = MARK_CALL[kind];
  return key === undefined ? null : say(key);
}

/** The most useful thing that is missing first. `ask` is the mark that would narrow the forecast most: then it alone is asked for. */
export function notKnownYet(reading: Reading, ask: Advice['ask'] = null): Unknown[] {
  if (reading.stage === 'off') return [];
  if (reading.temperature_c === null) return [noTemperature(reading)];
  const found: Unknown[] = [];
  if (ask !== null && reading.water_c !== null) return [whenDone(reading, ask)];
  if (reading.water_c === null) found.push(missing('pan.unknown.water', 'pan.unknown.water.how', 'water-check'));
  if (reading.litres === null) found.push(missing('pan.unknown.litres', 'pan.unknown.litres.how', 'depth'));
  if (reading.brix === null && reading.water_c !== null)
    found.push(missing('pan.unknown.strength', 'pan.unknown.strength.how', 'density'));
  if (reading.finish_in_s === null && reading.brix !== null) found.push(...noForecast(reading));
  return found;
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
