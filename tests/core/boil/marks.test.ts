// Checks what marks do to the pans: sugar and water conserved, late marks, marks taken back, and what an instrument says.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { applyEntry, type BoilState, startBoil } from '../../../src/core/boil/fold.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { readInstrument } from '../../../src/core/physics/instruments.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { beliefOf } from '../../../src/core/pan/course-time.ts';
import { SUGAR, waterOf } from '../../../src/core/pan/filter/belief.ts';
import { massOfLitres } from '../../../src/core/pan/filter/liquid.ts';
import { litresNow, lookAt } from '../../../src/core/pan/forecast.ts';
import { settingOf } from '../../../src/core/boil/settings.ts';
import { boilingAt, foldAll, inOrder, lines, mark, onePot, readingAt, tarnHollow, tools } from './tarn-hollow.ts';

/** All marks at once, before any time has passed: nothing boils away. */
function marked(marks: Mark[]): BoilState {
  return marks.reduce((state, what) => applyEntry(state, { t: 0, mark: what }, tools), startBoil(tarnHollow()));
}

/** null while nobody has said what is in it. */
function contents(state: BoilState, pan: string): { sugarKg: number; waterKg: number } | null {
  const { course } = state.pans[pan]!;
  if (course.emptied) return { sugarKg: 0, waterKg: 0 };
  if (!course.told) return null;
  const now = beliefOf(course, settingOf(state, pan));
  const sugarKg = Math.exp(now.x[SUGAR]!);
  return { sugarKg, waterKg: sugarKg * waterOf(now) };
}

function inPans(state: BoilState): { sugarKg: number; waterKg: number } {
  const pans = Object.keys(state.pans).map((id) => contents(state, id));
  return {
    sugarKg: pans.reduce((sum, one) => sum + (one?.sugarKg ?? 0), 0),
    waterKg: pans.reduce((sum, one) => sum + (one?.waterKg ?? 0), 0),
  };
}

const amounts = (state: BoilState, pan: string): (number | null)[] => [
  contents(state, pan)?.sugarKg ?? null,
  contents(state, pan)?.waterKg ?? null,
];

function contentsOfLitres(litres: number, brix: number): { sugarKg: number; waterKg: number } {
  const mass = massOfLitres(litres, brix);
  return { sugarKg: (mass * brix) / 100, waterKg: mass * (1 - brix / 100) };
}

const pan = fc.constantFrom('p1', 'p2');
const pour = fc.record({
  kind: fc.constant('top-up' as const),
  pan,
  litres: fc.double({ min: 0.1, max: 40, noNaN: true }),
  brix: fc.double({ min: 0.5, max: 66, noNaN: true }),
});
const bothFilled: Mark[] = ['p1', 'p2'].map((id) => ({ kind: 'top-up', pan: id, litres: 20, brix: 2 }));

test('sugar and water that were poured in are there, to the gram', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(pour, { minLength: 1, maxLength: 12, selector: (one) => JSON.stringify(one) }),
      (pours) => {
        const held = inPans(marked(pours));
        const poured = pours.map(({ litres, brix }) => contentsOfLitres(litres, brix));
        expect(held.sugarKg).toBeCloseTo(
          poured.reduce((sum, one) => sum + one.sugarKg, 0),
          6,
        );
        expect(held.waterKg).toBeCloseTo(
          poured.reduce((sum, one) => sum + one.waterKg, 0),
          6,
        );
      },
    ),
  );
});

