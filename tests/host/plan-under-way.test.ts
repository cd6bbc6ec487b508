// What is left of a planned boil that is made by hand, from what its pans are noted to hold. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import type { Header, Mark, Sap } from '../../src/core/boil/entries.ts';
import { startBoil } from '../../src/core/boil/fold.ts';
import { boilView } from '../../src/core/boil/view.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { Folding } from '../../src/host/folding.ts';
import { planOfRunning } from '../../src/host/plan-desk.ts';
import type { PlanView } from '../../src/protocol/plan-schema.ts';

const pans = [
  {
    id: 'p1',
    name: 'Back pot',
    vessel: { shape: 'round', diameter_mm: 400 },
    heat: { kind: 'propane', power_w: 16_000 },
  },
  {
    id: 'p2',
    name: 'Front pot',
    vessel: { shape: 'round', diameter_mm: 220 },
    heat: { kind: 'propane', power_w: 5000 },
  },
] as const;
const header = {
  recording: 'panwarden',
  version: 1,
  started: '2027-04-18T07:30:00-07:00',
  site: { altitude_m: 640 },
  pans: pans.map((pan) => ({ ...pan, sap: 'birch' })),
  plan: { sap: 'birch', litres: 60, brix: 0.9, pans },
} as unknown as Header;

const underWay = (...marks: Mark[]): NonNullable<PlanView['under_way']> => underWayOf(header, ...marks);

function underWayOf(header: Header, ...marks: Mark[]): NonNullable<PlanView['under_way']> {
  const folding = new Folding(
    startBoil(header),
    foldTools,
    { alarm: () => undefined, readings: () => undefined },
    60_000,
  );
  marks.forEach((mark, index) => folding.take({ t: (index + 1) * 1000, mark }, ''));
  const t = 60_000;
  const outcome = planOfRunning({ header, ...boilView(folding.state, t) } as unknown as Parameters<
    typeof planOfRunning
  >[0]);
  return (outcome as { data: PlanView }).data.under_way!;
}

const pour = (pan: string, litres?: number, brix?: number): Mark =>
  ({
    kind: 'top-up',
    pan,
    ...(litres === undefined ? {} : { litres }),
    ...(brix === undefined ? {} : { brix }),
  }) as Mark;

test('sap that nobody measured in its pan is as strong as the plan has it, so that the hours are known', () => {
  const under = underWay(pour('p1', 19), { kind: 'density', pan: 'p2', brix: 57 } as Mark, pour('p2', 1.2));
  expect(under.lacking).toEqual([]);
  expect(under.hours).toBeGreaterThan(3);
});

test('what was typed for a pour goes before the plan: stronger sap has less water to lose', () => {
  const thin = underWay(pour('p1', 19), pour('p2', 5));
  const strong = underWay(pour('p1', 19, 5), pour('p2', 5, 5));
  expect(strong.hours!).toBeLessThan(thin.hours! - 0.2);
});

test('a pan of which an amount or a strength is not known is named with what it lacks', () => {
  expect(underWay(pour('p1', 19)).lacking).toEqual([{ pan: 'p2', litres: true, brix: false }]);
  const hot: Mark = { kind: 'transfer', from: 'p1', to: 'p2' } as Mark;
  expect(underWay(pour('p1', 19), hot).lacking.map(({ pan }) => pan)).toContain('p2');
  expect(underWay(pour('p1', 19)).hours).toBeNull();
});

test('a depth that is the first thing said of a pan was poured in too, as the notebook counts it', () => {
  const depth = { kind: 'depth', pan: 'p2', mm: 100 } as Mark;
  const litres = Math.PI * 1.1 ** 2;
  expect(underWay(pour('p1', 19), depth).poured_litres).toBeCloseTo(19 + litres, 2);
  // What was told before is not told again by a depth.
  expect(underWay(pour('p1', 19), pour('p2', 3), depth).poured_litres).toBeCloseTo(22, 6);
});

test('a pan of another sap is no part of the plan: neither what it took nor what it lacks counts', () => {
  const kinds = (...saps: Sap[]): Header =>
    ({ ...header, pans: pans.map((pan, index) => ({ ...pan, sap: saps[index] })) }) as unknown as Header;
  const other = underWayOf(kinds('birch', 'maple'), pour('p1', 19), pour('p2', 5));
  expect(other).toMatchObject({ poured_litres: 19, left_litres: 41, lacking: [] });
  expect(underWayOf(kinds('birch', 'maple'), pour('p1', 19), pour('p2')).lacking).toEqual([]);
  // A pan that was taken away since boiled what was planned, for all that is known.
  const without = { ...kinds('birch', 'birch'), pans: kinds('birch', 'birch').pans?.slice(0, 1) } as Header;
  expect(underWayOf(without, pour('p1', 19), pour('p2', 5)).poured_litres).toBe(24);
  // Somebody changed the sap of all pans: then all of them are the plan's.
  expect(underWayOf(kinds('maple', 'maple'), pour('p1', 19), pour('p2', 5)).poured_litres).toBe(24);
});
