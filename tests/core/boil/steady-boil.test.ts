// Checks what the fold says of pans under steady heat against the laws that they follow: strength from rise, and the time left.
import { expect, test } from 'vitest';
import type { Sap } from '../../../src/core/boil/entries.ts';
import { densityKgPerM3 } from '../../../src/core/physics/density.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import {
  boilingAt,
  foldAll,
  lines,
  mark,
  onePot,
  readingAt,
  steadyBrix,
  steadyCelsius,
  type SteadyPan,
  steadyWhen,
} from './tarn-hollow.ts';

const MINUTE_MS = 60_000;

const cases = (['maple', 'birch'] as Sap[]).flatMap((sap) =>
  [800, 900, 1013.25].flatMap((hpa) => [30, 40, 50, 60, 70].map((brix) => ({ sap, hpa, brix }))),
);

test.each(cases)('$sap of $brix °Bx at $hpa hPa is read back from its temperature', ({ sap, hpa, brix }) => {
  const celsius = boilingAt(brix, sap, hpa);
  const until = 3 * MINUTE_MS;
  const pressure = mark(0, { kind: 'pressure', hpa });
  const header = { ...onePot(sap, { brix: 79 }), site: {} };
  const { state } = foldAll(header, [pressure, ...lines(0, until, { T1: () => celsius })], until);
  const reading = readingAt(state, 'p1', until);
  expect(Math.abs(reading.brix! - brix)).toBeLessThan(0.3);
  expect(reading.brix_low).toBeLessThanOrEqual(brix);
  expect(reading.brix_high).toBeGreaterThanOrEqual(brix);
});

/** Sugar in a litre of 66 °Bx syrup at 20 °C, kg. */
const sugarPerLitre = (0.66 * densityKgPerM3(66, 20)!) / 1000;

/** A maple pan that will be so many litres of 66 °Bx syrup and loses so many litres of water an hour. */
function mapleLosing(litresPerHour: number, syrupLitres: number, fromBrix: number): SteadyPan {
  return { fromBrix, k: litresPerHour / 3600 / (syrupLitres * sugarPerLitre), start: 0, sap: 'maple' };
}

function foldSteady(pan: SteadyPan, until: number, litres?: number) {
  const stream = randomStream(1, 'boiling noise');
  const noisy = lines(0, until, { T1: (t) => steadyCelsius(pan, t) + 0.1 * nextNormal(stream) });
  const pour =
    litres === undefined ? [] : [mark(0, { kind: 'top-up', pan: 'p1', litres, brix: pan.fromBrix, celsius: 100 })];
  return foldAll(onePot('maple', { brix: 66 }), [...pour, ...noisy], until).state;
}

test('from 60 to 66 °Bx at 3 L/h takes 2.7 min a litre (trade.md, How fast the end is [calc]), and the forecast says so', () => {
  const syrupLitres = 8;
  const pan = mapleLosing(3, syrupLitres, 50);
  const litres = ((syrupLitres * sugarPerLitre) / 0.5 / densityKgPerM3(50, 20)!) * 1000;
  const at60 = Math.round(steadyWhen(pan, 60) / 1000) * 1000;
  const reading = readingAt(foldSteady(pan, at60, litres), 'p1', at60);
  const tradeSeconds = 2.7 * syrupLitres * 60;
  expect(Math.abs((steadyWhen(pan, 66) - at60) / 1000 / tradeSeconds - 1), 'the table itself').toBeLessThan(0.03);
  expect(Math.abs(reading.finish_in_s! / tradeSeconds - 1)).toBeLessThan(0.15);
  expect(reading.finish_low_s!).toBeLessThan(tradeSeconds);
  expect(reading.finish_high_s!).toBeGreaterThan(tradeSeconds);
  expect(Math.abs(reading.evaporation_l_per_h! / 3 - 1)).toBeLessThan(0.15);
  expect(Math.abs(reading.litres! / (litres - (3 * at60) / 3_600_000) - 1)).toBeLessThan(0.05);
});

/** What a straight line through the last ten minutes of temperature promises until the finish, s. */
function straightLineSeconds(pan: SteadyPan, t: number, finishCelsius: number): number {
  const seconds = Array.from({ length: 601 }, (_, index) => index - 600);
  const celsius = seconds.map((s) => steadyCelsius(pan, t + s * 1000));
  const mean = (list: number[]): number => list.reduce((sum, one) => sum + one, 0) / list.length;
  const meanS = mean(seconds);
  const meanC = mean(celsius);
  const slope =
    seconds.reduce((sum, s, index) => sum + (s - meanS) * (celsius[index]! - meanC), 0) /
    seconds.reduce((sum, s) => sum + (s - meanS) ** 2, 0);
  return (finishCelsius - steadyCelsius(pan, t)) / slope;
}

test.each([40, 45, 50])(
  'at %i °Bx a straight line through ten minutes of temperature promises three to six times the time left, the forecast does not',
  (brix) => {
    const pan = mapleLosing(3, 1.5, 25);
    const now = Math.round(steadyWhen(pan, brix) / 1000) * 1000;
    const left = (steadyWhen(pan, 66) - now) / 1000;
    const straight = straightLineSeconds(pan, now, boilingAt(66, 'maple'));
    expect(straight / left).toBeGreaterThan(3);
    expect(straight / left).toBeLessThan(6);
    const reading = readingAt(foldSteady(pan, now), 'p1', now);
    expect(Math.abs(reading.finish_in_s! / left - 1)).toBeLessThan(0.15);
    expect(reading.finish_low_s!).toBeLessThan(left);
    expect(reading.finish_high_s!).toBeGreaterThan(left);
  },
);

test('the strength that is said follows a pan under steady heat', () => {
  const pan = mapleLosing(3, 1.6, 30);
  const now = 20 * MINUTE_MS;
  const reading = readingAt(foldSteady(pan, now), 'p1', now);
  expect(Math.abs(reading.brix! - steadyBrix(pan, now))).toBeLessThan(2);
  expect(reading.brix_low!).toBeLessThan(steadyBrix(pan, now));
  expect(reading.brix_high!).toBeGreaterThan(steadyBrix(pan, now));
});
