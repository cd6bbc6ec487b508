// Checks the rise of boiling solutions against published equations, trade and government points.
import { expect, test } from 'vitest';
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength, strengthFromRise } from '../../../src/core/physics/sugar-solution.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import {
  bubnikKadlec1995RiseC,
  claassenHugotRises,
  crapisteLozano1988RiseC,
  kadlec1978RiseC,
  uniquacGlucoseRiseC,
} from './published-rises.ts';
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

const eachBrix = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => from + index * step);
const waterCelsius = (hpa: number): number => saturationTemperatureCelsius(hpa) ?? NaN;

test('sucrose: Bubnik & Kadlec 1995 at 100 % purity (constants read) from 10 to 80 °Bx: rms 0.061, worst 0.158 °C at 60 °Bx', () => {
  const ours = (brix: number): number => rise(brix, sucrose) - bubnikKadlec1995RiseC(brix, waterCelsius(seaLevelHpa));
  const whole = residuals(eachBrix(10, 80, 5).map(ours));
  expect(whole.rms).toBeLessThan(0.0615);
  expect(whole.worst).toBeLessThan(0.1585);
  expect(residuals(eachBrix(65, 67, 0.1).map(ours)).worst).toBeLessThan(0.02);
});

test('sucrose: Kadlec, Bretschneider & Dandar 1978 (constants read) from 10 to 80 °Bx: rms 0.175, worst 0.280 °C', () => {
  const differences = eachBrix(10, 80, 5).map(
    (brix) => rise(brix, sucrose) - kadlec1978RiseC(brix, waterCelsius(seaLevelHpa)),
  );
  expect(residuals(differences).rms).toBeLessThan(0.1755);
  expect(residuals(differences).worst).toBeLessThan(0.2805);
});

test('sucrose: Crapiste & Lozano 1988 (from memory) from 60 to 70 °Bx: rms 0.12 °C', () => {
  const differences = eachBrix(60, 70, 1).map(
    (brix) => rise(brix, sucrose) - crapisteLozano1988RiseC('sucrose', brix, seaLevelHpa),
  );
  expect(residuals(differences).rms).toBeLessThan(0.12);
});

test('sucrose: the Claassen/Hugot table (from memory, to a tenth) from 10 to 80 °Bx: rms 0.08, worst 0.12 °C', () => {
  const { rms, worst } = residuals(claassenHugotRises.map(([brix, riseC]) => rise(brix, sucrose) - riseC));
  expect(rms).toBeLessThan(0.085);
  expect(worst).toBeLessThan(0.12);
});

test('sucrose at 500 to 1050 hPa: Starzak & Peacock as computed apart, and the pressure ratios of Kadlec 1978 and Bubnik & Kadlec 1995 within 3 %', () => {
  for (const row of readTable('bpe_sucrose_vs_pressure').filter((row) => row.number('p_hPa') >= 500)) {
    const pressure = row.number('p_hPa');
    for (const brix of [30, 50, 60, 66, 66.9, 70, 75])
      expect(Math.abs(rise(brix, sucrose, pressure) - row.number(`B${brix}`))).toBeLessThan(0.0006);
    const ratio = rise(66.9, sucrose, pressure) / rise(66.9, sucrose);
    for (const published of [kadlec1978RiseC, bubnikKadlec1995RiseC]) {
      const theirs = published(66.9, waterCelsius(pressure)) / published(66.9, waterCelsius(seaLevelHpa));
      // They part below 800 hPa, 2000 m, where nobody boils sap.
      expect(Math.abs(ratio - theirs), `${pressure} hPa`).toBeLessThan(pressure >= 800 ? 0.01 : 0.03);
    }
  }
});

test('hexoses: the fitted model as computed apart', () => {
  const mixes: [string, SugarShares][] = [
    ['model_glucose', glucose],
    ['model_fructose', fructose],
    ['model_invert', invert],
  ];
  for (const row of readTable('bpe_hexoses_101325')) {
    for (const [column, shares] of mixes)
      expect(Math.abs(rise(row.number('brix'), shares) - row.number(column))).toBeLessThan(0.0006);
  }
});

test('glucose: modified UNIQUAC of Peres & Macedo 1996 (parameters from memory) from 50 to 70 °Bx, within 0.075 °C', () => {
  for (const brix of eachBrix(50, 70, 1)) {
    expect(Math.abs(rise(brix, glucose) - uniquacGlucoseRiseC(brix, seaLevelHpa)), `${brix} °Bx`).toBeLessThan(0.075);
  }
});

test('invert sugar: Crapiste & Lozano 1988 for reducing sugars (from memory) from 50 to 70 °Bx, within 0.09 °C', () => {
  for (const brix of eachBrix(50, 70, 1)) {
    const theirs = crapisteLozano1988RiseC('reducing', brix, seaLevelHpa);
    expect(Math.abs(rise(brix, invert) - theirs), `${brix} °Bx`).toBeLessThan(0.09);
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

test('offsets of trade and extension sheets: +7.1 °F for 66.0 °Bx, +7 °F for 65.5, +7.3 to +7.5 °F for 66.9, within 0.2 °F', () => {
  const sheets: [brix: number, fahrenheit: number][] = [
    [66, 7.1],
    [65.5, 7],
    [66.9, 7.4],
  ];
  for (const [brix, fahrenheit] of sheets)
    expect(Math.abs(rise(brix, sucrose) * 1.8 - fahrenheit), `${brix} °Bx`).toBeLessThan(0.2);
  expect(Math.abs(rise(66, maple) * 1.8 - 7.1)).toBeLessThan(0.2);
});

test('acids and minerals as ideal particles of 75 g/mol at 66 °Bx: birch with 5 % 6.21 °C, with 10 % 6.40 °C; maple with 0.5 % 0.03 °C more, with 1 % 0.06 °C (computed apart)', () => {
  expect(rise(66, { ...birch, others: 0.05 })).toBeCloseTo(6.21, 2);
  expect(rise(66, { ...birch, others: 0.1 })).toBeCloseTo(6.4, 2);
  expect(rise(66, { ...maple, others: 0.005 }) - rise(66, maple)).toBeCloseTo(0.03, 2);
  expect(rise(66, { ...maple, others: 0.01 }) - rise(66, maple)).toBeCloseTo(0.06, 2);
});

test("birch taken off at maple's 4 °C is only 57 °Bx", () => {
  expect(strength(4, birch)).toBeCloseTo(56.95, 1);
});
