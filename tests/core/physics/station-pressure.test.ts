// Checks pressure at the pans from altitude, QNH and QFF against the standard atmosphere and published examples.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  standardAltitudeM,
  stationPressureFromAltimeterHpa,
  stationPressureFromAltitudeHpa,
  stationPressureFromSeaLevelHpa,
} from '../../../src/core/physics/station-pressure.ts';
import { hpaFromPressure } from '../../../src/core/quantities/units.ts';
import { readTable } from './published-table.ts';

const metresFromFeet = (feet: number): number => feet * 0.3048;

test('altitude to pressure: ISO 2533 levels (950 to 700 hPa read in an ICAO 1964 table, rounded to 1 m; five-digit values from memory, ICAO Doc 7488)', () => {
  for (const row of readTable('isa_pressure')) {
    const altitude = row.number('H_geopotential_m');
    const pressure = stationPressureFromAltitudeHpa(altitude) ?? NaN;
    expect(pressure).toBeCloseTo(row.number('p_hPa_computed'), 3);
    const published = row.value('p_hPa_table');
    // A height rounded to 1 m leaves 0.06 hPa; the others are printed to 0.01 hPa.
    const limit = row.text('p_hPa_table').includes('.') ? 0.006 : 0.06;
    if (published !== null) expect(Math.abs(pressure - published), `${altitude} m`).toBeLessThan(limit);
  }
});

test('pressure to altitude: 44330.77 m [1 - (p/1013.25)^0.190263], as computed apart, and it undoes the other', () => {
  for (const hpa of [1050, 900, 700, 550])
    expect(standardAltitudeM(hpa)).toBeCloseTo(44330.77 * (1 - (hpa / 1013.25) ** 0.190263), 1);
  expect(standardAltitudeM(stationPressureFromAltitudeHpa(640) ?? NaN)).toBeCloseTo(640, 8);
  for (const hpa of [-5, 0, 500, 1200, NaN, Infinity]) expect(standardAltitudeM(hpa)).toBeNull();
});

test('altimeter setting to pressure: worked examples of a public barometry note, 30.20 inHg at 5045 ft and 30.37 inHg at 7014 ft', () => {
  const first = stationPressureFromAltimeterHpa(hpaFromPressure(30.2, 'inhg'), metresFromFeet(5045)) ?? NaN;
  const second = stationPressureFromAltimeterHpa(hpaFromPressure(30.37, 'inhg'), metresFromFeet(7014)) ?? NaN;
  expect(Math.abs(first - 849.77)).toBeLessThan(0.02);
  expect(Math.abs(second - 793.75)).toBeLessThan(0.02);
});

test('altimeter setting to pressure: within 0.1 hPa of the Smithsonian form as MetPy documents it, less its 0.3 hPa', () => {
  for (const row of readTable('altimeter_to_station')) {
    const pressure = stationPressureFromAltimeterHpa(row.number('altimeter_or_MSL_hPa'), row.number('elev_m')) ?? NaN;
    expect(Math.abs(pressure - (row.number('p_station_smithsonian') - 0.3))).toBeLessThan(0.1);
  }
});

test('sea-level pressure to station pressure on a 0 °C day: within 0.05 hPa of the hypsometric formula', () => {
  for (const row of readTable('altimeter_to_station')) {
    const pressure = stationPressureFromSeaLevelHpa(row.number('altimeter_or_MSL_hPa'), row.number('elev_m'), 0) ?? NaN;
    expect(pressure).toBeCloseTo(row.number('p_from_MSL_with_0C_station'), 1);
    expect(Math.abs(pressure - row.number('hypsometric_0C_station'))).toBeLessThan(0.05);
  }
});

test('taking QFF for QNH on a 0 °C day costs 1.65 hPa at 300 m', () => {
  const asQnh = stationPressureFromAltimeterHpa(1013.25, 300) ?? NaN;
  const asQff = stationPressureFromSeaLevelHpa(1013.25, 300, 0) ?? NaN;
  expect(asQnh - asQff).toBeCloseTo(1.65, 1);
});

