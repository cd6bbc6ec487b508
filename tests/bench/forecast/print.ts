// What the forecast bench prints: a line for each kind, a block where somebody asks, and a total with the goals beside it.
import { callRows, cells, number, percent, row, spreadWords, strengthWords, timeRows, yardstickRows } from './rows.ts';
import type { BoilScore } from './score.ts';
import { tally, type Tally } from './tally.ts';

export const tableHead =
  '  kind               error % at 60/30/15/10/5 min  holds answers  °Bx med p90   near p10–p90 miss   finish p10 p90 miss  no cause';

/** The whole of a kind in one line; shares in %, leads in min, strengths in °Bx. */
export function tableLine(name: string, sum: Tally): string {
  const errors = sum.leads
    .slice(0, 5)
    .map(({ median }) => percent(median))
    .join('/');
  const mean = (values: number[]): number => {
    const known = values.filter((value) => !Number.isNaN(value));
    return known.reduce((total, value) => total + value, 0) / known.length;
  };
  const columns: [string, number][] = [
    [errors, 22],
    [percent(mean(sum.leads.map(({ held }) => held))), 9],
    [percent(mean(sum.leads.map(({ answered }) => answered))), 8],
    [number(sum.strength.median), 9],
    [number(sum.strength.p90), 5],
    [`${number(sum.near.p10)}–${number(sum.near.p90)}`, 15],
    [String(sum.near.missing), 5],
    [number(sum.finish.p10), 10],
    [number(sum.finish.p90), 6],
    [String(sum.finish.missing), 5],
    [String(sum.falseCount), 9],
  ];
  return `  ${name.padEnd(20)}${columns.map(([text, width]) => text.padStart(width)).join('')}`;
}

const MOST_FALSE_SHOWN = 8;

export function printKind(name: string, about: string, scores: readonly BoilScore[]): void {
  const sum = tally(scores);
  console.log(`\n  ${name}: ${about}`);
  for (const line of [...timeRows(sum), ...yardstickRows(sum)]) console.log(line);
  console.log(row('strength over 25 °Bx', strengthWords(sum.strength)));
  for (const line of callRows(sum)) console.log(line);
  const calls = scores.flatMap(({ seed, falseCalls }) => falseCalls.map((call) => ({ seed, ...call })));
  for (const { seed, pan, t, alarm, why, truth } of calls.slice(0, MOST_FALSE_SHOWN)) {
    console.log(
      `      no cause: seed ${seed}, ${pan} at ${number(t / 60_000)} min, ${alarm} (${why}); truly ${number(truth.brix)} °Bx, ${number(truth.depthMm, 0)} mm, burns in ${number(truth.burnsInMin, 0)} min`,
    );
  }
}

/** The goals of issue 5 at their leads, %. */
const goals = [
  { leadMin: 60, error: 15, answered: 75 },
  { leadMin: 30, error: 8, answered: 90 },
  { leadMin: 15, error: 8, answered: 95 },
  { leadMin: 10, error: 10, answered: 95 },
  { leadMin: 5, error: 13, answered: 95 },
];

function goalRows({ leads }: Tally): string[] {
  const goal = (pick: (one: (typeof goals)[number]) => string): string[] =>
    leads.map(({ leadMin }) => {
      const found = goals.find((one) => one.leadMin === leadMin);
      return found === undefined ? '' : pick(found);
    });
  return [
    cells(
      'goal: median error %',
      goal(({ error }) => `${error}`),
    ),
    cells(
      'goal: range holds, %',
      goal(() => '72–88'),
    ),
    cells(
      'goal: answered, %',
      goal(({ answered }) => `≥ ${answered}`),
    ),
  ];
}

export function printTotal(scores: readonly BoilScore[], seeds: string, kinds: number): void {
  const sum = tally(scores);
  const size = `${kinds} kinds, ${sum.boils} boils, ${number(sum.hours, 0)} boil-hours, ${number(sum.panHours, 0)} pan-hours`;
  console.log(`\n  TOTAL of ${size}; ${seeds}`);
  for (const line of [...timeRows(sum), ...goalRows(sum), ...yardstickRows(sum)]) console.log(line);
  console.log(row('strength over 25 °Bx', strengthWords(sum.strength)));
  for (const { name, strength } of sum.groups) console.log(row(`  ${name}`, strengthWords(strength)));
  for (const line of callRows(sum)) console.log(line);
  for (const { name, finish } of sum.groups) console.log(row(`  finish, ${name}`, spreadWords(finish, '°Bx')));
  const cost = `${number(sum.microsecondsPerReading, 2)} us a reading and pan, state at most ${number(sum.greatestStateBytes / 1024, 0)} KiB a pan`;
  console.log(row('cost', cost));
  console.log(
    '    goals: strength ≤ 0.6, p90 ≤ 2 °Bx where checked; near-finish 7 to 14 min, none missing; finish within 0.7 °Bx at\n' +
      '    p90, none missing; burning called 3 min ahead, always; no high alarm without a cause in 500 h; 3 us; 100 KiB',
  );
}