test('a transfer conserves sugar and water, part or all of it', () => {
  const all = fc.record({ kind: fc.constant('transfer' as const), from: pan, to: pan, all: fc.constant(true) });
  const part = fc.record({
    kind: fc.constant('transfer' as const),
    from: pan,
    to: pan,
    litres: fc.double({ min: 0.1, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(fc.oneof(part, all), { maxLength: 6 }), (transfers) => {
      const state = marked(bothFilled);
      const before = inPans(state);
      for (const [index, what] of transfers.entries()) {
        // The same twice within two minutes counts once.
        if (transfers.slice(0, index).some((one) => JSON.stringify(one) === JSON.stringify(what))) continue;
        const there = litresNow(lookAt(state.pans[what.from]!, settingOf(state, what.from), state.now))!;
        // Litres that would be all that was counted leave something: nobody said that it was emptied.
        if ('litres' in what && what.litres > 0.9 * there) continue;
        applyEntry(state, { t: 0, mark: what }, tools);
      }
      const after = inPans(state);
      expect(after.sugarKg).toBeCloseTo(before.sugarKg, 6);
      expect(after.waterKg).toBeCloseTo(before.waterKg, 6);
    }),
  );
});

test.each([
  ['top-up', { kind: 'top-up', pan: 'p1', litres: 5, brix: 3 }],
  ['draw-off of a part', { kind: 'draw-off', pan: 'p1', litres: 4 }],
  ['draw-off of more than was counted', { kind: 'draw-off', pan: 'p1', litres: 50 }],
  ['draw-off of all', { kind: 'draw-off', pan: 'p1', all: true }],
  ['transfer of a part', { kind: 'transfer', from: 'p1', to: 'p2', litres: 4 }],
  ['transfer of more than was counted', { kind: 'transfer', from: 'p1', to: 'p2', litres: 50 }],
  ['transfer of all', { kind: 'transfer', from: 'p1', to: 'p2', all: true }],
  ['top-up of nobody knows how much', { kind: 'top-up', pan: 'p1' }],
] as [string, Mark][])('a withdrawn %s puts the contents back', (_, what) => {
  const state = marked(bothFilled);
  const before = [amounts(state, 'p1'), amounts(state, 'p2')].flat();
  const { emptied, flame } = state.pans['p1']!.course;
  applyEntry(state, { t: 0, mark: { ...what, id: 'm' } }, tools);
  expect([amounts(state, 'p1'), amounts(state, 'p2')].flat()).not.toEqual(before);
  applyEntry(state, { t: 0, mark: { kind: 'withdraw', id: 'm' } }, tools);
  const after = [amounts(state, 'p1'), amounts(state, 'p2')].flat();
  after.forEach((kg, index) => expect(kg).toBeCloseTo(before[index]!, 9));
  expect(state.pans['p1']!.course).toMatchObject({ emptied, flame });
});

test('a first pour that is withdrawn leaves the contents not known', () => {
  const state = marked([
    { kind: 'top-up', pan: 'p1', litres: 5, brix: 2, id: 'm' },
    { kind: 'withdraw', id: 'm' },
  ]);
  expect(amounts(state, 'p1')).toEqual([null, null]);
});

test('of two pours into an empty pan the second one stands when the first is withdrawn', () => {
  const state = marked([
    { kind: 'top-up', pan: 'p1', litres: 5, brix: 2, id: 'first' },
    { kind: 'top-up', pan: 'p1', litres: 3, brix: 2 },
    { kind: 'withdraw', id: 'first' },
  ]);
  expect(contents(state, 'p1')!.waterKg).toBeCloseTo(contentsOfLitres(3, 2)!.waterKg, 9);
});

test('a mark is withdrawn once, and only the one that is named', () => {
  const state = marked([
    ...bothFilled,
    { kind: 'top-up', pan: 'p1', litres: 5, brix: 2, id: 'a' },
    { kind: 'top-up', pan: 'p1', litres: 1, brix: 2, id: 'b' },
    { kind: 'withdraw', id: 'a' },
    { kind: 'withdraw', id: 'a' },
    { kind: 'withdraw', id: 'nobody' },
  ]);
  expect(contents(state, 'p1')!.waterKg).toBeCloseTo(contentsOfLitres(21, 2)!.waterKg, 6);
});

test('marks that name a pan or probe that is not there change nothing', () => {
  const state = marked(bothFilled);
  const before = structuredClone(state.pans);
  for (const what of [
    { kind: 'top-up', pan: 'p9', litres: 3 },
    { kind: 'transfer', from: 'p1', to: 'p9', all: true },
    { kind: 'transfer', from: 'p1', to: 'p1', all: true },
    { kind: 'flame', pan: 'p9', level: 0 },
    { kind: 'reading', pan: 'p9', celsius: 90 },
    { kind: 'move-probe', probe: 'Z/9', pan: 'p1' },
  ] as Mark[])
    applyEntry(state, { t: 0, mark: what }, tools);
  expect(state.pans).toEqual(before);
});

test('a pan that was emptied is off until something is poured in', () => {
  const state = marked([...bothFilled, { kind: 'draw-off', pan: 'p1', all: true }]);
  expect(readingAt(state, 'p1', 0)).toMatchObject({ stage: 'off', litres: 0, evaporation_l_per_h: 0 });
  applyEntry(state, { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 3, brix: 2 } }, tools);
  expect(readingAt(state, 'p1', 0).stage).not.toBe('off');
  expect(readingAt(state, 'p1', 0).litres).toBeCloseTo(3, 9);
});

test('a withdrawn flame mark gives back the level that was marked before it', () => {
  const state = marked([
    { kind: 'flame', pan: 'p1', level: 0.5 },
    { kind: 'flame', pan: 'p1', level: 0, id: 'm' },
  ]);
  expect(readingAt(state, 'p1', 0).stage).toBe('off');
  applyEntry(state, { t: 0, mark: { kind: 'withdraw', id: 'm' } }, tools);
  expect(state.pans['p1']!.course.flame).toBe(0.5);
  expect(readingAt(state, 'p1', 0).stage).not.toBe('off');
});

test('a probe that went round comes back to its pan when that mark is withdrawn', () => {
  const state = marked([{ kind: 'move-probe', probe: 'A/1', pan: 'p2', id: 'm' }]);
  expect(state.probePan['A/1']).toBe('p2');
  applyEntry(state, { t: 0, mark: { kind: 'withdraw', id: 'm' } }, tools);
  expect(state.probePan['A/1']).toBe('p1');
});

test('a pour that is typed five minutes late counts from when it happened', () => {
  const late: Entry = mark(400_000, { kind: 'top-up', pan: 'p1', litres: 2, brix: 2, happened: 100_000 });
  const celsius = boilingAt(40, 'maple');
  const entries = [
    ...lines(0, 400_000, { T1: () => celsius }),
    late,
    ...lines(401_000, 410_000, { T1: () => celsius }),
  ];
  const { state } = foldAll(onePot(), entries, 410_000);
  expect(state.marks[0]).toMatchObject({ t: 400_000, at: 100_000 });
  expect(state.pans['p1']!.course.disturbedAt).toBe(100_000);
  expect(readingAt(state, 'p1', 410_000).brix, 'it has long settled').not.toBeNull();
});

test('a mark cannot happen after it was noted', () => {
  const { state } = foldAll(onePot(), [mark(1000, { kind: 'note', text: 'foam', happened: 9000 })], 2000);
  expect(state.marks[0]!.at).toBe(1000);
});

// Vermont density rule, 60/60 °F: 36 Bé = 66.9 °Bx; 66.0 °Bx is SG 1.3262 (physics.md section 5.1).
test.each([
  [{ brix: 66.9 }, 66.9],
  [{ baume: 36.12 }, 66.9],
  [{ sg: 1.3262 }, 66],
  [{ brix: 59, celsius: 98.33 }, 66.9],
  [{ brix: 66, celsius: 20, instrument: 'refractometer' }, 66],
  [{ brix: 66, celsius: 30, instrument: 'refractometer', compensated: true }, 66],
] as const)('a density mark of %j means %d °Bx', (reading, brix) => {
  expect(Math.abs(readInstrument(reading, sugarShares('maple'))!.brix - brix)).toBeLessThan(0.15);
});

test('an instrument near the probe is believed from then on', () => {
  const celsius = boilingAt(60, 'maple');
  const entries = [
    ...lines(0, 120_000, { T1: () => celsius }),
    mark(120_000, { kind: 'density', pan: 'p1', brix: 58, instrument: 'refractometer', compensated: true }),
    ...lines(121_000, 180_000, { T1: () => celsius }),
  ];
  expect(Math.abs(readingAt(foldAll(onePot(), entries, 180_000).state, 'p1', 180_000).brix! - 58)).toBeLessThan(0.3);
});

test('an instrument far from the probe is questioned, not believed', () => {
  const celsius = boilingAt(60, 'maple');
  const entries = [
    ...lines(0, 120_000, { T1: () => celsius }),
    mark(120_000, { kind: 'density', pan: 'p1', brix: 30, instrument: 'refractometer', compensated: true }),
    ...lines(121_000, 180_000, { T1: () => celsius }),
  ];
  const { state } = foldAll(onePot(), entries, 180_000);
  expect(Math.abs(readingAt(state, 'p1', 180_000).brix! - 60)).toBeLessThan(0.3);
  expect(state.notices.map(({ sentence }) => sentence)).toEqual([
    'Back pot: the instrument said 30.0 °Bx and the probe 60.0 °Bx. It was left out; the same again counts.',
  ]);
});

test('a reading by hand is worth as much as its age allows: ten minutes', () => {
  const header = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot' }] });
  const { state } = foldAll(
    header,
    [mark(0, { kind: 'reading', pan: 'p1', celsius: boilingAt(60, 'maple') })],
    700_000,
  );
  // It boils on, nobody knows how fast.
  const old = readingAt(state, 'p1', 600_000);
  expect(old.brix_low!).toBeLessThan(60.5);
  expect(old.brix!).toBeGreaterThan(60);
  expect(readingAt(state, 'p1', 600_001)).toMatchObject({ temperature_c: null, rise_c: null, brix: null, probe: null });
});

test('a reading by hand that is far hotter than what was noted makes is asked about; one that fits is not', () => {
  const header = tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot' }] });
  const read = (celsius: number): string[] =>
    foldAll(
      header,
      [
        mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 2, celsius: 95 }),
        mark(600_000, { kind: 'reading', pan: 'p1', celsius }),
      ],
      660_000,
    ).state.notices.map(({ sentence }) => sentence);
  // The rise of 60 °Bx over that of what 10 L of 2 °Bx become in ten minutes, by the same curve that the tests of physics hold.
  expect(read(boilingAt(60, 'maple'))).toEqual([
    expect.stringMatching(
      /^Back pot: 10\d\.\d{1,2} °C was read; by what was noted of it, this thermometer should show about 100\.\d °C\. It would mean about 60 °Bx, with only about 0\.\d L of \d\.\d L left\. Until/,
    ),
  ]);
  expect(read(boilingAt(3, 'maple'))).toEqual([]);
});

