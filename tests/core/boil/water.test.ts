// Checks the water point from altitude, the three kinds of pressure and boiling checks, and what a check says of its probe.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Mark } from '../../../src/core/boil/entries.ts';
import {
  checkEvidence,
  correctionC,
  potEvidence,
  pressureEvidence,
  priorsOf,
  type Water,
  waterFrom,
} from '../../../src/core/boil/water.ts';
import { type Evidence, probeName, WATER } from '../../../src/core/pan/baseline.ts';
import { sigmaOf } from '../../../src/core/pan/joint-normal.ts';
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';
import { foldAll, lines, mark, onePot, readingAt, tarnHollow } from './tarn-hollow.ts';

const HOUR_MS = 3_600_000;

const at = (t: number, what: Mark): { at: number; mark: Mark } => ({ at: t, mark: what });
const station = (hpa: number): Mark => ({ kind: 'pressure', hpa });
const check = (celsius: number): Mark => ({ kind: 'water-check', probe: 'A/1', celsius });

/** The water point at t (ms) from what was noted; `altitude` null where the site does not say it. */
function waterAt(marks: { at: number; mark: Mark }[], altitude: number | null, t: number): Water {
  const site = altitude === null ? {} : { altitude_m: altitude };
  const evidence = marks.flatMap((noted): Evidence[] => {
    if (noted.mark.kind === 'water-check')
      return [checkEvidence(noted.mark.probe ?? null, noted.mark.celsius, noted.at, false)];
    const one = noted.mark.kind === 'pressure' ? pressureEvidence(noted.mark, noted.at, altitude) : null;
    return one === null ? [] : [one];
  });
  return waterFrom(evidence, priorsOf(tarnHollow({ site })), t).water;
}

/** How sure a rise read with a probe is, °C. */
const riseSigmaC = (water: Water, probe: string | null): number =>
  sigmaOf(water.joint, [
    [WATER, 1],
    [probeName(probe), 1],
  ]);

// Altitude and pressure: ISO 2533 as ICAO Doc 7488 prints it (from memory); water by IF97 equation 31: physics.md sections 1 and 2.
test.each([
  [0, 1013.25, 99.974],
  [500, 954.61, 98.312],
  [1000, 898.75, 96.649],
  [1500, 845.56, 94.983],
  [2000, 794.95, 93.315],
])('in the standard atmosphere at %i m the pressure is %d hPa and water boils at %d °C', (altitude, hpa, celsius) => {
  const water = waterAt([], altitude, 0);
  expect(water.celsius).toBeCloseTo(celsius, 3);
  expect(Math.abs(water.pressureHpa! - hpa)).toBeLessThan(0.006);
  expect(water.origin.kind).toBe('altitude');
});

test('with neither altitude nor pressure nor check nothing is known', () => {
  expect(waterAt([], null, 0)).toMatchObject({ celsius: null, pressureHpa: null, origin: { kind: 'nothing' } });
});

test("a barometer's reading here needs no altitude: 900 hPa boils at 96.687 °C (physics.md section 1)", () => {
  const water = waterAt([at(0, station(900))], null, 0);
  expect(water.celsius).toBeCloseTo(96.687, 3);
  expect(water.origin).toEqual({ kind: 'pressure', at: 0 });
});

test('QNH 1020 hPa at 1000 m is 904.871 hPa here (physics.md section 2)', () => {
  const mark: Mark = { kind: 'pressure', hpa: 1020, at: 'altimeter' };
  const alone = saturationTemperatureCelsius(904.871)!;
  expect(Math.abs(waterAt([at(0, mark)], 1000, 0).celsius! - alone)).toBeLessThan(0.005);
});

test('QFF and QNH of the same number differ by 3.3 hPa on a 0 °C day at 1000 m (physics.md section 2)', () => {
  const of = (kind: 'altimeter' | 'sea-level'): number =>
    waterAt([at(0, { kind: 'pressure', hpa: 1013.25, at: kind, outdoor_celsius: 0 })], 1000, 0).pressureHpa!;
  expect(Math.abs(of('altimeter') - of('sea-level') - 3.3)).toBeLessThan(0.1);
});

test('QNH and QFF without an altitude say nothing', () => {
  for (const kind of ['altimeter', 'sea-level'] as const) {
    expect(waterAt([at(0, { kind: 'pressure', hpa: 1013, at: kind })], null, 0).celsius).toBeNull();
  }
});

