// Rise over water of sugar solutions against published equations, tables and the trade's own points.
import type { SugarShares } from '../../../src/core/boil/entries.ts';
import { headRiseC } from '../../../src/core/physics/head.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { energyRatio, logActivity, mixOf, moleFractionFromBrix } from '../../../src/core/physics/water-activity.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import {
  bubnikKadlec1995RiseC,
  claassenHugotRises,
  crapisteLozano1988RiseC,
  kadlec1978RiseC,
  uniquacGlucoseRiseC,
} from '../../core/physics/published-rises.ts';
import type { Comparison } from './comparison.ts';

const SUCROSE: SugarShares = { sucrose: 1, glucose: 0, fructose: 0 };
const GLUCOSE: SugarShares = { sucrose: 0, glucose: 1, fructose: 0 };
const INVERT: SugarShares = { sucrose: 0, glucose: 0.5, fructose: 0.5 };
const HONEY: SugarShares = { sucrose: 0, glucose: 0.45, fructose: 0.55 };
const MAPLE = sugarShares('maple');
const BIRCH = sugarShares('birch');
const SEA_LEVEL_HPA = 1013.25;
const KELVIN_PER_FAHRENHEIT = 5 / 9;

const waterC = (hpa: number): number => saturationTemperatureCelsius(hpa) ?? NaN;
const seaLevelRise = (brix: number, shares: SugarShares): number | null =>
  riseFromStrength(brix, shares, SEA_LEVEL_HPA);

function along(
  [from, to, step]: readonly [number, number, number],
  shares: SugarShares,
  theirs: (brix: number) => number,
): Comparison['pairs'] {
  return Array.from({ length: Math.round((to - from) / step) + 1 }, (_, index) => {
    const brix = from + index * step;
    return [seaLevelRise(brix, shares), theirs(brix)];
  });
}

/** How a rise of 66.9 °Bx changes from sea level to a lower pressure. */
const pressureRatios = (theirs: (brix: number, waterCelsius: number) => number): Comparison['pairs'] =>
  [1050, 950, 900, 850, 800].map((hpa) => [
    (riseFromStrength(66.9, SUCROSE, hpa) ?? NaN) / (seaLevelRise(66.9, SUCROSE) ?? NaN),
    theirs(66.9, waterC(hpa)) / theirs(66.9, waterC(SEA_LEVEL_HPA)),
  ]);

function honeyActivity(waterPercent: number): number | null {
  const mix = mixOf(HONEY);
  return mix === null
    ? null
    : Math.exp(logActivity(moleFractionFromBrix(100 - waterPercent, mix), energyRatio(mix, 25)));
}

