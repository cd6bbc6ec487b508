// A pan that runs low and is nearly syrup: which of its calls is said first, and what they say once it fell unexplained.
import { expect, test } from 'vitest';
import { type ListedAlarm, lowBehindFinish } from '../../../src/core/alarms/alarm.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import {
  boilingAt,
  foldAll,
  inOrder,
  lines,
  mark,
  steadyCelsius,
  steadyWhen,
  tarnHollow,
} from '../boil/tarn-hollow.ts';

const header = tarnHollow({
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', min_depth_mm: 24, vessel: { shape: 'round', diameter_mm: 300 } }],
});
const pan = { fromBrix: 30, k: 0.0004, start: 0, sap: 'maple' as const };

/** What stands when it has this strength, and so many seconds after it fell there, where it did. */
function callsAt(brix: number, fellFor = 0) {
  const at = 1000 * Math.round(steadyWhen(pan, brix) / 1000);
  const until = at + fellFor * 1000;
  const shown = (t: number): number =>
    fellFor > 0 && t >= at ? boilingAt(20, 'maple') + 0.4 + 0.02 * Math.sin(t) : steadyCelsius(pan, t);
  const told = mark(600_000, { kind: 'depth', pan: 'p1', mm: 53 });
  const { state } = foldAll(header, inOrder([told], lines(0, until, { T1: shown })), until);
  const { alarms, next } = boilView(state, until);
  return { alarms: alarms.filter(({ condition }) => condition === 'active'), next };
}

test('of one pan nearly syrup stands first, though it ran low before, and nothing is to be poured in', () => {
  const { alarms, next } = callsAt(60);
  const of = (name: string) => alarms.find(({ alarm }) => alarm === name)!;
  expect(of('low-level').since).toBeLessThan(of('near-finish').since);
  expect(alarms.map(({ alarm }) => alarm)).toEqual(['near-finish', 'low-level']);
  expect(next).toMatchObject({ what: 'alarm', text: 'near-finish' });
  expect(of('low-level').todo).toContain('smaller pot');
});

test('after a fall that nobody explained it is not said to run low now', () => {
  const low = callsAt(60, 40).alarms.find(({ alarm }) => alarm === 'low-level')!;
  expect(low).toMatchObject({
    title: 'Was running low',
    why: expect.stringMatching(/^fell from .* nobody noted why/u),
  });
  expect(low.todo).not.toContain('Top up');
});

test('what is more urgent, of another pan, or over is passed by nothing', () => {
  const call = (alarm: ListedAlarm['alarm'], over: Partial<ListedAlarm> = {}) =>
    ({
      alarm,
      pan: 'p1',
      priority: 'medium',
      condition: 'active',
      answered: false,
      asideUntil: null,
      ...over,
    }) as const;
  const names = (...list: ReturnType<typeof call>[]) => lowBehindFinish(list).map(({ alarm }) => alarm);
  const [low, nearly] = [call('low-level'), call('near-finish')];
  expect(names(low, nearly)).toEqual(['near-finish', 'low-level']);
  expect(names(nearly, low)).toEqual(['near-finish', 'low-level']);
  for (const other of [{ pan: 'p2' }, { answered: true }, { condition: 'over' as const }, { priority: 'low' as const }])
    expect(names(low, call('near-finish', other))).toEqual(['low-level', 'near-finish']);
});
