// The words of setting probes up: what is heard, what is read in a line, whether a tip has come to rest, how much it is off.
import { Z80 } from '../../core/quantities/spread.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import { NOT_THERE_C } from '../../protocol/probe-setup-messages.ts';
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
import { hostWords } from '../language/host-words.ts';
import { type MessageKey, say, setApart } from '../language/say.ts';
import { degrees, number, roundTemperature, temperature } from './amounts.ts';

type StepName = 'board' | 'lines' | 'hand' | 'boil' | 'ice' | 'done';

export const STEP_WORDS: Record<StepName, { short: MessageKey; title: MessageKey }> = {
  board: { short: 'setup.step.board', title: 'setup.step.board.title' },
  lines: { short: 'setup.step.lines', title: 'setup.step.lines.title' },
  hand: { short: 'setup.step.hand', title: 'setup.step.hand.title' },
  boil: { short: 'setup.step.boil', title: 'setup.step.boil.title' },
  ice: { short: 'setup.step.ice', title: 'setup.step.ice.title' },
  done: { short: 'setup.step.done', title: 'setup.step.done.title' },
};

/** "Tarn Hollow workshop, serial number TH-0001". */
export function boardWords({ maker, serialNumber, own }: PortListing): string {
  if (own) return say('setup.own_port');
  const parts = [maker, serialNumber === null ? null : say('setup.serial', { number: serialNumber })];
  return parts.filter((part) => part !== null).join(', ') || say('setup.no_maker');
}

/** What became of finding how fast it speaks. */
export function findingWords({ finding, baud, tried, lines }: HeardPort): string {
  if (finding === 'looking') {
    const last = tried.at(-1);
    return last === undefined ? say('setup.finding.usual') : say('setup.finding', { baud: String(last) });
  }
  if (finding === 'not-found') return say('setup.finding.none');
  if (lines.length === 0) return say('setup.finding.nothing', { baud: String(baud) });
  return say('setup.finding.lines', { lines: lines.length, baud: String(baud) });
}

const VERDICTS: Record<Proposal['verdict'], MessageKey> = {
  sure: 'setup.verdict.sure',
  unsure: 'setup.verdict.unsure',
  none: 'setup.verdict.none',
};

/** How sure the reading of a board’s lines is. */
export const verdictWords = (verdict: Proposal['verdict']): string => say(VERDICTS[verdict]);

const UNITS = { C: '°C', F: '°F', K: 'K', mV: 'mV', ohm: 'Ω' } as const;

/** "T1 is 98.2 °C" with the digits that the line has, or why a piece is left out; null where there is nothing to say. */
export function spanWords(span: LineSpan, line: string): string | null {
  if (span.is === 'left-out') return span.why === '' ? null : say('setup.span.left_out', { why: hostWords(span.why) });
  return span.value === null
    ? say('setup.span.no_value', { channel: span.channel })
    : say('setup.span.is', {
        channel: span.channel,
        value: number(span.value, decimalsOf(line.slice(span.start, span.end))),
        unit: UNITS[span.unit],
      });
}

const decimalsOf = (written: string): number => /[.,](\d+)/.exec(written)?.[1]?.length ?? 0;

/** What a format given by hand makes of the last lines. */
export function triedWords(tried: Tried | null, isNoFormat: boolean): string {
  if (isNoFormat) return say('setup.tried.no_format');
  if (tried === null) return say('setup.tried.no_lines');
  const last = tried.lines.findLast(({ readings }) => readings.length > 0);
  const reasons = new Set(
    tried.lines.flatMap(({ rejected }) => rejected.map((one) => hostWords(one.split(': ')[0] ?? ''))),
  );
  const left = reasons.size === 0 ? '' : say('setup.tried.left', { reasons: setApart([...reasons]) });
  if (last === undefined) return say('setup.tried.nothing', { left });
  const read = last.readings.map(
    ({ channel, value, unit }) => `${channel} ${value ?? say('setup.tried.no_value')}${unit ? ` °${unit}` : ''}`,
  );
  return say('setup.tried.read', { read: read.join(', '), left });
}

/** How far a tip has risen in the hand since it was first heard; `risenC` is null while that is too short. */
export function risenWords(risenC: number | null, rises: boolean, settings: Settings): string {
  if (risenC === null) return say('setup.hand.too_short');
  if (rises) return say('setup.hand.rises', { by: degrees(risenC, settings) });
  return Math.abs(risenC) < 0.5 ? say('setup.hand.stays') : say('setup.hand.up', { by: degrees(risenC, settings) });
}

/** Which tip the hand warms, or that it cannot be told. */
export function risingWords({ rises, several }: Pick<ProbeWatch, 'rises' | 'several'>): string {
  if (rises !== null) return say('setup.hand.found', { name: rises });
  if (several.length > 0) return say('setup.hand.several', { names: several.join(say('setup.hand.and')) });
  return say('setup.hand.none');
}

const REST: Record<ProbeWatch['channels'][number]['state'], MessageKey> = {
  waiting: 'setup.rest.waiting',
  rising: 'setup.rest.rising',
  falling: 'setup.rest.falling',
  restless: 'setup.rest.restless',
  steady: 'setup.rest.steady',
};

/** "still rising, 0.8 °C a minute". */
export function restWords({ state, heardS }: ProbeWatch['channels'][number]): string {
  if (state !== 'waiting') return say(REST[state]);
  const left = Math.max(0, Math.ceil(60 - heardS));
  return heardS > 0 ? say('setup.rest.hold', { seconds: left }) : say(REST.waiting);
}

/** Why a tip that is far from 0 °C, or from any boiling water, cannot be noted there. */
export const notThereWords = (where: ProbeCheck['in'], settings: Settings): string =>
  where === 'boiling'
    ? say('onboarding.not_boiling')
    : say('onboarding.not_ice', { degrees: degrees(NOT_THERE_C, settings), nought: roundTemperature(0, settings) });

function spread(sigmaC: number, settings: Settings): string {
  return `±\u00a0${number(differenceFromCelsius(Z80 * sigmaC, settings.temperature), 2)}`;
}

/** "shows 98.6 °C where 98.2 °C is right". */
export function checkWords({ shown_c, true_c }: ProbeCheck, settings: Settings): string {
  return say('setup.check', { shown: temperature(shown_c, settings), right: temperature(true_c, settings) });
}

/** "shows 0.42 °C too much (± 0.12)"; the middle 80 %. */
export function errorWords(error: ProbeError | null, settings: Settings): string {
  if (error === null) return say('setup.error.none');
  const { tooHighC, sigmaC } = error;
  const unit = `°${settings.temperature}`;
  const difference = Math.abs(differenceFromCelsius(tooHighC, settings.temperature));
  const by = number(difference, 2);
  const range = `(${spread(sigmaC, settings)} ${unit})`;
  if (Number(difference.toFixed(2)) === 0) return say('setup.error.right', { range });
  return say(tooHighC > 0 ? 'setup.error.much' : 'setup.error.little', { by, unit, range });
}