export const solutionComparisons: Comparison[] = [
  {
    quantity: 'rise, sucrose, 10–80 °Bx',
    source: 'Bubnik & Kadlec 1995, purity 100 %',
    provenance: 'read',
    unit: '°C',
    limit: 0.16,
    pairs: along([10, 80, 5], SUCROSE, (brix) => bubnikKadlec1995RiseC(brix, waterC(SEA_LEVEL_HPA))),
  },
  {
    quantity: 'rise, sucrose, 65–67 °Bx',
    source: 'Bubnik & Kadlec 1995, purity 100 %',
    provenance: 'read',
    unit: '°C',
    limit: 0.02,
    pairs: along([65, 67, 0.1], SUCROSE, (brix) => bubnikKadlec1995RiseC(brix, waterC(SEA_LEVEL_HPA))),
  },
  {
    quantity: 'rise, sucrose, 10–80 °Bx',
    source: 'Kadlec, Bretschneider & Dandar 1978',
    provenance: 'read',
    unit: '°C',
    limit: 0.28,
    pairs: along([10, 80, 5], SUCROSE, (brix) => kadlec1978RiseC(brix, waterC(SEA_LEVEL_HPA))),
  },
  {
    quantity: 'rise, sucrose, 60–70 °Bx',
    source: 'Crapiste & Lozano 1988',
    provenance: 'memory',
    unit: '°C',
    limit: 0.15,
    pairs: along([60, 70, 1], SUCROSE, (brix) => crapisteLozano1988RiseC('sucrose', brix, SEA_LEVEL_HPA)),
  },
  {
    quantity: 'rise, sucrose, 10–80 °Bx',
    source: 'Claassen/Hugot table, to 0.1 °C',
    provenance: 'memory',
    unit: '°C',
    limit: 0.12,
    pairs: claassenHugotRises.map(([brix, riseC]) => [seaLevelRise(brix, SUCROSE), riseC]),
  },
  {
    quantity: 'rise over pressure, 66.9 °Bx',
    source: 'Kadlec, Bretschneider & Dandar 1978',
    provenance: 'read',
    unit: 'of it',
    limit: 0.01,
    pairs: pressureRatios(kadlec1978RiseC),
  },
  {
    quantity: 'rise over pressure, 66.9 °Bx',
    source: 'Bubnik & Kadlec 1995',
    provenance: 'read',
    unit: 'of it',
    limit: 0.01,
    pairs: pressureRatios(bubnikKadlec1995RiseC),
  },
  {
    quantity: 'rise, glucose, 50–70 °Bx',
    source: 'modified UNIQUAC, Peres & Macedo 1996',
    provenance: 'memory',
    unit: '°C',
    limit: 0.075,
    pairs: along([50, 70, 1], GLUCOSE, (brix) => uniquacGlucoseRiseC(brix, SEA_LEVEL_HPA)),
  },
  {
    quantity: 'rise, invert sugar, 50–70 °Bx',
    source: 'Crapiste & Lozano 1988, reducing sugars',
    provenance: 'memory',
    unit: '°C',
    limit: 0.09,
    pairs: along([50, 70, 1], INVERT, (brix) => crapisteLozano1988RiseC('reducing', brix, SEA_LEVEL_HPA)),
  },
  {
    quantity: 'water activity of honey, 25 °C',
    source: 'Rüegg & Blanc 1981, 16–18 % water',
    provenance: 'memory',
    unit: 'of 1',
    limit: 0.01,
    pairs: [16, 17, 18].map((water) => [honeyActivity(water), 0.271 + 0.0177 * water]),
  },
  {
    quantity: 'maple syrup boils, 67 °Bx',
    source: 'Ontario ministry 2013, 104.2 °C',
    provenance: 'read',
    unit: '°C',
    limit: 0.1,
    pairs: [[waterC(SEA_LEVEL_HPA) + (seaLevelRise(67, MAPLE) ?? NaN), 104.2]],
  },
  {
    quantity: 'maple rise, 65.5–66.9 °Bx',
    source: 'sheets: +7, +7.1, +7.4 °F',
    provenance: 'read',
    unit: '°C',
    limit: 0.14,
    pairs: [
      [seaLevelRise(65.5, MAPLE), 7 * KELVIN_PER_FAHRENHEIT],
      [seaLevelRise(66, MAPLE), 7.1 * KELVIN_PER_FAHRENHEIT],
      [seaLevelRise(66.9, MAPLE), 7.4 * KELVIN_PER_FAHRENHEIT],
    ],
  },
  {
    quantity: 'acids and minerals, 66 °Bx',
    source: 'ideal 75 g/mol, worked out apart',
    provenance: 'computed',
    unit: '°C',
    limit: 0.005,
    pairs: [
      [seaLevelRise(66, { ...BIRCH, others: 0.05 }), 6.21],
      [seaLevelRise(66, { ...BIRCH, others: 0.1 }), 6.4],
      [(seaLevelRise(66, { ...MAPLE, others: 0.005 }) ?? NaN) - (seaLevelRise(66, MAPLE) ?? NaN), 0.03],
      [(seaLevelRise(66, { ...MAPLE, others: 0.01 }) ?? NaN) - (seaLevelRise(66, MAPLE) ?? NaN), 0.06],
    ],
  },
  {
    quantity: 'head of 1 cm of 66 °Bx',
    source: '1.25 hPa × 0.0277 °C/hPa, worked out apart',
    provenance: 'computed',
    unit: '°C',
    limit: 0.0005,
    pairs: [[headRiseC(10, 66, SEA_LEVEL_HPA), 0.0346]],
  },
];
