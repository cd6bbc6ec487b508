// Checks strength and rise against published sucrose equations, trade and government points, and each other.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { readTable, residuals, type TableRow } from './published-table.ts';

const sucrose: SugarShares = { sucrose: 1, glucose: 0, fructose: 0 };
const glucose: SugarShares = { sucrose: 0, glucose: 1, fructose: 0 };
const fructose: SugarShares = { sucrose: 0, glucose: 0, fructose: 1 };
const invert: SugarShares = { sucrose: 0, glucose: 0.5, fructose: 0.5 };
const maple = sugarShares('maple');
const birch = sugarShares('birch');
const seaLevelHpa = 1013.25;

const rise = (brix: number, shares: SugarShares, hpa = seaLevelHpa): number =>
  riseFromStrength(brix, shares, hpa) ?? NaN;
const strength = (riseC: number, shares: SugarShares, hpa = seaLevelHpa): number =>
  strengthFromRise(riseC, shares, hpa) ?? NaN;

/** Sucrose rise of the model less that of a column, between two strengths. */
function sucroseDifferences(column: string, fromBrix: number, toBrix: number): number[] {
  return readTable('bpe_sucrose_101325')
    .filter((row) => row.number('brix') >= fromBrix && row.number('brix') <= toBrix && row.value(column) !== null)
    .map((row) => rise(row.number('brix'), sucrose) - row.number(column));
}

test('sucrose: Starzak & Peacock 1997 (constants read, form from memory) as computed apart, to the last printed digit', () => {
  expect(residuals(sucroseDifferences('starzak_peacock_C', 5, 80)).worst).toBeLessThan(0.0006);
});

test('sucrose: within 0.16 °C of Bubnik & Kadlec 1995 from 10 to 80 °Bx, and within 0.02 °C from 65 to 67 °Bx', () => {
  const whole = residuals(sucroseDifferences('bubnik_kadlec1995_q100_C', 10, 80));
  expect(whole.worst).toBeLessThan(0.16);
  expect(whole.rms).toBeLessThan(0.065);
  expect(residuals(sucroseDifferences('bubnik_kadlec1995_q100_C', 65, 67)).worst).toBeLessThan(0.02);
});

test('sucrose: within 0.28 °C of Kadlec, Bretschneider & Dandar 1978 from 10 to 80 °Bx', () => {
  const { worst, rms } = residuals(sucroseDifferences('kadlec1978_C', 10, 80));
  expect(worst).toBeLessThan(0.285);
  expect(rms).toBeLessThan(0.23);
});

test('sucrose: within 0.12 °C of the Claassen/Hugot table at 10, 20 ... 80 °Bx (table from memory)', () => {
  const tens = readTable('bpe_sucrose_101325').filter((row) =>
    [10, 20, 30, 40, 50, 60, 70, 80].includes(row.number('brix')),
  );
  const differences = tens.map(
    (row) => rise(row.number('brix'), sucrose) - row.number('claassen_hugot_table_C(memory)'),
  );
  expect(residuals(differences).worst).toBeLessThan(0.12);
});

test('sucrose at 500 to 1050 hPa: Starzak & Peacock as computed apart, and within 3 % of the pressure ratios of Kadlec 1978 and Bubnik & Kadlec 1995', () => {
  const strengths = [30, 50, 60, 66, 66.9, 70, 75];
  for (const row of readTable('bpe_sucrose_vs_pressure').filter((row) => row.number('p_hPa') >= 500)) {
    const pressure = row.number('p_hPa');
    for (const brix of strengths)
      expect(Math.abs(rise(brix, sucrose, pressure) - row.number(`B${brix}`))).toBeLessThan(0.0006);
    const ratio = rise(66.9, sucrose, pressure) / rise(66.9, sucrose);
    expect(Math.abs(ratio - row.number('ratio_KBD'))).toBeLessThan(0.03);
    expect(Math.abs(ratio - row.number('ratio_BK'))).toBeLessThan(0.03);
  }
});

test('hexoses: the fitted model as computed apart; within 0.09 °C of modified UNIQUAC (parameters from memory) from 50 to 70 °Bx', () => {
  const mixes: [string, SugarShares][] = [
    ['model_glucose', glucose],
    ['model_fructose', fructose],
    ['model_invert', invert],
  ];
  for (const row of readTable('bpe_hexoses_101325')) {
    const brix = row.number('brix');
    for (const [column, shares] of mixes)
      expect(Math.abs(rise(brix, shares) - row.number(column))).toBeLessThan(0.0006);
    const uniquac = row.number('peres_macedo_uniquac_glucose(params memory)');
    if (brix >= 50 && brix <= 70) expect(Math.abs(rise(brix, glucose) - uniquac)).toBeLessThan(0.09);
  }
});

/** The mixes of bpe_mixtures.csv by their names. */
function mixNamed(name: string): SugarShares {
  if (name === 'sucrose') return sucrose;
  if (name === 'invert') return invert;
  const [, f, g, s] = /^birch_F(\d+)G(\d+)S(\d+)$/.exec(name) ?? [];
  if (s !== undefined) return { sucrose: Number(s) / 100, glucose: Number(g) / 100, fructose: Number(f) / 100 };
  const [, percent] = /^maple(\d+)/.exec(name) ?? [];
  const hexose = (1 - Number(percent) / 100) / 2;
  return { sucrose: Number(percent) / 100, glucose: hexose, fructose: hexose };
}

