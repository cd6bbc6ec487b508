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

/** The sentences beside a lead; those of the pans come only where their finish is in sight. */
export function leadSentences(name: LeadName, settings: Settings, now: Now | null): string[] {
  const seconds = settings[name];
  const { short, tooShort, long, tooLong } = SENSE[name];
  const doubt = seconds < short ? [tooShort] : seconds > long ? [tooLong] : [];
  const pans = name === 'near_finish_lead_s' && now !== null && !now.ended ? atToday(seconds, settings, now) : [];
  return [CALLED[name](Math.round(seconds / 60)), ...pans, ...doubt];
}

function atToday(leadS: number, settings: Settings, { header, readings }: Now): string[] {
  return readings.flatMap((reading) => {
    const brix = strengthAtLead(reading, finishBrixOf(header, reading.pan), leadS);
    if (brix === null) return [];
    return [
      `${panName(header, reading.pan)}: at today’s fire that is at about ${exactStrength(Math.round(brix), settings)}.`,
    ];
  });
}

/** Null where the finish is a rise, which has no strength of its own, and for a pan that is kept below a boil. */
function finishBrixOf(header: Header | null, id: string): number | null {
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
  const waterPerSugar = (strength: number): number => (100 - strength) / strength;
  const atFinish = waterPerSugar(finishBrix);
  const atCall = atFinish + ((waterPerSugar(brix) - atFinish) * leadS) / left;
  return 100 / (1 + atCall);
}
