// Checks what is said to be behind each number: it agrees with what is shown, its parts make up its range, and the mark helps.
import { expect, test } from 'vitest';
import type { Entry, Header, Mark } from '../../../src/core/boil/entries.ts';
import { explain } from '../../../src/core/boil/explain.ts';
import { EXPLAINED } from '../../../src/core/boil/explanation.ts';
import type { Explained, Explanation } from '../../../src/core/boil/explanation.ts';
import type { BoilState } from '../../../src/core/boil/fold.ts';
import { panLimits } from '../../../src/core/boil/view.ts';
import { Z80 } from '../../../src/core/quantities/spread.ts';
import { foldAll, inOrder, lines, mark, onePot, readingAt, steadyCelsius } from './tarn-hollow.ts';

const END_MS = 5_400_000;
const steady = { fromBrix: 20, k: 0.0006, start: 0, sap: 'birch' as const };

const pot = (): Header => {
  const header = onePot('birch');
  const [pan] = header.pans ?? [];
  if (pan === undefined) throw new Error('no pan');
  const vessel = { shape: 'round' as const, diameter_mm: 400 };
  return { ...header, pans: [{ ...pan, vessel, heat: { kind: 'propane', power_w: 16_000 } }] };
};

const filled: Mark = { kind: 'top-up', pan: 'p1', litres: 12, brix: 20, celsius: 90 };
const checked: Mark = { kind: 'water-check', probe: 'A/1', celsius: 99.97 };

/** A birch pot under steady heat, after an hour and a half. */
function after(...marks: Mark[]): BoilState {
  const heard = lines(0, END_MS, { T1: (t) => steadyCelsius(steady, t) });
  const noted = marks.map((one, i) => mark(1000 * i, one));
  return foldAll(pot(), inOrder(noted, heard), END_MS).state;
}

const boil = after(filled, checked);

function told(state: BoilState, what: Explained): Explanation {
  const found = explain(state, what === 'water' ? null : 'p1', what, END_MS);
  if (found === null) throw new Error(`nothing said of ${what}`);
  return found;
}

test('each value is the one that is shown', () => {
  const reading = readingAt(boil, 'p1', END_MS);
  const limits = panLimits(boil, 'p1');
  const shown: Record<Explained, number | null> = {
    water: boil.water.celsius,
    temperature: reading.temperature_c,
    rise: reading.rise_c,
    rate: reading.rate_c_per_min,
    strength: reading.brix,
    litres: reading.litres,
    depth: reading.depth_mm,
    'top-up': reading.top_up_in_s,
    finish: reading.finish_in_s,
    'finish-point': limits.finish_c,
    'scorch-point': limits.scorch_c,
  };
  for (const what of EXPLAINED) {
    expect(shown[what], what).not.toBeNull();
    expect(told(boil, what).value, what).toBeCloseTo(shown[what] ?? NaN, 6);
  }
});

test('each range holds its value and stands for the parts that are named', () => {
  for (const what of EXPLAINED) {
    const { value, low, high, parts } = told(boil, what);
    expect(low, what).toBeLessThan(value ?? NaN);
    expect(high, what).toBeGreaterThan(value ?? NaN);
    const sum = Math.hypot(...parts.map(({ sigma }) => sigma));
    // Covariances and the bend of the strength are left out of the parts.
    const ratio = (Z80 * sum) / ((high ?? NaN) - (value ?? NaN));
    expect(ratio, what).toBeGreaterThan(0.7);
    expect(ratio, what).toBeLessThan(1.4);
    const sizes = parts.map(({ sigma }) => Math.abs(sigma));
    expect(sizes, what).toEqual(sizes.toSorted((a, b) => b - a));
  }
});

test('where several things tell the same, no part is more than the whole', () => {
  const state = after(filled, checked, { kind: 'pressure', hpa: 1013 });
  for (const what of ['water', 'temperature', 'rise', 'finish-point', 'scorch-point'] as const) {
    const { value, high, parts } = told(state, what);
    const sigma = ((high ?? NaN) - (value ?? NaN)) / Z80;
    expect(Math.hypot(...parts.map((part) => part.sigma)), what).toBeLessThanOrEqual(sigma * 1.000_001);
  }
});

const kinds = (what: Explained): string[] =>
  told(boil, what)
    .parts.map(({ kind }) => kind)
    .toSorted();

test('a point on the bar rests on water point, probe and sap, and not on what the pan reads now', () => {
  const points = ['boiling-check', 'sugar-model', 'weather'];
  expect(kinds('finish-point')).toEqual(points);
  expect(kinds('scorch-point')).toEqual(points);
  expect(kinds('rise')).toEqual(['boiling-check', 'probe', 'weather']);
  expect(kinds('finish')).toEqual(['boiling-check', 'evaporation', 'sugar-model', 'weather']);
});

test('an unknown birch sap is the least sure part of its strength, and a density reading is asked for', () => {
  const before = told(boil, 'strength');
  expect(before.parts[0]?.kind).toBe('sugar-model');
  expect(before.surer).toBe('density');
  expect(before.facts?.sapFrom).toBeNull();
});

