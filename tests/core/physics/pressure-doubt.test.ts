// Checks that a pressure that cannot be is doubted with what it looks like, and that no weather ever recorded is.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pressureDoubt, type TypedPressure } from '../../../src/core/physics/pressure-doubt.ts';
import {
  stationPressureFromAltimeterHpa,
  stationPressureFromSeaLevelHpa,
} from '../../../src/core/physics/station-pressure.ts';

const typed = (at: TypedPressure['at'], hpa: number, altitudeM: number | null, outdoorC: number | null = null) =>
  pressureDoubt({ at, hpa, altitudeM, outdoorC })?.replaceAll('\u00a0', ' ') ?? null;

test('1013 hPa on a barometer at 640 m looks like a weather page: what it would be there stands in the sentence', () => {
  expect(typed('station', 1013, 640)).toBe(
    "A barometer at 640 m shows about 939 hPa, and 1013 hPa never: this looks like a weather page's sea-level figure or an airfield's setting; choose which of them it is, or correct the altitude.",
  );
});

test('a barometer that shows far too little names the height where that is usual', () => {
  expect(typed('station', 800, 300)).toMatch(/shows about 978 hPa, and 800 hPa never: this is usual at about 1950 m/u);
  expect(typed('station', 320, 300)).toMatch(/look at the number and its unit again\.$/u);
  expect(typed('station', 1150, 300)).toMatch(/look at the number and its unit again\.$/u);
});

test("a sea-level figure that is the place's own pressure is told apart", () => {
  expect(typed('altimeter', 899, 1000)).toMatch(
    /^An airfield's setting lies between 920 hPa and 1085 hPa everywhere, and 899 hPa does not: this looks like what a barometer at your own 1000 m shows/u,
  );
  expect(typed('sea-level', 700, 300)).toMatch(
    /^A weather page's sea-level figure .* look at the number and its unit/u,
  );
  expect(typed('sea-level', 1090, null)).toMatch(/choose the barometer/u);
});

test('where the altitude is not known only what is possible nowhere is doubted', () => {
  expect(typed('station', 620, null)).toBeNull();
  expect(typed('station', 1013, null)).toBeNull();
  expect(typed('station', 101.3, null)).toMatch(/^A barometer cannot show 101\.3 hPa/u);
});

test('a temperature that is never outdoors is doubted where it counts', () => {
  expect(typed('sea-level', 1013, 300, 75)).toBe('It is never 75 °C outdoors: look at the number and its unit again.');
  expect(typed('sea-level', 1013, 300, 40)).toBeNull();
  expect(typed('altimeter', 1013, 300, 75)).toBeNull();
});

/** Pressure at sea level, altitude and outdoor temperature of record weather on land; all from memory. Alaska was 2 °C colder than the equation goes. */
const records: [name: string, seaLevelHpa: number, altitudeM: number, outdoorC: number][] = [
  ['Scotland 1884', 925.6, 46, 3],
  ['Minnesota 2010', 955.2, 410, 10],
  ['Siberia 1968', 1083.8, 261, -45],
  ['Alaska 1989', 1078.6, 523, -60],
  ['Quebec, a cold high', 1055, 400, -30],
];

test('record highs and lows on land (from memory) are believed, as a barometer shows them and as a weather page does', () => {
  for (const [name, seaLevelHpa, altitudeM, outdoorC] of records) {
    const station = stationPressureFromSeaLevelHpa(seaLevelHpa, altitudeM, outdoorC) ?? NaN;
    expect(typed('sea-level', seaLevelHpa, altitudeM, outdoorC), name).toBeNull();
    expect(typed('station', station, altitudeM) ?? 'believed', name).not.toMatch(/never/u);
  }
});

test('a sea-level figure typed for a barometer is asked about from about 230 m up, for that slip is commoner than such a high', () => {
  for (const metres of [240, 350, 450])
    expect(typed('station', 1013, metres), `${metres} m`).toMatch(
      /1013 hPa hardly ever: this looks like a weather page/u,
    );
  expect(typed('station', 1013, 150)).toBeNull();
});

test('weather that is no rare high is never doubted, at any altitude to 3000 m', () => {
  const altitude = fc.double({ min: -100, max: 3000, noNaN: true });
  fc.assert(
    fc.property(
      altitude,
      fc.double({ min: 960, max: 1036, noNaN: true }),
      fc.double({ min: -35, max: 30, noNaN: true }),
      (metres, hpa, celsius) => {
        expect(typed('altimeter', hpa, metres)).toBeNull();
        expect(typed('sea-level', hpa, metres, celsius)).toBeNull();
        expect(typed('station', stationPressureFromAltimeterHpa(hpa, metres) ?? NaN, metres)).toBeNull();
        expect(typed('station', stationPressureFromSeaLevelHpa(hpa, metres, celsius) ?? NaN, metres)).toBeNull();
      },
    ),
  );
});

test('what is no number is doubted in words', () => {
  for (const at of ['station', 'altimeter', 'sea-level'] as const)
    for (const hpa of [NaN, Infinity, -1]) expect(typed(at, hpa, 300)).toMatch(/its unit again/u);
  expect(typed('station', 980, NaN)).toBeNull();
});