const altitude = fc.double({ min: -500, max: 5000, noNaN: true });
const seaLevel = fc.double({ min: 850, max: 1100, noNaN: true });
const outdoors = fc.double({ min: -60, max: 60, noNaN: true });

test('in the declared range every way gives a pressure that a place on land can have', () => {
  fc.assert(
    fc.property(altitude, seaLevel, outdoors, (metres, hpa, celsius) => {
      for (const pressure of [
        stationPressureFromAltitudeHpa(metres),
        stationPressureFromAltimeterHpa(hpa, metres),
        stationPressureFromSeaLevelHpa(hpa, metres, celsius),
      ]) {
        expect(pressure).toBeGreaterThan(350);
        expect(pressure).toBeLessThan(1220);
      }
    }),
  );
});

test('all three agree in the standard atmosphere', () => {
  fc.assert(
    fc.property(altitude, (metres) => {
      const standard = stationPressureFromAltitudeHpa(metres) ?? NaN;
      expect(stationPressureFromAltimeterHpa(1013.25, metres)).toBeCloseTo(standard, 8);
      expect(stationPressureFromSeaLevelHpa(1013.25, metres, 15 - 0.0065 * metres)).toBeCloseTo(standard, 8);
    }),
  );
});

test('more pressure at sea level, colder air and lower ground each make more or less pressure, one way only', () => {
  const lower = fc.double({ min: -500, max: 4990, noNaN: true });
  const less = fc.double({ min: 850, max: 1099, noNaN: true });
  const colder = fc.double({ min: -60, max: 59, noNaN: true });
  fc.assert(
    fc.property(lower, less, colder, (metres, hpa, celsius) => {
      const isa = stationPressureFromAltitudeHpa(metres) ?? NaN;
      const qnh = stationPressureFromAltimeterHpa(hpa, metres) ?? NaN;
      const qff = stationPressureFromSeaLevelHpa(hpa, metres, celsius) ?? NaN;
      expect(stationPressureFromAltitudeHpa(metres + 10)).toBeLessThan(isa);
      expect(stationPressureFromAltimeterHpa(hpa, metres + 10)).toBeLessThan(qnh);
      expect(stationPressureFromAltimeterHpa(hpa + 1, metres)).toBeGreaterThan(qnh);
      expect(stationPressureFromSeaLevelHpa(hpa, metres + 10, celsius)).toBeLessThan(qff);
      expect(stationPressureFromSeaLevelHpa(hpa + 1, metres, celsius)).toBeGreaterThan(qff);
      if (metres > 1) expect(stationPressureFromSeaLevelHpa(hpa, metres, celsius + 1)).toBeGreaterThan(qff);
    }),
  );
});

test('whatever comes in, the answer is a pressure or not known, never NaN', () => {
  fc.assert(
    fc.property(fc.double(), fc.double(), fc.double(), (metres, hpa, celsius) => {
      for (const found of [
        stationPressureFromAltitudeHpa(metres),
        stationPressureFromAltimeterHpa(hpa, 300),
        stationPressureFromAltimeterHpa(1013, metres),
        stationPressureFromSeaLevelHpa(1013, metres, celsius),
        stationPressureFromSeaLevelHpa(hpa, 300, celsius),
      ])
        expect(found === null || found > 0).toBe(true);
    }),
  );
});

test('outside the declared range nothing is known', () => {
  for (const metres of [-501, 5001, NaN, Infinity]) {
    expect(stationPressureFromAltitudeHpa(metres)).toBeNull();
    expect(stationPressureFromAltimeterHpa(1013, metres)).toBeNull();
    expect(stationPressureFromSeaLevelHpa(1013, metres, 0)).toBeNull();
  }
  for (const hpa of [29.92, 849, 1101, NaN]) {
    expect(stationPressureFromAltimeterHpa(hpa, 300)).toBeNull();
    expect(stationPressureFromSeaLevelHpa(hpa, 300, 0)).toBeNull();
  }
  for (const celsius of [-61, 61, NaN]) expect(stationPressureFromSeaLevelHpa(1013, 300, celsius)).toBeNull();
});
