// The tables of the forecast bench: a block for each kind, and a total that can be pasted, with the goals beside it.
import type { BoilScore } from './score.ts';
import { tally, type Spread, type StrengthFigures, type Tally } from './tally.ts';

const percent = (share: number): string => (Number.isNaN(share) ? '–' : (100 * share).toFixed(0));
const number = (value: number, digits = 1): string => (Number.isNaN(value) ? '–' : value.toFixed(digits));

const row = (head: string, cells: readonly string[], width = 9): string =>
  `    ${head.padEnd(24)}${cells.map((cell) => cell.padStart(width)).join('')}`;

const spreadWords = ({ count, p10, p50, p90, missing }: Spread, unit: string, digits = 1): string =>
  count === 0
    ? 'none to judge'
    : `p10 ${number(p10, digits)}  p50 ${number(p50, digits)}  p90 ${number(p90, digits)} ${unit}, missing ${missing} of ${count}`;

const strengthWords = ({ count, median, p90, bias, held, answered }: StrengthFigures): string =>
  count === 0
    ? 'none'
    : `median ${number(median, 2)}  p90 ${number(p90, 2)}  bias ${number(bias, 2)} °Bx, range holds ${percent(held)} %, said ${percent(answered)} %`;

function timeRows({ leads }: Tally): string[] {
  return [
    row(
      'min before the finish',
      leads.map(({ leadMin }) => String(leadMin)),
    ),
    row(
      'error %, median (p90)',
      leads.map(({ median, p90 }) => `${percent(median)} (${percent(p90)})`),
      9,
    ),
    row(
      'bias %',
      leads.map(({ bias }) => percent(bias)),
    ),
    row(
      '80 % range holds, %',
      leads.map(({ held }) => percent(held)),
    ),
    row(
      'answered (boiling), %',
      leads.map(({ answered }) => percent(answered)),
    ),
    row(
      'moments',
      leads.map(({ count }) => String(count)),
    ),
  ];
}

function callRows({ near, finish, scorch, falseCalls, hours, pours, lostBoils: lost }: Tally): string[] {
  const scorched = (way: 'too-strong' | 'too-shallow'): string => {
    const { late } = scorch[way];
    return `${spreadWords(scorch[way], 'min')}${late > 0 ? `, under 3 min ${late}` : ''}`;
  };
  return [
    row('near-finish lead', [spreadWords(near, 'min')], 0),
    row('finish called, off by', [spreadWords(finish, '°Bx')], 0),
    ...(scorch['too-strong'].count > 0 ? [row('scorch lead, too strong', [scorched('too-strong')], 0)] : []),
    ...(scorch['too-shallow'].count > 0 ? [row('scorch lead, shallow', [scorched('too-shallow')], 0)] : []),
    row(
      'false high alarms',
      [`${falseCalls} in ${number(hours)} h = ${number((100 * falseCalls) / hours)} / 100 h`],
      0,
    ),
    ...(lost.truly + lost.invented > 0
      ? [row('boils that died', [`called ${lost.called} of ${lost.truly}, invented ${lost.invented}`], 0)]
      : []),
    row('pours nobody marked', [pourWords(pours)], 0),
  ];
}

function pourWords({ told, unmarked, found, litresOff, invented, twice }: Tally['pours']): string {
  if (!told) return `${unmarked} truly; the program does not tell of any yet`;
  return `found ${found} of ${unmarked} (litres off by ${percent(litresOff)} %), invented ${invented}, said although marked ${twice}`;
}

export function printKind(name: string, about: string, scores: readonly BoilScore[]): void {
  const sum = tally(scores);
  console.log(`\n  ${name}: ${about}`);
  for (const line of timeRows(sum)) console.log(line);
  console.log(row('strength over 25 °Bx', [strengthWords(sum.strength)], 0));
  for (const line of callRows(sum)) console.log(line);
  const calls = scores.flatMap(({ seed, falseCalls }) => falseCalls.map((call) => ({ seed, ...call })));
  for (const { seed, pan, t, alarm, why, truth } of calls.slice(0, 4)) {
    console.log(
      `      false: seed ${seed}, ${pan} at ${(t / 60_000).toFixed(1)} min, ${alarm} (${why}); truly ${number(truth.brix)} °Bx, ${number(truth.depthMm, 0)} mm, burns in ${number(truth.burnsInMin, 0)} min`,
    );
  }
}

const goals = [
  { leadMin: 60, error: 15, answered: 75 },
  { leadMin: 30, error: 8, answered: 90 },
  { leadMin: 15, error: 8, answered: 95 },
  { leadMin: 10, error: 10, answered: 95 },
  { leadMin: 5, error: 13, answered: 95 },
];

export function printTotal(scores: readonly BoilScore[], seeds: string, kinds: number): void {
  const sum = tally(scores);
  console.log(
    `\n  TOTAL of ${kinds} kinds, ${sum.boils} boils, ${number(sum.hours, 0)} boil-hours, ${number(sum.panHours, 0)} pan-hours; ${seeds}`,
  );
  for (const line of timeRows(sum)) console.log(line);
  const goal = (pick: (one: (typeof goals)[number]) => string): string[] =>
    sum.leads.map(({ leadMin }) => {
      const found = goals.find((one) => one.leadMin === leadMin);
      return found === undefined ? '' : pick(found);
    });
  console.log(
    row(
      'goal: error %',
      goal(({ error }) => `${error}`),
    ),
  );
  console.log(
    row(
      'goal: range holds',
      goal(() => '72–88'),
    ),
  );
  console.log(
    row(
      'goal: answered',
      goal(({ answered }) => `≥ ${answered}`),
    ),
  );
  console.log(
    row(
      'straight line, error %',
      sum.leads.map(({ line }) => percent(line)),
    ),
  );
  console.log(
    row(
      'reciprocal law, error %',
      sum.leads.map(({ law }) => percent(law)),
    ),
  );
  console.log(row('strength over 25 °Bx', [strengthWords(sum.strength)], 0));
  for (const { name, strength } of sum.groups) console.log(row(`  ${name}`, [strengthWords(strength)], 0));
  for (const line of callRows(sum)) console.log(line);
  for (const { name, finish } of sum.groups)
    console.log(row(`  finish, ${name}`.slice(0, 30), [` ${spreadWords(finish, '°Bx')}`], 0));
  console.log(
    row(
      'cost',
      [
        `${number(sum.microsecondsPerReading, 2)} us a reading, state at most ${number(sum.greatestStateBytes / 1024, 0)} KiB a pan`,
      ],
      0,
    ),
  );
  console.log(
    '    goals: strength ≤ 0.6 / ≤ 2 °Bx where checked; near-finish 7 to 14 min, none missing; finish within 0.7 °Bx at p90,\n' +
      '    none missing; burning called 3 min ahead, always; no false high alarm in 500 h; under 3 us; under 100 KiB',
  );
}
