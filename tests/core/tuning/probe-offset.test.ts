// A probe that shows too much is found in invented boils whose truth an instrument told, with an honest range; too few boils tell nothing.
import { expect, test } from 'vitest';
import type { Header, Mark, Sap } from '../../../src/core/boil/entries.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { nextNormal, type RandomStream, randomStream } from '../../../src/core/simulation/random.ts';
import { offsetFacts, type OffsetFacts, offsetSentence, probeOffsets } from '../../../src/core/tuning/probe-offset.ts';
import { foldAll, inOrder, lines, mark, onePot, waterCelsius } from '../boil/tarn-hollow.ts';

const READ_MS = 180_000;
const END_MS = 240_000;

interface Plan {
  header?: Header;
  sap?: Sap;
  /** What the probe truly shows too much, bare, °C. */
  high: number;
  chance: RandomStream;
  /** Strength at the reading, °Bx. */
  brix?: number;
  readsPressure?: boolean;
}

/** One invented boil at sea level: weather, hydrometer and the sap's own rise are off by what is usual for them. */
function boil({
  sap = 'maple',
  header = onePot(sap),
  high,
  chance,
  brix = 64,
  readsPressure = false,
}: Plan): OffsetFacts {
  const hpa = 1013.25 + 10 * nextNormal(chance);
  const shares = sugarShares(sap);
  const truly = waterCelsius(hpa) + (1 + 0.02 * nextNormal(chance)) * riseFromStrength(brix, shares, hpa)! + high;
  const said = brix + 0.33 * nextNormal(chance);
  const density: Mark = { kind: 'density', pan: 'p1', brix: said, celsius: 15.56, instrument: 'hydrometer' };
  const marks = [
    ...(readsPressure ? [mark(0, { kind: 'pressure', hpa: hpa + 0.7 * nextNormal(chance) })] : []),
    mark(READ_MS, density),
  ];
  const heard = lines(0, END_MS, { T1: () => truly });
  const { state } = foldAll(header, inOrder(marks, heard), END_MS);
  if (!state.marks.some(({ questioned }) => questioned)) return offsetFacts(state);
  // Whoever is asked says it again.
  const again = [...marks, mark(READ_MS + 20_000, density)];
  return offsetFacts(foldAll(header, inOrder(again, heard), END_MS).state);
}

const boils = (count: number, plan: Omit<Plan, 'chance'>, seed: number): OffsetFacts[] => {
  const chance = randomStream(seed, 'boils');
  return Array.from({ length: count }, () => boil({ ...plan, chance }));
};

test('0.6 °C too much is found from five boils, and the middle 80 % hold it about as often as they say', () => {
  const found = Array.from({ length: 20 }, (_, seed) => probeOffsets(boils(5, { high: 0.6 }, seed + 1))[0]!);
  const misses = found.map(({ too_high_c }) => too_high_c! - 0.6);
  expect(Math.abs(misses.reduce((sum, miss) => sum + miss, 0) / misses.length)).toBeLessThan(0.1);
  const held = found.filter(({ low_c, high_c }) => low_c! <= 0.6 && high_c! >= 0.6).length;
  // 16 of 20 expected; a binomial count is under 12 or over 19 once in fifty.
  expect(held).toBeGreaterThanOrEqual(12);
  for (const { low_c, high_c } of found) expect(high_c! - low_c!).toBeLessThan(0.7);
});

test('a barometer at the pans makes it surer, and the sentence says what to set', () => {
  const [weather] = probeOffsets(boils(6, { high: 0.6 }, 3));
  const [barometer] = probeOffsets(boils(6, { high: 0.6, readsPressure: true }, 3));
  expect(barometer!.high_c! - barometer!.low_c!).toBeLessThan(0.75 * (weather!.high_c! - weather!.low_c!));
  expect(barometer!.offset_c).toBeCloseTo(-0.6, 0);
  expect(offsetSentence(barometer!)).toMatch(
    /^Probe A\/1 shows 0\.[567] °C too much \(0\.\d to 0\.\d\), from 6 boils: offset_c -0\.[567] would make it right\.$/,
  );
});

test('an offset that was set up is counted: what is left over it is said, and the whole is what to set', () => {
  const header = onePot();
  const set = { ...header, probes: [{ ...header.probes![0]!, offset_c: -0.6 }] };
  const [left] = probeOffsets(boils(6, { high: 0.6, readsPressure: true, header: set }, 4));
  expect(Math.abs(left!.too_high_c!)).toBeLessThan(0.25);
  expect(left!.offset_c).toBeCloseTo(-0.6, 0);
  expect(offsetSentence({ ...left!, low_c: -0.1, high_c: 0.2 })).toMatch(/no error that these 6 boils can tell/);
});

test('from two boils, from readings far from the finish, or from none nothing is said', () => {
  const [two] = probeOffsets(boils(2, { high: 0.6 }, 5));
  expect(two).toMatchObject({ boils: 2, too_high_c: null, low_c: null, high_c: null, offset_c: null });
  expect(offsetSentence(two!)).toBe(
    'Probe A/1: its error cannot be told from 2 boils with a density reading near the finish or a boiling check; it takes 3.',
  );
  expect(probeOffsets(boils(4, { high: 0.6, brix: 40 }, 5))).toEqual([]);
  expect(probeOffsets([])).toEqual([]);
});

test('birch, whose sap may rise more than anybody told, keeps its probe unsure however many boils there are', () => {
  const plan = { high: 0.6, readsPressure: true };
  const width = (sap: Sap, count: number): number => {
    const [found] = probeOffsets(boils(count, { ...plan, sap }, 6));
    return found!.high_c! - found!.low_c!;
  };
  expect(width('birch', 8)).toBeGreaterThan(0.9 * width('birch', 4));
  expect(width('birch', 8)).toBeGreaterThan(1.5 * width('maple', 8));
});

test('where neither the sap nor the weather is known well, the probe is not either, and it is said why', () => {
  const sap = { sucrose: 0, glucose: 0.5, fructose: 0.5 };
  const [found] = probeOffsets(boils(3, { high: 0.6, sap }, 6));
  expect(found).toMatchObject({ boils: 3, too_high_c: null, offset_c: null });
  expect(found!.why).toMatch(/known only to ±\d\.\d °C from 3 boils.*a pressure and a boiling check/);
});

test('a probe that was put on another channel since is another one', () => {
  const before = boils(4, { high: 2, readsPressure: true }, 7);
  const header = onePot();
  const moved = { ...header, probes: [{ ...header.probes![0]!, port: 'A', channel: 'T1' }] };
  const elsewhere = before.map((facts) => ({ ...facts, probes: [{ ...facts.probes[0]!, channel: 'T9' }] }));
  const since = boils(3, { high: 0.1, readsPressure: true, header: moved }, 8);
  const [found] = probeOffsets([...elsewhere, ...since]);
  expect(found!.boils).toBe(3);
  expect(Math.abs(found!.too_high_c! - 0.1)).toBeLessThan(0.2);
});
