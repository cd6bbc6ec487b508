// The words of setting probes up: what is heard, what is read in a line, whether a tip has come to rest, how much it is off.
import { formatNumber } from '../../core/quantities/format.ts';
import { Z80 } from '../../core/quantities/spread.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import type {
  HeardPort,
  LineSpan,
  PortListing,
  ProbeCheck,
  ProbeError,
  ProbeWatch,
  Proposal,
  Settings,
  Tried,
} from '../client/types.ts';
import { degrees, temperature } from './amounts.ts';

type StepName = 'board' | 'lines' | 'hand' | 'boil' | 'ice' | 'done';

export const STEP_WORDS: Record<StepName, { short: string; title: string }> = {
  board: { short: 'Board', title: 'Which board is it?' },
  lines: { short: 'Lines', title: 'What does it send?' },
  hand: { short: 'Which is which', title: 'Which probe is which?' },
  boil: { short: 'Boiling water', title: 'What do they show in boiling water?' },
  ice: { short: 'Ice water', title: 'What do they show in ice water?' },
  done: { short: 'Keep', title: 'Keep all of it' },
};

/** "Tarn Hollow workshop, serial number TH-0001". */
export function boardWords({ maker, serialNumber }: PortListing): string {
  const parts = [maker, serialNumber === null ? null : `serial number ${serialNumber}`];
  return parts.filter((part) => part !== null).join(', ') || 'maker not known';
}

/** What became of finding how fast it speaks. */
export function findingWords({ finding, baud, tried, lines }: HeardPort): string {
  if (finding === 'looking') return `Finding how fast it speaks: trying ${tried.at(-1) ?? 'the usual speeds'} baud …`;
  if (finding === 'not-found') return 'None of the usual speeds gives lines that can be read.';
  if (lines.length === 0) return `Open at ${baud} baud; nothing came yet.`;
  return `✓ ${lines.length} ${lines.length === 1 ? 'line' : 'lines'} at ${baud} baud. These came last:`;
}

const VERDICTS: Record<Proposal['verdict'], string> = {
  sure: '✓ This can be read:',
  unsure: '▲ This can be read, but something is to be confirmed:',
  none: '✕ This cannot be read by itself:',
};

export const verdictWords = (verdict: Proposal['verdict']): string => VERDICTS[verdict];

const UNITS = { C: '°C', F: '°F', K: 'K', mV: 'mV', ohm: 'Ω' } as const;

/** "T1 is 98.2 °C", or why a piece is left out; null where there is nothing to say. */
export function spanWords(span: LineSpan): string | null {
  if (span.is === 'left-out') return span.why === '' ? null : `left out: ${span.why}`;
  return span.value === null
    ? `${span.channel} gives no value`
    : `${span.channel} is ${formatNumber(span.value, 2)} ${UNITS[span.unit]}`;
}

/** What a format given by hand makes of the last lines. */
export function triedWords(tried: Tried | null, isNoFormat: boolean): string {
  if (isNoFormat) return 'Give at least one name, and another decimal mark than what parts the columns.';
  if (tried === null) return 'No lines yet to try it on.';
  const last = tried.lines.findLast(({ readings }) => readings.length > 0);
  const reasons = new Set(tried.lines.flatMap(({ rejected }) => rejected.map((one) => one.split(': ')[0])));
  const left = reasons.size === 0 ? '' : ` Left out: ${[...reasons].join('; ')}.`;
  if (last === undefined) return `✕ Nothing is read in these lines.${left}`;
  const read = last.readings.map(
    ({ channel, value, unit }) => `${channel} ${value ?? 'no value'}${unit ? ` °${unit}` : ''}`,
  );
  return `✓ In the last line: ${read.join(', ')}.${left}`;
}

export function risenWords(risenC: number | null, rises: boolean, settings: Settings): string {
  if (risenC === null) return 'not heard long enough yet';
  if (rises) return `rises, ${degrees(risenC, settings)} so far`;
  return Math.abs(risenC) < 0.5 ? 'stays' : `up by ${degrees(risenC, settings)}`;
}

export function risingWords({ rises, several }: Pick<ProbeWatch, 'rises' | 'several'>): string {
  if (rises !== null) return `▲ ${rises} rises: that is the one in your hand.`;
  if (several.length > 0) return `${several.join(' and ')} rise together: hold one tip only, and let the others cool.`;
  return 'None rises yet. Keep holding it.';
}

const REST: Record<ProbeWatch['channels'][number]['state'], string> = {
  waiting: 'heard too little yet',
  rising: 'still rising',
  falling: 'still falling',
  restless: 'jumps about: look at its plug',
  steady: 'has come to rest',
};

/** "still rising, 0.8 °C a minute". */
export function restWords({ state, heardS }: ProbeWatch['channels'][number]): string {
  if (state !== 'waiting') return REST[state];
  const left = Math.max(0, Math.ceil(60 - heardS));
  return heardS > 0 ? `hold it still, about ${left} s more` : REST.waiting;
}

function spread(sigmaC: number, settings: Settings): string {
  return `±\u00a0${formatNumber(differenceFromCelsius(Z80 * sigmaC, settings.temperature), 2)}`;
}

/** "shows 98.6 °C where 98.2 °C is right". */
export function checkWords({ shown_c, true_c }: ProbeCheck, settings: Settings): string {
  return `shows ${temperature(shown_c, settings)} where ${temperature(true_c, settings)} is right`;
}

/** "shows 0.42 °C too much (± 0.12)"; the middle 80 %. */
export function errorWords(error: ProbeError | null, settings: Settings): string {
  if (error === null) return 'not checked; how much it is off is not known';
  const { tooHighC, sigmaC } = error;
  const unit = `°${settings.temperature}`;
  const by = formatNumber(Math.abs(differenceFromCelsius(tooHighC, settings.temperature)), 2);
  const range = `(${spread(sigmaC, settings)} ${unit})`;
  if (Number(by) === 0) return `shows it right ${range}`;
  return `shows ${by} ${unit} too ${tooHighC > 0 ? 'much' : 'little'} ${range}`;
}
