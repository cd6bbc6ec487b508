// What several boils of one burner let expect of the next: near theirs, as wide as they differ, and wide while they are few.
import { expect, test } from 'vitest';
import type { PanSetup } from '../../../src/core/boil/entries.ts';
import { burnerName, expectedSteam, isBurnerName, ownSteam, type Steam } from '../../../src/core/pan/burner.ts';
import { steamBefore } from '../../../src/core/pan/filter/start.ts';
import { panDesign } from '../../../src/core/pan/setup.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';

const backPot: PanSetup = {
  id: 'p1',
  name: 'Back pot',
  vessel: { shape: 'round', diameter_mm: 400 },
  heat: { kind: 'propane', power_w: 16_000 },
};
const usual: Steam = { lnKgPerS: Math.log(0.002), share: 0.35 };
const boilOf = (ratio: number, share = 0.05): Steam => ({ lnKgPerS: usual.lnKgPerS + Math.log(ratio), share });
const expected = (...ratios: number[]) =>
  expectedSteam(
    usual,
    'propane',
    ratios.map((ratio) => boilOf(ratio)),
  )!;
const ratioOf = ({ lnKgPerS }: Steam): number => Math.exp(lnKgPerS - usual.lnKgPerS);

test('without a boil nothing is expected; one boil moves it most of the way and leaves it wide, more make it surer', () => {
  expect(expectedSteam(usual, 'propane', [])).toBeNull();
  const [one, two, six] = [expected(0.6), expected(0.6, 0.62), expected(0.6, 0.62, 0.59, 0.61, 0.6, 0.6)];
  expect(ratioOf(one)).toBeGreaterThan(0.6);
  expect(ratioOf(one)).toBeLessThan(0.75);
  expect(one.share).toBeGreaterThan(0.2);
  expect(one.share).toBeLessThan(usual.share);
  expect([one.spread, two.share < one.share, six.share < two.share]).toEqual([null, true, true]);
  expect(Math.abs(ratioOf(six) - 0.6)).toBeLessThan(0.02);
  expect(six.share).toBeGreaterThan(0.06);
});

test('boils that differ make the next one wide, by what they differ beyond what each is unsure of', () => {
  const alike = expected(0.8, 0.8, 0.8, 0.8, 0.8, 0.8);
  const apart = expected(0.55, 1.15, 0.6, 1.1, 0.8, 0.8);
  expect(apart.spread!).toBeGreaterThan(1.5 * alike.spread!);
  const unsure = [0.55, 1.15, 0.6, 1.1, 0.8, 0.8].map((ratio) => boilOf(ratio, 0.4));
  expect(expectedSteam(usual, 'propane', unsure)!.spread).toBeLessThan(apart.spread!);
});

test('the newest boils weigh more than those of long ago', () => {
  const old = Array.from({ length: 10 }, () => 1.2);
  expect(ratioOf(expected(...old, 0.8, 0.8))).toBeGreaterThan(ratioOf(expected(0.8, 0.8, ...old)));
});

test('the middle 80 % hold the next boil of burners drawn by chance about as often as they say', () => {
  const chance = randomStream(7, 'burners');
  let held = 0;
  const burners = 400;
  for (let burner = 0; burner < burners; burner += 1) {
    const mean = 0.35 * nextNormal(chance);
    const scatter = 0.04 + 0.16 * Math.abs(nextNormal(chance));
    const boil = (): Steam => {
      const lnKgPerS = usual.lnKgPerS + mean + scatter * nextNormal(chance) + 0.08 * nextNormal(chance);
      return { lnKgPerS, share: 0.08 };
    };
    const next = expectedSteam(usual, 'propane', [boil(), boil(), boil()])!;
    const truly = usual.lnKgPerS + mean + scatter * nextNormal(chance);
    if (Math.abs(truly - next.lnKgPerS) < 1.2816 * next.share) held += 1;
  }
  expect(held / burners).toBeGreaterThan(0.72);
  expect(held / burners).toBeLessThan(0.92);
});

test('what a boil showed by itself, with what it began with put back, is what it ended with', () => {
  const before: Steam = { lnKgPerS: -6, share: 0.35 };
  const after: Steam = { lnKgPerS: -6.4, share: 0.1 };
  const own = ownSteam(before, after)!;
  const [a, b] = [1 / before.share ** 2, 1 / own.share ** 2];
  expect((a * before.lnKgPerS + b * own.lnKgPerS) / (a + b)).toBeCloseTo(-6.4, 9);
  expect(1 / Math.sqrt(a + b)).toBeCloseTo(0.1, 9);
  expect(own.lnKgPerS).toBeLessThan(-6.4);
  expect(ownSteam(before, { lnKgPerS: -6.1, share: 0.3 })).toBeNull();
  expect(ownSteam(before, { lnKgPerS: -6.1, share: 0.36 })).toBeNull();
});

test.each<[string, Partial<PanSetup>, boolean]>([
  ['another id, sap, probe or finish', { id: 'p7', sap: 'birch', probe: 'A/2', finish: { brix: 60 } }, true],
  ['the same name written otherwise', { name: ' back POT ' }, true],
  ['another name', { name: 'Front pot' }, false],
  ['another size', { vessel: { shape: 'round', diameter_mm: 420 } }, false],
  ['another shape', { vessel: { shape: 'rectangular', length_mm: 400, width_mm: 400 } }, false],
  ['another power', { heat: { kind: 'propane', power_w: 12_000 } }, false],
  ['another fuel', { heat: { kind: 'wood', power_w: 16_000 } }, false],
])('a pan with %s is the same burner: %#', (_what, change, isSame) => {
  expect(burnerName({ ...backPot, ...change }) === burnerName(backPot)).toBe(isSame);
});

test('a pot of plain water and a pan below its boil have no burner to learn of, and no name is longer than is kept', () => {
  expect(burnerName({ ...backPot, role: 'reference' })).toBeNull();
  expect(burnerName({ ...backPot, finish: { brix: 67, ceiling_c: 94 } })).toBeNull();
  const long = burnerName({ ...backPot, name: '\u0001"'.repeat(500) })!;
  expect(long.length).toBeLessThan(500);
  expect([isBurnerName(long), isBurnerName('probe A/1')]).toEqual([true, false]);
});

test('a pan begins with what was learnt of its burner, and with what is usual where that is nonsense or of another', () => {
  const name = burnerName(backPot)!;
  const begun = (names: string[], mean: number, variance: number) =>
    steamBefore(panDesign(backPot, { names, mean: [mean], covariance: [[variance]] }));
  const plain = steamBefore(panDesign(backPot));
  expect(plain.share).toBe(0.35);
  expect(begun([name], -6.2, 0.04)).toEqual({ lnKgPerS: -6.2, share: 0.2 });
  for (const odd of [begun(['burner of another'], -6.2, 0.04), begun([name], 900, 0.04), begun([name], -6.2, -1)])
    expect(odd).toEqual(plain);
});