test('mixes of maple and birch at 101.325 and 80 kPa: the same model as computed apart', () => {
  const check = (row: TableRow): void => {
    const shares = mixNamed(row.text('sugars'));
    const pressure = row.number('p_kPa') * 10;
    for (const brix of [60, 65, 66, 66.9, 67, 68]) {
      expect(Math.abs(rise(brix, shares, pressure) - row.number(`B${brix}`)), row.text('sugars')).toBeLessThan(0.0006);
    }
    expect((saturationTemperatureCelsius(pressure) ?? NaN) + rise(66, shares, pressure)).toBeCloseTo(
      row.number('Tboil_66_C'),
      2,
    );
  };
  readTable('bpe_mixtures').forEach(check);
});

test('strength from rise: the same model as computed apart, and not known beyond 80 °Bx', () => {
  const columns: [string, SugarShares, number][] = [
    ['sucrose', sucrose, seaLevelHpa],
    ['maple98', maple, seaLevelHpa],
    ['birch_F45G43S12', birch, seaLevelHpa],
    ['sucrose_80kPa', sucrose, 800],
  ];
  for (const row of readTable('brix_from_elevation')) {
    for (const [column, shares, pressure] of columns) {
      const found = strengthFromRise(row.number('elevation_C'), shares, pressure);
      if (row.number(column) > 80) expect(found).toBeNull();
      else expect(Math.abs((found ?? NaN) - row.number(column)), column).toBeLessThan(0.0051);
    }
  }
});

test('67 °Bx boils at 104.2 °C at sea level: Ontario ministry 2013, within 0.1 °C for sucrose and for maple', () => {
  for (const shares of [sucrose, maple]) {
    const celsius = (saturationTemperatureCelsius(seaLevelHpa) ?? NaN) + rise(67, shares);
    expect(Math.abs(celsius - 104.2)).toBeLessThan(0.1);
  }
});

test('66.0 °Bx boils 7.1 °F over water: common practice of the trade, within 0.2 °F for sucrose and for maple', () => {
  for (const shares of [sucrose, maple]) expect(Math.abs(rise(66, shares) * 1.8 - 7.1)).toBeLessThan(0.2);
});

test("birch taken off at maple's 4 °C is only 57 °Bx", () => {
  expect(strength(4, birch)).toBeCloseTo(56.95, 1);
});

/** Any mix; parts of a whole. */
const anyMix = fc
  .tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }), fc.integer({ min: 1, max: 100 }))
  .map(([s, g, f]) => ({ sucrose: s / (s + g + f), glucose: g / (s + g + f), fructose: f / (s + g + f) }));
const anyPressure = fc.double({ min: 500, max: 1100, noNaN: true });
const anyBrix = fc.double({ min: 0, max: 80, noNaN: true });

test('strength from rise undoes rise from strength to 1e-6 °Bx for any mix, pressure and strength', () => {
  fc.assert(
    fc.property(anyBrix, anyMix, anyPressure, (brix, shares, pressure) => {
      const back = strength(rise(brix, shares, pressure), shares, pressure);
      expect(Math.abs(back - brix)).toBeLessThan(1e-6);
    }),
    { numRuns: 2000 },
  );
});

test('stronger boils hotter and hotter is stronger, for any mix and pressure', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 79.9, noNaN: true }), anyMix, anyPressure, (brix, shares, pressure) => {
      const riseHere = rise(brix, shares, pressure);
      expect(rise(brix + 0.1, shares, pressure)).toBeGreaterThan(riseHere);
      expect(strength(riseHere + 0.001, shares, pressure)).toBeGreaterThan(strength(riseHere, shares, pressure));
    }),
    { numRuns: 1000 },
  );
});

test('plain water rises by nothing, and a noisy probe a little below the water point reads 0 °Bx', () => {
  expect(rise(0, maple)).toBeCloseTo(0, 9);
  expect(strengthFromRise(-0.29, maple, seaLevelHpa)).toBe(0);
  expect(strengthFromRise(-0.31, maple, seaLevelHpa)).toBeNull();
});

test('a rise too small to count is 0 °Bx or next to it, never less', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e-9, noNaN: true }), anyMix, anyPressure, (riseC, shares, pressure) => {
      const found = strength(riseC, shares, pressure);
      expect(found >= 0 && found < 1e-5).toBe(true);
    }),
  );
});

test('whatever comes in, the answer is a number in range or not known, never NaN', () => {
  const anything = fc.double();
  fc.assert(
    fc.property(anything, anything, anything, anything, anything, (value, s, g, f, pressure) => {
      for (const shares of [maple, { sucrose: s, glucose: g, fructose: f }]) {
        for (const hpa of [seaLevelHpa, pressure]) {
          const answers = [riseFromStrength(value, shares, hpa), strengthFromRise(value, shares, hpa)];
          for (const answer of answers) expect(answer === null || (answer >= 0 && answer <= 80)).toBe(true);
        }
      }
    }),
  );
});

test('outside the declared range nothing is known', () => {
  for (const brix of [-0.01, 80.01, NaN]) expect(riseFromStrength(brix, maple, 1000)).toBeNull();
  for (const pressure of [499, 1101, NaN]) expect(strengthFromRise(4, maple, pressure)).toBeNull();
  for (const riseC of [20, Infinity, NaN]) expect(strengthFromRise(riseC, maple, 1000)).toBeNull();
  expect(strengthFromRise(4, { sucrose: 0.5, glucose: 0.3, fructose: 0.1 }, 1000)).toBeNull();
  expect(strengthFromRise(4, { sucrose: 1.1, glucose: -0.1, fructose: 0 }, 1000)).toBeNull();
});
