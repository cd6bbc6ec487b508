// The rows of the forecast bench in words: figures of a tally, one row for each thing that is judged.
import type { Spread, StrengthFigures, Tally } from './tally.ts';

export const percent = (share: number): string => (Number.isNaN(share) ? '–' : (100 * share).toFixed(0));
export const number = (value: number, digits = 1): string => (Number.isNaN(value) ? '–' : value.toFixed(digits));

const HEAD_WIDTH = 32;
const CELL_WIDTH = 11;

export const row = (head: string, text: string): string => `    ${head.padEnd(HEAD_WIDTH)}${text}`;
export const cells = (head: string, texts: readonly string[]): string =>
  row(head, texts.map((text) => text.padStart(CELL_WIDTH)).join(''));

export const spreadWords = ({ count, p10, p50, p90, missing }: Spread, unit: string): string =>
  count === 0
    ? 'none to judge'
    : `p10 ${number(p10)}  p50 ${number(p50)}  p90 ${number(p90)} ${unit}, missing ${missing} of ${count}`;

export const strengthWords = ({ count, median, p90, bias, held, answered }: StrengthFigures): string =>
  count === 0
    ? 'none to judge'
    : `median ${number(median, 2)}  p90 ${number(p90, 2)}  bias ${number(bias, 2)} °Bx, range holds ${percent(held)} %, said ${percent(answered)} %`;

export function timeRows({ leads }: Tally): string[] {
  return [
    cells(
      'min before the finish',
      leads.map(({ leadMin }) => String(leadMin)),
    ),
    cells(
      'error %, median (p90)',
      leads.map(({ median, p90 }) => `${percent(median)} (${percent(p90)})`),
    ),
    cells(
      'bias %',
      leads.map(({ bias }) => percent(bias)),
    ),
    cells(
      '80 % range holds, %',
      leads.map(({ held }) => percent(held)),
    ),
    cells(
      'answered (boiling), %',
      leads.map(({ answered }) => percent(answered)),
    ),
    cells(
      'moments',
      leads.map(({ count }) => String(count)),
    ),
  ];
}

export function yardstickRows({ leads }: Tally): string[] {
  return [
    cells(
      'straight line, error %',
      leads.map(({ line }) => percent(line)),
    ),
    cells(
      'bare reciprocal law, error %',
      leads.map(({ law }) => percent(law)),
    ),
    cells(
      'that law on the true strength',
      leads.map((one) => percent(one.lawOnTruth)),
    ),
  ];
}

export function callRows(sum: Tally): string[] {
  const { near, finish, scorch, lostBoils: lost } = sum;
  const scorched = (way: 'too-strong' | 'too-shallow'): string => {
    const { late } = scorch[way];
    return `${spreadWords(scorch[way], 'min')}${late > 0 ? `, under 3 min ${late}` : ''}`;
  };
  return [
    row('near-finish lead', spreadWords(near, 'min')),
    row('finish called, off by', spreadWords(finish, '°Bx')),
    ...(scorch['too-strong'].count > 0 ? [row('scorch lead, too strong', scorched('too-strong'))] : []),
    ...(scorch['too-shallow'].count > 0 ? [row('scorch lead, too shallow', scorched('too-shallow'))] : []),
    row('high alarms without a cause', falseWords(sum)),
    ...(lost.truly + lost.invented > 0
      ? [row('boils that died', `called ${lost.called} of ${lost.truly}, invented ${lost.invented}`)]
      : []),
    row('pours that nobody marked', pourWords(sum)),
  ];
}

function falseWords({ falseCalls, falseCount, hours }: Tally): string {
  const names = Object.entries(falseCalls).map(([alarm, count]) => `${alarm} ${count}`);
  const which = names.length > 0 ? ` (${names.join(', ')})` : '';
  return `${falseCount} in ${number(hours, 0)} h = ${number((100 * falseCount) / hours)} / 100 h${which}`;
}

function pourWords({ pours: { told, unmarked, found, litresOff, invented, twice } }: Tally): string {
  if (!told) return `${unmarked} truly; the program does not tell of any yet`;
  return `found ${found}, missed ${unmarked - found} of ${unmarked} (litres off by ${percent(litresOff)} %), invented ${invented}, said although marked ${twice}`;
}
