// Densities and what instruments read against published tables.
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import { trueBrixFromHydrometer } from '../../../src/core/physics/hydrometer.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

export const liquidComparisons: Comparison[] = [
  {
    quantity: 'density at 20 °C, 0–80 °Bx',
    source: 'CRC Handbook, as transcribed',
    provenance: 'read',
    unit: 'kg/m³',
    limit: 0.6,
    pairs: readTable('density_crc_20C')
      .filter((row) => row.number('brix') <= 80)
      .map((row) => [densityKgPerM3(row.number('brix'), 20), row.number('rho20_crc_kgm3')]),
  },
  {
    quantity: 'hot hydrometer, 66.9 °Bx',
    source: 'Vermont-calibrated chart',
    provenance: 'read',
    unit: '°Bx',
    limit: 0.35,
    pairs: readTable('hydrometer_hot_readings')
      .filter((row) => row.value('chart_66.9') !== null)
      .map((row) => [
        trueBrixFromHydrometer({
          reading: row.number('chart_66.9'),
          scale: 'brix',
          sampleCelsius: row.number('C'),
          referenceCelsius: 15.56,
        }),
        66.9,
      ]),
  },
];
