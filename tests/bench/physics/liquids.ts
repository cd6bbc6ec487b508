// Densities and what instruments read against published tables, standards and charts.
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import {
  brixFromBaume,
  specificGravityFromBrix,
  trueBrixFromHydrometer,
} from '../../../src/core/physics/hydrometer.ts';
import { trueBrixFromRefractometer } from '../../../src/core/physics/refractometer.ts';
import { massFromKg } from '../../../src/core/quantities/units.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

const hotChart = (trueBrix: '66.9' | '66.0'): Comparison['pairs'] =>
  readTable('hydrometer_hot_readings')
    .filter((row) => row.value(`chart_${trueBrix}`) !== null)
    .map((row) => [
      trueBrixFromHydrometer({
        reading: row.number(`chart_${trueBrix}`),
        scale: 'brix',
        sampleCelsius: row.number('C'),
        referenceCelsius: 15.56,
      }),
      Number(trueBrix),
    ]);

const gallonPounds = (brix: number): number =>
  massFromKg(((densityKgPerM3(brix, 20) ?? NaN) * 3.785411784) / 1000, 'pound');

const refractometerAt = (readingBrix: number, sampleCelsius: number): number => {
  const read = { readingBrix, sampleCelsius, referenceCelsius: 20, compensated: false };
  return (trueBrixFromRefractometer(read) ?? NaN) - readingBrix;
};

export const liquidComparisons: Comparison[] = [
  {
    quantity: 'density at 20 °C, 0–72 °Bx',
    source: 'CRC Handbook, a public copy',
    provenance: 'read',
    unit: 'kg/m³',
    limit: 0.3,
    pairs: readTable('density_crc_20C')
      .filter((row) => row.number('brix') <= 72)
      .map((row) => [densityKgPerM3(row.number('brix'), 20), row.number('rho20_crc_kgm3')]),
  },
  {
    quantity: 'density of water, 80–105 °C',
    source: 'IAPWS-IF97, worked out apart',
    provenance: 'computed',
    unit: 'kg/m³',
    limit: 0.02,
    pairs: readTable('latent_heat_if97')
      .filter((row) => row.number('t_C') <= 105)
      .map((row) => [densityKgPerM3(0, row.number('t_C')), row.number('rho_liq')]),
  },
  {
    quantity: 'US gallon, 66.0 and 66.9 °Bx',
    source: 'ICUMSA density, worked out apart',
    provenance: 'computed',
    unit: 'lb',
    limit: 0.001,
    pairs: [
      [gallonPounds(66), 11.038],
      [gallonPounds(66.9), 11.084],
    ],
  },
  {
    quantity: 'specific gravity 60/60 °F',
    source: 'ICUMSA density, worked out apart',
    provenance: 'computed',
    unit: '',
    limit: 0.00005,
    pairs: [
      [specificGravityFromBrix(66), 1.3262],
      [specificGravityFromBrix(66.9), 1.3317],
      [specificGravityFromBrix(68.9), 1.3442],
    ],
  },
  {
    quantity: '36 and 37 °Bé at 60 °F',
    source: 'Vermont density rule, whole degrees',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.3,
    pairs: [
      [brixFromBaume(36), 66.9],
      [brixFromBaume(37), 68.9],
    ],
  },
  {
    quantity: 'hot hydrometer, 66.9 °Bx',
    source: 'Vermont-calibrated chart',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.35,
    pairs: hotChart('66.9'),
  },
  {
    quantity: 'hot hydrometer, 66.0 °Bx',
    source: 'density chart of the trade',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.35,
    pairs: hotChart('66.0'),
  },
  {
    quantity: 'hot hydrometer, 32.1 °Bé',
    source: 'Vermont-calibrated sheet, hot mark at 211 °F',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.15,
    pairs: [
      [trueBrixFromHydrometer({ reading: 32.1, scale: 'baume', sampleCelsius: 99.44, referenceCelsius: 15.56 }), 66.9],
    ],
  },
  {
    quantity: 'refractometer, 10–16 °C',
    source: 'OIV-MA-AS2-02 Table I',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.0065,
    pairs: readTable('refractometer_temp_correction_oiv').flatMap((row) =>
      [10, 20, 30, 40, 50, 60, 65, 70, 75].map(
        (brix) => [refractometerAt(brix, row.number('T_C')), row.number(`B${brix}`)] as const,
      ),
    ),
  },
  {
    quantity: 'refractometer at 30 °C',
    source: 'international table, middle of 0.76 to 0.81',
    provenance: 'memory',
    unit: '°Bx',
    limit: 0.045,
    pairs: [10, 30, 50, 66].map((brix) => [refractometerAt(brix, 30), 0.785]),
  },
];
