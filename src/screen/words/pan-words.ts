// A pan's state in words: its stage, its probe, and what is not known yet with the mark that would help.
import type { Advice, MarkKind, Reading } from '../client/types.ts';
import type { Header, Pan } from '../client/types.ts';

const STAGE_WORDS: Record<Reading['stage'], string> = {
  unknown: 'Not known yet',
  warming: 'Warming up',
  boiling: 'Boiling',
  thickening: 'Thickening',
  'near-finish': 'Nearly done',
  finished: 'Done: take it off',
  off: 'Off the fire',
};

export function stageWords(stage: Reading['stage']): string {
  return STAGE_WORDS[stage];
}

const PROBE_WORDS: Record<NonNullable<Reading['probe']>, string> = {
  ok: 'Probe good',
  late: 'Probe is late',
  lost: 'Probe says nothing',
  broken: 'Probe broken',
  stuck: 'Probe stuck on one number',
  suspect: 'Probe in doubt',
};

export function probeWords(probe: Reading['probe']): string {
  return probe === null ? 'No probe, readings by hand' : PROBE_WORDS[probe];
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
  return pans[place]?.name ?? (place < 0 ? 'A pan' : `Pan ${place + 1}`);
}

/** What a probe is called: its pan's name when it has one to itself, else the board's letter and channel. */
export function probeName(header: Header | null, id: string): string {
  const probe = header?.probes?.find((each) => each.id === id);
  return probe === undefined ? id : `${probe.channel} on board ${probe.port}`;
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
const MARK_CALL: Partial<Record<MarkKind, string>> = {
  'top-up': 'Note what is in it',
  reading: 'Read by hand',
  'water-check': 'Check in boiling water',
  depth: 'Note the depth',
  density: 'Note a density',
  pressure: 'Note the air pressure',
};

export function markCall(kind: MarkKind): string | null {
  return MARK_CALL[kind] ?? null;
}

/** The most useful thing that is missing first. `ask` is the mark that would narrow the forecast most: then it alone is asked for. */
export function notKnownYet(reading: Reading, ask: Advice['ask'] = null): Unknown[] {
  if (reading.stage === 'off') return [];
  if (reading.temperature_c === null) return [noTemperature(reading)];
  const found: Unknown[] = [];
  if (ask !== null && reading.water_c !== null) return [whenDone(reading, ask)];
  if (reading.water_c === null) found.push(NO_WATER_POINT);
  if (reading.litres === null) found.push(NO_LITRES);
  if (reading.brix === null && reading.water_c !== null) found.push(NO_STRENGTH);
  if (reading.finish_in_s === null && reading.brix !== null) found.push(...noForecast(reading));
  return found;
}

function noTemperature(reading: Reading): Unknown {
  const how = reading.probe === null ? 'no probe here: read a thermometer' : 'see to the probe, or read a thermometer';
  return { what: 'temperature', how, mark: 'reading' };
}

const NO_WATER_POINT: Unknown = {
  what: 'how hot water boils here today',
  how: 'a probe in plain boiling water tells it, or the air pressure',
  mark: 'water-check',
};
const NO_LITRES: Unknown = { what: 'litres and depth', how: 'a depth tells them', mark: 'depth' };
const NO_STRENGTH: Unknown = {
  what: 'strength',
  how: 'too thin to tell by its heat',
  mark: 'density',
};

const TELLS_MOST: Record<NonNullable<Advice['ask']>, string> = {
  depth: 'tell how deep it stands in the pan',
  'top-up': 'tell how much is in the pan',
  density: 'a density reading would tell most',
  'water-check': 'its probe in plain boiling water would tell most',
  pressure: "today's air pressure would tell most",
};

function whenDone({ finish_in_s: left }: Reading, ask: NonNullable<Advice['ask']>): Unknown {
  return { what: 'when it is done', how: TELLS_MOST[ask], mark: ask, roughly: left !== null };
}

/** At its finish there is nothing to forecast; without litres, their own line says what is missing. */
function noForecast(reading: Reading): Unknown[] {
  if (reading.stage === 'finished' || reading.litres === null) return [];
  return [{ what: 'when it is done', how: whyNoForecast(reading), mark: null }];
}

function whyNoForecast({ stage, probe }: Reading): string {
  if (stage === 'warming' || stage === 'unknown') return 'it does not boil yet';
  if (probe === null) return 'needs readings by hand, one after another';
  return isDoubtful(probe) ? 'the probe has to be good first' : 'needs a while of steady boiling';
}
