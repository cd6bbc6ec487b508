// Evaporation, boiling, the speed of the end and burning, against IAPWS figures and the trade's numbers.
import { expect, test } from 'vitest';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import { burnerWatts, heatForOneSecond, type HeatedLiquid, type Hearth } from '../../../src/core/simulation/heating.ts';
import { litresAtTwenty, liquidOf, strengthBrix, type Liquid } from '../../../src/core/simulation/liquid.ts';
import { startAir, type Air } from '../../../src/core/simulation/weather.ts';

const stillAir = (hpa: number): Air =>
  startAir({ celsius: 5, windMetresPerSecond: 0, windSpread: 0, pressure: [{ t: 0, hpa }] });

const hearth = (given: Partial<Hearth> = {}): Hearth => ({
  areaM2: 0.05,
  powerWatts: 4000,
  efficiency: 1,
  lossWattsPerKelvin: 0,
  shares: sugarShares('maple'),
  ...given,
});

const cold = (liquid: Liquid): HeatedLiquid => ({ liquid, boiling: false, burned: false, evaporatedKg: 0, rise: null });

function heatUntil(start: HeatedLiquid, fire: Hearth, watts: number, air: Air, done: (now: HeatedLiquid) => boolean) {
  let now = start;
  let seconds = 0;
  let evaporatedKg = 0;
  while (!done(now) && seconds < 200_000) {
    now = heatForOneSecond(now, fire, watts, air);
    evaporatedKg += now.evaporatedKg;
    seconds += 1;
  }
  return { now, seconds, evaporatedKg };
}

test('water at 100 °C: 4 kW turn 6.382 kg an hour to steam (h_fg 2256.473 kJ/kg, latent_heat_if97.csv)', () => {
  const air = stillAir(1014.17978); // 101.417978 kPa boils at 100 °C in that table
  const start = heatUntil(cold(liquidOf(20, 0, 99.99)), hearth(), 4000, air, (now) => now.boiling).now;
  let seconds = 0;
  const { evaporatedKg } = heatUntil(start, hearth(), 4000, air, () => ++seconds > 3600);
  expect(evaporatedKg).toBeCloseTo((4 * 3600) / 2256.473, 2);
});

test('losses take their share: 20 W/K over 95 °C costs 1.9 kW of steam', () => {
  const air = stillAir(1014.17978);
  const fire = hearth({ lossWattsPerKelvin: 20 });
  const start = heatUntil(cold(liquidOf(20, 0, 99.99)), fire, 4000, air, (now) => now.boiling).now;
  let seconds = 0;
  const { evaporatedKg } = heatUntil(start, fire, 4000, air, () => ++seconds > 3600);
  expect(evaporatedKg).toBeCloseTo(((4 - 1.9) * 3600) / 2256.473, 2);
});

test('maple at 66 °Bx boils at 104.02 °C, birch at 106.00 °C under 1013.25 hPa (bpe_mixtures.csv)', () => {
  for (const [sap, celsius] of [
    ['maple', 104.021],
    ['birch', 106.0],
  ] as const) {
    const fire = hearth({ shares: sugarShares(sap) });
    const { now } = heatUntil(
      cold(liquidOf(5, 62, 98)),
      fire,
      4000,
      stillAir(1013.25),
      ({ liquid }) => strengthBrix(liquid) >= 66,
    );
    expect(now.liquid.celsius).toBeCloseTo(celsius, 1);
  }
});

test('60 to 66 °Bx at 3 L/h takes 2.7 min per litre of syrup (trade.md "How fast the end is" [calc])', () => {
  // One litre of 66 °Bx holds 1.32266 x 0.66 kg of sugar; 3 L of water at 20 °C are 2.9946 kg.
  const sugarKg = 1.32266 * 0.66;
  const thin: Liquid = { sugarKg, waterKg: (sugarKg * 40) / 60, celsius: 102.9 };
  const watts = (2.9946 / 3600) * 2249e3; // h_fg near 103 °C: 2248.6 kJ/kg
  const { seconds, now } = heatUntil(
    cold(thin),
    hearth(),
    watts,
    stillAir(1013.25),
    ({ liquid }) => strengthBrix(liquid) >= 66,
  );
  expect(litresAtTwenty(now.liquid)).toBeCloseTo(1, 2);
  expect(seconds / 60).toBeGreaterThan(2.6);
  expect(seconds / 60).toBeLessThan(2.85);
});