test('the density reading that was asked for takes the doubt away', () => {
  const brix = readingAt(boil, 'p1', END_MS).brix ?? 0;
  const density = { kind: 'density' as const, pan: 'p1', brix: Math.round(brix), celsius: 20, reference_celsius: 20 };
  const { state } = foldAll(
    pot(),
    inOrder(
      [mark(0, filled), mark(1000, checked), mark(END_MS - 60_000, density)],
      lines(0, END_MS, { T1: (t) => steadyCelsius(steady, t) }),
    ),
    END_MS,
  );
  const surer = told(state, 'strength');
  const width = (one: Explanation) => (one.high ?? NaN) - (one.low ?? NaN);
  expect(width(surer)).toBeLessThan(width(told(boil, 'strength')));
  expect(surer.facts?.sapFrom).toEqual({ kind: 'density-reading', at: END_MS - 60_000 });
});

test('a probe that nobody checked is named, and a check in boiling water is asked for', () => {
  const rise = told(after(filled), 'rise');
  const asked = rise.parts.filter(({ kind }) => kind === 'assumed');
  expect(asked.map(({ of }) => of)).toEqual(['A/1']);
  expect(rise.surer).toBe('water-check');
  expect(rise.facts?.heardAt).toBe(END_MS - 1000);
});

test('a check alone leaves the water point to the altitude, and a pressure is asked for', () => {
  const water = told(boil, 'water');
  expect(water.parts[0]?.kind).toBe('altitude');
  expect(water.surer).toBe('pressure');
  expect(told(after({ kind: 'pressure', hpa: 1000 }), 'water').surer).not.toBe('pressure');
});

test('of a pressure and a check the pressure makes most of what is not sure of the water point', () => {
  const { parts } = told(after(checked, { kind: 'pressure', hpa: 1013 }), 'water');
  const sigma = (kind: string): number => parts.find((part) => part.kind === kind)?.sigma ?? 0;
  expect(sigma('pressure')).toBeGreaterThan(sigma('boiling-check'));
  expect(sigma('boiling-check')).toBeGreaterThan(0);
});

test('litres by nominal power ask for a depth, and a depth makes them surer', () => {
  const { parts, surer, facts } = told(boil, 'litres');
  expect(facts?.volume).toEqual({ kind: 'top-up', at: 0 });
  expect(parts.map(({ kind }) => kind)).toContain('volume');
  expect(surer).toBe('depth');
});

test('without a probe the thermometer in the hand is the source, and a pressure is what helps the water point', () => {
  const header: Header = { ...onePot(), probes: [], ports: [], pans: [{ id: 'p1', sap: 'maple' }] };
  const read = mark(0, { kind: 'reading', pan: 'p1', celsius: 103 });
  const { state } = foldAll(header, [read], 60_000);
  const temperature = explain(state, 'p1', 'temperature', 60_000);
  expect(temperature?.facts).toMatchObject({ probe: null, heardAt: 0 });
  expect(temperature?.parts[0]).toMatchObject({ kind: 'assumed' });
  expect(explain(state, null, 'water', 60_000)?.surer).toBe('pressure');
});

test('under a ceiling the strength rests on the density reading, and the ceiling is exact', () => {
  const header = pot();
  const [pan] = header.pans ?? [];
  if (pan === undefined) throw new Error('no pan');
  const kept: Header = { ...header, pans: [{ ...pan, finish: { brix: 67, ceiling_c: 94 } }] };
  const density = mark(30_000, { kind: 'density', pan: 'p1', brix: 40, celsius: 20, reference_celsius: 20 });
  const { state } = foldAll(kept, inOrder(lines(0, 60_000, { T1: () => 92 }), [density]), 60_000);
  expect(explain(state, 'p1', 'strength', 60_000)?.parts).toMatchObject([{ kind: 'density-reading', at: 30_000 }]);
  expect(explain(state, 'p1', 'scorch-point', 60_000)).toMatchObject({ value: 94, low: 94, high: 94, surer: null });
});

test('a pan that is not there, and a number that is not known', () => {
  expect(explain(boil, 'gone', 'rise', END_MS)).toBeNull();
  expect(explain(boil, null, 'rise', END_MS)).toBeNull();
  const { state } = foldAll({ ...pot(), site: {} }, [], 1000);
  expect(explain(state, null, 'water', 1000)).toMatchObject({ value: null, surer: null, waterFrom: null });
  expect(explain(state, 'p1', 'strength', 1000)).toMatchObject({ value: null, parts: [] });
});

test('by hand, a density tells how the sap boils only with the thermometer read just before it', () => {
  const header = { ...pot(), probes: [], pans: pot().pans!.map(({ probe: _, ...pan }) => pan) };
  const read = (t: number): Entry => mark(t, { kind: 'reading', pan: 'p1', celsius: 103.6 });
  const dense = (t: number, sure?: true): Entry =>
    mark(t, { kind: 'density', pan: 'p1', brix: 55, ...(sure && { sure }) });
  const aloneOf = (...entries: Entry[]): number | null | undefined => {
    const { state } = foldAll(header, [mark(0, filled), ...entries], END_MS);
    return explain(state, 'p1', 'finish-point', END_MS)?.facts?.densityAlone;
  };
  expect(aloneOf(read(5_000_000))).toBeNull();
  expect(aloneOf(read(5_000_000), dense(5_200_000))).toBe(5_200_000);
  expect(aloneOf(read(5_000_000), dense(5_200_000, true))).toBeNull();
  expect(aloneOf(read(5_000_000), dense(5_060_000))).toBeNull();
  // Of a pan that was never read there is no temperature that it could contradict.
  expect(aloneOf(dense(5_200_000))).toBeNull();
});