test('a boiling check that was taken in the pan, or is far from where water boils, is questioned and acts on nothing', () => {
  const thick = lines(0, 180_000, { T1: () => boilingAt(55, 'maple') });
  for (const celsius of [boilingAt(55, 'maple'), 94]) {
    const { state } = foldAll(
      onePot(),
      inOrder(thick, [mark(120_000, { kind: 'water-check', probe: 'A/1', celsius })]),
      180_000,
    );
    expect(Math.abs(readingAt(state, 'p1', 180_000).brix! - 55)).toBeLessThan(0.5);
    expect(state.notices.map(({ sentence }) => sentence)).toEqual([expect.stringContaining('needs plain water')]);
  }
});

test('a density reading moves the limits on the thermometer scale as it moves the rise', () => {
  const heard = lines(0, 240_000, { T1: () => boilingAt(60, 'maple') });
  const density = mark(120_000, { kind: 'density', pan: 'p1', brix: 62, celsius: 15.56, instrument: 'hydrometer' });
  const { state } = foldAll(onePot(), inOrder(heard, [density]), 240_000);
  const { readings, limits } = boilView(state, 240_000);
  const { rise_c: rise, temperature_c: celsius } = readings[0]!;
  const finishRise = state.around['p1']!.limits.finish.riseC!;
  expect(limits[0]!.finish_c! - celsius!).toBeCloseTo(finishRise - rise!, 6);
});

test('the same pour noted twice within two minutes is asked about and counts once, a third time it counts', () => {
  const poured: Mark = { kind: 'top-up', pan: 'p1', litres: 5, brix: 2 };
  const once = contents(marked([...bothFilled, poured]), 'p1')!;
  const state = marked([...bothFilled, poured, { ...poured, id: 'again' }]);
  expect(contents(state, 'p1')!.waterKg).toBeCloseTo(once.waterKg, 9);
  expect(state.notices.map(({ sentence }) => sentence)).toEqual([expect.stringContaining('noted twice')]);
  const thrice = contents(applyEntry(state, { t: 0, mark: poured }, tools), 'p1')!;
  expect(thrice.waterKg - once.waterKg).toBeCloseTo(contentsOfLitres(5, 2).waterKg, 6);
});
