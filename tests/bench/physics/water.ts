// Water points and pressures at the pans against published values.
import { stationPressureFromAltitudeHpa } from '../../../src/core/physics/station-pressure.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

export const waterComparisons: Comparison[] = [
  {
    quantity: 'water point',
    source: 'IAPWS-IF97 eq. 31, worked out apart',
    provenance: 'computed',
    unit: '°C',
    limit: 0.0001,
    pairs: readTable('water_boiling_vs_pressure').map((row) => [
      saturationTemperatureCelsius(row.number('p_hPa')),
      row.number('Tb_degC'),
    ]),
  },
  {
    quantity: 'pressure at an altitude',
    source: 'ISO 2533 levels (read to 1 m, rest memory)',
    provenance: 'memory',
    unit: 'hPa',
    limit: 0.06,
    pairs: readTable('isa_pressure')
      .filter((row) => row.value('p_hPa_table') !== null)
      .map((row) => [stationPressureFromAltitudeHpa(row.number('H_geopotential_m')), row.number('p_hPa_table')]),
  },
];