test('2 % sap boiled to 66.0 °Bx leaves 1 in 43.39 (exact balance, physics.md 8); to 65.5 about the rule of 86', () => {
  const fire = hearth({ areaM2: 0.01 }); // narrow, so that it does not burn for want of depth
  const start = cold(liquidOf(43.39, 2, 95));
  const atOldStandard = heatUntil(
    start,
    fire,
    20_000,
    stillAir(1013.25),
    ({ liquid }) => strengthBrix(liquid) >= 65.5,
  ).now;
  expect(43.39 / litresAtTwenty(atOldStandard.liquid)).toBeCloseTo(42.96, 0);
  expect(Math.abs(43.39 / litresAtTwenty(atOldStandard.liquid) - 86 / 2)).toBeLessThan(0.3);
  const { now } = heatUntil(atOldStandard, fire, 2000, stillAir(1013.25), ({ liquid }) => strengthBrix(liquid) >= 66);
  expect(litresAtTwenty(now.liquid)).toBeCloseTo(1, 2);
});

test('sugar is conserved to the last digit while water leaves', () => {
  const start = cold(liquidOf(10, 20, 60));
  const { now, evaporatedKg } = heatUntil(
    start,
    hearth(),
    4000,
    stillAir(940),
    ({ liquid }) => strengthBrix(liquid) >= 70,
  );
  expect(now.liquid.sugarKg).toBe(start.liquid.sugarKg);
  expect(now.liquid.waterKg + evaporatedKg).toBeCloseTo(start.liquid.waterKg, 9);
});

test('falling pressure lets a pan boil cooler: 14 hPa are 0.4 °C (0.0285 °C per hPa near 940 hPa)', () => {
  const boilAt = (hpa: number): number =>
    heatUntil(cold(liquidOf(5, 10, 90)), hearth(), 4000, stillAir(hpa), ({ boiling }) => boiling).now.liquid.celsius;
  expect(boilAt(945) - boilAt(931)).toBeCloseTo(14 * 0.0294, 1);
});

test('below a boil water leaves only from the surface, and more when hotter', () => {
  const idle = (celsius: number): number =>
    heatForOneSecond(cold(liquidOf(5, 40, celsius)), hearth({ areaM2: 0.175 }), 0, stillAir(940)).evaporatedKg;
  expect(idle(90) * 3600).toBeGreaterThan(1);
  expect(idle(90) * 3600).toBeLessThan(2.5);
  expect(idle(60)).toBeLessThan(idle(90) / 3);
});

test('over live heat it burns past 78 °Bx or under 4 mm, and then the temperature runs away', () => {
  for (const liquid of [liquidOf(2, 79, 108), liquidOf(0.15, 40, 99)]) {
    const { now } = heatUntil(cold(liquid), hearth(), 2000, stillAir(940), ({ liquid: { celsius } }) => celsius > 140);
    expect(now.burned).toBe(true);
    expect(heatForOneSecond(cold(liquid), hearth(), 0, stillAir(940)).burned).toBe(false);
  }
  const thin = heatUntil(
    cold(liquidOf(2, 50, 95)),
    hearth(),
    2000,
    stillAir(940),
    ({ liquid }) => strengthBrix(liquid) > 77,
  );
  expect(thin.now.burned).toBe(false);
  expect(thin.now.liquid.celsius).toBeLessThan(110);
});

test('wind takes heat from the flame, and a level of 0 gives none', () => {
  const air = stillAir(940);
  expect(burnerWatts(hearth({ powerWatts: 10_000, efficiency: 0.3 }), 1, 1, air)).toBe(3000);
  expect(burnerWatts(hearth(), 1, 1, { ...air, windMetresPerSecond: 3 })).toBeLessThan(4000);
  expect(burnerWatts(hearth(), 0, 1, air)).toBe(0);
});