test('a typed pressure makes the water point surer than the altitude, and age makes it less sure', () => {
  const altitude = waterAt([], 300, 0).sigmaC;
  const fresh = waterAt([at(0, station(977.7))], 300, 0).sigmaC;
  const old = waterAt([at(0, station(977.7))], 300, 6 * HOUR_MS).sigmaC;
  expect(fresh).toBeLessThan(0.05);
  expect(old).toBeGreaterThan(2 * fresh);
  // After six hours of a possible front the old reading is about as good as the altitude alone.
  expect(old).toBeLessThan(1.1 * altitude);
});

test('a check with a pressure beside it is nearly all error of the probe', () => {
  const water = waterAt([at(0, station(1013.25)), at(0, check(98.97))], null, 0);
  expect(Math.abs(water.celsius! - 99.974)).toBeLessThan(0.01);
  expect(Math.abs(correctionC(water, 'A/1') - 1)).toBeLessThan(0.03);
});

test('a check without anything else is nearly all water point', () => {
  const water = waterAt([at(0, check(98.97))], null, 0);
  expect(Math.abs(water.celsius! - 98.97)).toBeLessThan(0.05);
  expect(Math.abs(98.97 + correctionC(water, 'A/1') - water.celsius!)).toBeLessThan(0.001);
});

test('whatever is shared out, the checked probe reads no rise in boiling water', () => {
  const offC = fc.double({ min: -2.4, max: 2.4, noNaN: true });
  fc.assert(
    fc.property(offC, fc.integer({ min: 0, max: 500 }), fc.boolean(), (off, altitude, typed) => {
      const pressure = typed ? [at(0, station(980))] : [];
      const read = waterAt(pressure, altitude, 0).celsius! + off;
      const water = waterAt([...pressure, at(0, check(read))], altitude, 0);
      const rise = read + correctionC(water, 'A/1') - water.celsius!;
      // What is left is the error of the check itself: superheat, depth, resolution.
      expect(Math.abs(rise)).toBeLessThan(0.05 * Math.abs(off) + 0.001);
    }),
  );
});

test('a checked probe tells its rise better than an unchecked one', () => {
  const water = waterAt([at(0, check(99.5))], 0, 0);
  expect(riseSigmaC(water, 'A/1')).toBeLessThan(0.1);
  expect(riseSigmaC(water, 'A/2')).toBeGreaterThan(0.5);
  expect(riseSigmaC(water, null)).toBeGreaterThan(0.5);
  expect(riseSigmaC(waterAt([at(0, check(99.5))], 0, 6 * HOUR_MS), 'A/1')).toBeGreaterThan(0.2);
});

/** A front: 1000 hPa at the start, 985 after six hours; the probe stays at one temperature. */
function riseBeforeAndAfterTheFront(others: Mark[]): [number, number] {
  const front = 6 * HOUR_MS;
  const marks = [...others.map((other) => mark(0, other)), mark(0, station(1000)), mark(front, station(985))];
  const heard = [...lines(0, 60_000, { T1: () => 101 }), ...lines(front, front + 60_000, { T1: () => 101 })];
  const entries = [...marks, ...heard].sort((a, b) => a.t - b.t);
  const before = foldAll(
    onePot(),
    entries.filter((entry) => entry.t < 60_000),
    60_000,
  ).state;
  const after = foldAll(onePot(), entries, front + 60_000).state;
  return [readingAt(before, 'p1', 60_000).rise_c!, readingAt(after, 'p1', front + 60_000).rise_c!];
}

test.each([
  ['a probe that was not checked', []],
  ['a probe that was checked before the front', [check(99.6)]],
] as [string, Mark[]][])('a fall of 15 hPa by marks moves the rise by 0.42 °C: %s', (_, others) => {
  const fall = saturationTemperatureCelsius(1000)! - saturationTemperatureCelsius(985)!;
  const [before, after] = riseBeforeAndAfterTheFront(others);
  expect(fall).toBeCloseTo(0.42, 2);
  expect(Math.abs(after - before - fall)).toBeLessThan(0.03);
});

test('a withdrawn pressure no longer moves the water point', () => {
  const header = onePot();
  const entries = [
    mark(0, { kind: 'pressure', hpa: 985, id: 'typo' }),
    mark(5000, { kind: 'withdraw', id: 'typo' }),
    ...lines(6000, 20_000, { T1: () => 101 }),
  ];
  expect(readingAt(foldAll(header, entries, 20_000).state, 'p1', 20_000).water_c).toBeCloseTo(99.974, 3);
});

