// What a lead means: when the call comes, where the pan stands then at today's fire, and what speaks against the choice.
import { inMinutes } from '../../core/quantities/time.ts';
import type { Header, Now, Pan, Reading, Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { exactStrength } from './amounts.ts';
import { panName, panNamed } from './pan-words.ts';

export type LeadName = 'near_finish_lead_s' | 'scorch_lead_s' | 'low_level_lead_s';

const CALLED: Record<LeadName, MessageKey> = {
  near_finish_lead_s: 'lead.near_finish',
  scorch_lead_s: 'lead.scorch',
  low_level_lead_s: 'lead.low_level',
};

/** Outside of these a lead is taken, with a word on what follows; s. Judgement. */
const SENSE: Record<LeadName, { short: number; tooShort: MessageKey; long: number; tooLong: MessageKey }> = {
  near_finish_lead_s: {
    short: 300,
    tooShort: 'lead.near_finish.short',
    long: 1200,
    tooLong: 'lead.near_finish.long',
  },
  scorch_lead_s: {
    short: 180,
    tooShort: 'lead.scorch.short',
    long: 480,
    tooLong: 'lead.scorch.long',
  },
  low_level_lead_s: {
    short: 300,
    tooShort: 'lead.low_level.short',
    long: 1500,
    tooLong: 'lead.low_level.long',
  },
};

/** As it is set, to the tenth of a minute: "7.5 min", so that it reads as in the name of what was tried. */
export const leadTime = (seconds: number): string =>
  seconds % 60 === 0 ? inMinutes(seconds) : `${inField(seconds / 60, 1)}\u00a0min`;

/** The sentences beside a lead of so many seconds; those of the pans come only where their finish is in sight. */
export function leadSentences(name: LeadName, seconds: number, settings: Settings, pans: PanNow[]): string[] {
  const { short, tooShort, long, tooLong } = SENSE[name];
  const doubt = seconds < short ? [say(tooShort)] : seconds > long ? [say(tooLong)] : [];
  const places = name === 'near_finish_lead_s' ? pans.flatMap((pan) => placeAtCall(seconds, settings, pan)) : [];
  return [say(CALLED[name], { time: inMinutes(seconds) }), ...places, ...doubt];
}

/** A pan of a boil as it stands. */
export interface PanNow {
  header: Header | null;
  reading: Reading;
}

/** The pans that go by the leads of the whole boil, and in a sentence those that have one of their own. */
export function pansUnder(name: LeadName, now: Now | null): { under: PanNow[]; own: string[] } {
  if (now === null || now.ended) return { under: [], own: [] };
  const { header, readings } = now;
  const leadOf = (pan: string): number | null => panNamed(header, pan)?.settings?.[name] ?? null;
  return {
    under: readings.filter(({ pan }) => leadOf(pan) === null).map((reading) => ({ header, reading })),
    own: readings.flatMap(({ pan }) => {
      const lead = leadOf(pan);
      return lead === null ? [] : [say('lead.own', { pan: panName(header, pan), time: inMinutes(lead) })];
    }),
  };
}

function placeAtCall(leadS: number, settings: Settings, { header, reading }: PanNow): string[] {
  const brix = strengthAtLead(reading, finishBrixOf(header, reading.pan), leadS);
  if (brix === null) return [];
  const at = exactStrength(Math.round(brix), settings);
  return [say('lead.place', { pan: panName(header, reading.pan), at })];
}

/** kg/kg of a strength in °Bx. */
export const waterPerSugar = (brix: number): number => (100 - brix) / brix;

/** Null where the finish is a rise, which has no strength of its own, and for a pan that is kept below a boil. */
export function finishBrixOf(header: Header | null, id: string): number | null {
  const pan: Pan | null = panNamed(header, id);
  if (pan === null || pan.finish?.ceiling_c !== undefined) return null;
  if (pan.finish === undefined) return pan.sap === undefined || pan.sap === 'maple' ? 66.9 : 67;
  return 'brix' in pan.finish ? pan.finish.brix : null;
}

/**
 * The strength (°Bx) `leadS` seconds before the finish, null where that is past or not known: under steady heat the
 * water per sugar, (100 − B) / B, falls in a straight line.
 */
export function strengthAtLead(
  { brix, finish_in_s: left }: Pick<Reading, 'brix' | 'finish_in_s'>,
  finishBrix: number | null,
  leadS: number,
): number | null {
  if (brix === null || brix <= 0 || left === null || finishBrix === null || left <= leadS) return null;
  const atFinish = waterPerSugar(finishBrix);
  const atCall = atFinish + ((waterPerSugar(brix) - atFinish) * leadS) / left;
  return 100 / (1 + atCall);
}
