// What a lead means: when the call comes, where the pan stands then at today's fire, and what speaks against the choice.
import type { Header, Now, Pan, Reading, Settings } from '../client/types.ts';
import { exactStrength } from './amounts.ts';
import { panName, panNamed } from './pan-words.ts';

export type LeadName = 'near_finish_lead_s' | 'scorch_lead_s' | 'low_level_lead_s';

const CALLED: Record<LeadName, (minutes: number) => string> = {
  near_finish_lead_s: (minutes) => `Called about ${minutes} min before the finish: time to walk there and get ready.`,
  scorch_lead_s: (minutes) => `Called about ${minutes} min before it burns: time to get there and shut the heat.`,
  low_level_lead_s: (minutes) => `Called about ${minutes} min before the least depth: time to fetch sap.`,
};

/** Outside of these a lead is taken, with a word on what follows; s. Judgement. */
const SENSE: Record<LeadName, { short: number; tooShort: string; long: number; tooLong: string }> = {
  near_finish_lead_s: {
    short: 300,
    tooShort: 'That is short: the forecast itself is a minute or two in doubt by then.',
    long: 1200,
    tooLong: 'That is long: the forecast is less sure so early, and you may stand there and wait.',
  },
  scorch_lead_s: {
    short: 180,
    tooShort: 'That is short: can you be there and have the heat off by then?',
    long: 480,
    tooLong: 'That is long: a pan may be called that is only near its finish.',
  },
  low_level_lead_s: {
    short: 300,
    tooShort: 'That is short if the sap must be carried or warmed first.',
    long: 1500,
    tooLong: 'That is long: pans that you keep shallow will call often.',
  },
};

/** The sentences beside a lead of so many seconds; those of the pans come only where their finish is in sight. */
export function leadSentences(name: LeadName, seconds: number, settings: Settings, pans: PanNow[]): string[] {
  const { short, tooShort, long, tooLong } = SENSE[name];
  const doubt = seconds < short ? [tooShort] : seconds > long ? [tooLong] : [];
  const places = name === 'near_finish_lead_s' ? pans.flatMap((pan) => placeAtCall(seconds, settings, pan)) : [];
  return [CALLED[name](Math.round(seconds / 60)), ...places, ...doubt];
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
      return lead === null ? [] : [`${panName(header, pan)} has its own: ${Math.round(lead / 60)} min before.`];
    }),
  };
}

function placeAtCall(leadS: number, settings: Settings, { header, reading }: PanNow): string[] {
  const brix = strengthAtLead(reading, finishBrixOf(header, reading.pan), leadS);
  if (brix === null) return [];
  const at = exactStrength(Math.round(brix), settings);
  return [`${panName(header, reading.pan)}: at today’s fire that is at about ${at}.`];
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
