// Water points and pressures at the pans against published values.
import {
  stationPressureFromAltimeterHpa,
  stationPressureFromAltitudeHpa,
  stationPressureFromSeaLevelHpa,
} from '../../../src/core/physics/station-pressure.ts';
import { saturationPressureHpa, saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { hpaFromPressure } from '../../../src/core/quantities/units.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

const HPA_PER_MPA = 10_000;
const ZERO_CELSIUS_KELVIN = 273.15;
const M_PER_FT = 0.3048;

/** Checks of the release, as ours over theirs. */
const releaseRatios = (kind: 'ps' | 'Ts'): Comparison['pairs'] =>
  readTable('if97_region4_checks')
    .filter((row) => row.text('quantity').startsWith(kind))
    .map((row) => {
      const at = Number(/\((\d+\.?\d*)/.exec(row.text('quantity'))?.[1]);
      const ours =
        kind === 'ps'
          ? (saturationPressureHpa(at - ZERO_CELSIUS_KELVIN) ?? NaN) / HPA_PER_MPA
          : (saturationTemperatureCelsius(at * HPA_PER_MPA) ?? NaN) + ZERO_CELSIUS_KELVIN;
      return [ours / row.number('release_value'), 1];
    });

const levels = readTable('isa_pressure').filter((row) => row.value('p_hPa_table') !== null);
const altimeters = readTable('altimeter_to_station');

export const waterComparisons: Comparison[] = [
  {
    quantity: 'vapour pressure, 300–600 K',
    source: 'IAPWS R7-97(2012) Table 35 (500 K read)',
    provenance: 'memory',
    unit: 'of it',
    limit: 2e-9,
    pairs: releaseRatios('ps'),
  },
  {
    quantity: 'water point, 0.1–10 MPa',
    source: 'IAPWS R7-97(2012) Table 36 (10 MPa read)',
    provenance: 'memory',
    unit: 'of it',
    limit: 2e-9,
    pairs: releaseRatios('Ts'),
  },
  {
    quantity: 'water point, 650–1050 hPa',
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
    source: 'ISO 2533 levels, heights to 1 m',
    provenance: 'read',
    unit: 'hPa',
    limit: 0.06,
    pairs: levels
      .filter((row) => !row.text('p_hPa_table').includes('.'))
      .map((row) => [stationPressureFromAltitudeHpa(row.number('H_geopotential_m')), row.number('p_hPa_table')]),
  },
  {
    quantity: 'pressure at an altitude',
    source: 'ICAO Doc 7488, five digits',
    provenance: 'memory',
    unit: 'hPa',
    limit: 0.006,
    pairs: levels
      .filter((row) => row.text('p_hPa_table').includes('.'))
      .map((row) => [stationPressureFromAltitudeHpa(row.number('H_geopotential_m')), row.number('p_hPa_table')]),
  },
  {
    quantity: 'pressure from QNH',
    source: 'a public barometry note, two examples',
    provenance: 'read',
    unit: 'hPa',
    limit: 0.02,
    pairs: [
      [stationPressureFromAltimeterHpa(hpaFromPressure(30.2, 'inhg'), 5045 * M_PER_FT), 849.77],
      [stationPressureFromAltimeterHpa(hpaFromPressure(30.37, 'inhg'), 7014 * M_PER_FT), 793.75],
    ],
  },
  {
    quantity: 'pressure from QNH',
    source: 'Smithsonian Tables as MetPy has them, −0.3',
    provenance: 'read',
    unit: 'hPa',
    limit: 0.1,
    pairs: altimeters.map((row) => [
      stationPressureFromAltimeterHpa(row.number('altimeter_or_MSL_hPa'), row.number('elev_m')),
      row.number('p_station_smithsonian') - 0.3,
    ]),
  },
  {
    quantity: 'pressure from QFF at 0 °C',
    source: 'hypsometric formula, worked out apart',
    provenance: 'computed',
    unit: 'hPa',
    limit: 0.05,
    pairs: altimeters.map((row) => [
      stationPressureFromSeaLevelHpa(row.number('altimeter_or_MSL_hPa'), row.number('elev_m'), 0),
      row.number('hypsometric_0C_station'),
    ]),
  },
];