test('a reference pot of boiling water is the water point, and a pot that only warms up is not', () => {
  const header = {
    ...onePot(),
    probes: [
      { id: 'A/1', port: 'A', channel: 'T1' },
      { id: 'A/2', port: 'A', channel: 'T2' },
    ],
    pans: [
      { id: 'p1', probe: 'A/1' },
      { id: 'pot', role: 'reference' as const, probe: 'A/2' },
    ],
  };
  const waterWith = (pot: (t: number) => number): number => {
    const { state } = foldAll(header, lines(0, 600_000, { T1: () => 101, T2: pot }), 600_000);
    return readingAt(state, 'p1', 600_000).water_c!;
  };
  const altitude = saturationTemperatureCelsius(1013.25)!;
  expect(waterWith(() => 99.2)).toBeLessThan(altitude - 0.3);
  expect(waterWith((t) => 90 + (9 * t) / 600_000)).toBeCloseTo(altitude, 3);
});

test('a check that is far from where water boils is left out', () => {
  const evidence = [checkEvidence('A/1', 94, 0, false)];
  const { water, left } = waterFrom(evidence, priorsOf(tarnHollow({ site: { altitude_m: 0 } })), 0);
  expect([...left]).toEqual(evidence);
  expect(water.celsius).toBeCloseTo(99.974, 3);
});

test('a pressure typed anew a minute later counts for more than the first one', () => {
  const water = waterAt([at(0, station(1013)), at(60_000, station(980))], 0, 60_000);
  expect(Math.abs(water.pressureHpa! - 980)).toBeLessThan(2);
});

test('two pressures apart tell how fast a front comes, and it is expected to go on for a while', () => {
  const marks = [at(0, station(1000)), at(3 * HOUR_MS, station(995))];
  const later = waterAt(marks, 0, 5 * HOUR_MS).pressureHpa!;
  expect(later).toBeLessThan(994);
  expect(later).toBeGreaterThan(995 - (5 / 3) * 2);
});

test('evidence counts the same in whatever order it came', () => {
  const evidence = [checkEvidence('A/1', 99.2, 5000, false), pressureEvidence({ kind: 'pressure', hpa: 1000 }, 0, 0)!];
  const priors = priorsOf(tarnHollow());
  expect(waterFrom(evidence.toReversed(), priors, HOUR_MS)).toEqual(waterFrom(evidence, priors, HOUR_MS));
});

test('a pressure that no weather makes at this altitude is asked about', () => {
  const header = { ...onePot(), site: { altitude_m: 640 } };
  const sentences = (what: Mark): string[] =>
    foldAll(header, [mark(0, what)], 1000).state.notices.map((one) => one.sentence);
  expect(sentences(station(1013))).toEqual([expect.stringContaining('sea-level figure')]);
  expect(foldAll(header, [mark(0, station(1013))], 1000).state.water.origin.kind).toBe('altitude');
  expect(sentences(station(935))).toEqual([]);
  expect(sentences({ kind: 'pressure', hpa: 1013, at: 'altimeter' })).toEqual([]);
});

test('a doubted pressure counts when it is typed again, and a double press is not again', () => {
  const typed = (...times: number[]): number => {
    const evidence = times.map((t) => pressureEvidence({ kind: 'pressure', hpa: 1013 }, t, 640)!);
    return waterFrom(evidence, priorsOf(tarnHollow({ site: { altitude_m: 640 } })), 120_000).water.pressureHpa!;
  };
  expect(typed(0)).toBeLessThan(945);
  expect(typed(0, 1000)).toBeLessThan(945);
  expect(Math.abs(typed(0, 60_000) - 1013)).toBeLessThan(1);
});

test('a reference pot whose own probe is off does not take the water point from a barometer', () => {
  const header = tarnHollow({
    pans: [
      { id: 'p1', probe: 'A/1' },
      { id: 'pot', role: 'reference', probe: 'A/2' },
    ],
  });
  const evidence = [pressureEvidence({ kind: 'pressure', hpa: 1000 }, 0, 0)!, potEvidence('A/2', 101.1, 60_000)];
  const { water } = waterFrom(evidence, priorsOf(header), 120_000);
  expect(Math.abs(water.pressureHpa! - 1000)).toBeLessThan(2);
});

test('a pressure that jumps from the one before counts, and is asked about', () => {
  const { state } = foldAll(onePot(), [mark(0, station(1010)), mark(60_000, station(995))], 61_000);
  expect(Math.abs(state.water.pressureHpa! - 995)).toBeLessThan(2);
  expect(state.notices.map(({ sentence }) => sentence)).toEqual([expect.stringContaining('than weather goes')]);
});

test("an airfield's setting without the altitude says what is missing", () => {
  const header = { ...onePot(), site: {} };
  const { state } = foldAll(header, [mark(0, { kind: 'pressure', hpa: 1013, at: 'altimeter' })], 1000);
  expect(state.notices.map(({ sentence }) => sentence)).toEqual([expect.stringContaining("site's altitude is given")]);
});
