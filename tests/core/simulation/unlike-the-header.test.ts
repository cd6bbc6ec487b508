// Where the simulated truth is unlike what the header says, and what hands do wrong: mix, power, bottom, fire, slips of the pen.
import { expect, test } from 'vitest';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { liquidOf, massKg, strengthBrix } from '../../../src/core/simulation/liquid.ts';
import { randomStream } from '../../../src/core/simulation/random.ts';
import type { Deed, ScenarioPan } from '../../../src/core/simulation/scenario.ts';
import { panNamed, startSimulation } from '../../../src/core/simulation/state.ts';
import { moveAir, moveFire, startAir, startFire } from '../../../src/core/simulation/weather.ts';
import { marksOf, onePot, wholeBoil } from './one-pot.ts';

const everything: Partial<ScenarioPan> = {
  litres: 8,
  brix: 40,
  shares: { sucrose: 0.1, glucose: 0.4, fructose: 0.5, others: 0.06 },
  powerWatts: 6000,
  areaM2: 0.1,
  fire: { flutter: { spread: 0.1, memorySeconds: 60 }, swing: { share: 0.33, periodSeconds: [480, 900] } },
  foam: { fromBrix: 45, offsetCelsius: -0.3, noiseCelsius: 0.3, lastsSeconds: 60, restsSeconds: 60 },
};

test('sugar and water are kept to the last digit with every flaw at once', () => {
  const probe = { secondLagSeconds: 6, superheat: { mostCelsius: 0.3, memorySeconds: 100 }, spikesPerHour: 70 };
  const { state } = wholeBoil(onePot({ pan: everything, probe, endsAt: 5_400_000 }));
  const start = liquidOf(8, 40, 95);
  const { liquid, evaporatedKg } = panNamed(state, 'p1');
  expect(evaporatedKg).toBeGreaterThan(1);
  expect(liquid.sugarKg).toBe(start.sugarKg);
  expect(liquid.waterKg + evaporatedKg).toBeCloseTo(start.waterKg, 9);
});

test('the true mix decides at what temperature it boils, whatever the header says', () => {
  const shares = { sucrose: 0.1, glucose: 0.4, fructose: 0.5, others: 0.06 };
  const { state } = wholeBoil(onePot({ pan: { ...everything, shares }, endsAt: 1_800_000 }));
  const { liquid, boiling } = panNamed(state, 'p1');
  const rise = riseFromStrength(strengthBrix(liquid), shares, state.air.pressureHpa) ?? NaN;
  expect(boiling).toBe(true);
  expect(liquid.celsius - state.air.waterCelsius).toBeCloseTo(rise, 1);
});

test('the true power and bottom stand in place of the header’s', () => {
  const { hearth } = panNamed(startSimulation(onePot({ pan: { powerWatts: 5000, areaM2: 0.2 } })), 'p1');
  expect(hearth).toMatchObject({ powerWatts: 5000, areaM2: 0.2 });
  const noVessel = onePot({ pan: { areaM2: 0.2 }, setup: { vessel: undefined } });
  expect(panNamed(startSimulation(noVessel), 'p1').hearth.areaM2).toBe(0.2);
  expect(() => startSimulation(onePot({ setup: { vessel: undefined } }))).toThrow('vessel');
});

test('a finish told as a rise is the strength at which the true mix rises so', () => {
  const told = onePot({
    setup: { finish: { rise_c: 4 } },
    pan: { shares: { sucrose: 0, glucose: 0.5, fructose: 0.5 } },
  });
  const maple = onePot({ setup: { finish: { rise_c: 4 } } });
  expect(panNamed(startSimulation(maple), 'p1').finishBrix).toBeGreaterThan(64);
  expect(panNamed(startSimulation(told), 'p1').finishBrix).toBeLessThan(60);
});

test('a fire that swings does so by its share, with periods between the two', () => {
  const fire = startFire();
  const random = randomStream(8, 'weather');
  const plan = {
    flutter: { spread: 0, memorySeconds: 60 },
    swing: { share: 0.33, periodSeconds: [480, 900] as [number, number] },
  };
  const strengths = Array.from({ length: 20_000 }, (_, second) => {
    moveFire(fire, 'propane', second, random, plan);
    return fire.strength;
  });
  expect(Math.max(...strengths)).toBeCloseTo(1.33, 2);
  expect(Math.min(...strengths)).toBeCloseTo(0.67, 2);
  const ups = strengths.flatMap((now, index) => ((strengths[index - 1] ?? now) < 1 && now >= 1 ? [index] : []));
  const periods = ups.slice(1).map((up, index) => up - (ups[index] ?? 0));
  expect(periods.length).toBeGreaterThan(20);
  expect(Math.min(...periods)).toBeGreaterThan(475);
  expect(Math.max(...periods)).toBeLessThan(905);
  expect(Math.max(...periods) - Math.min(...periods)).toBeGreaterThan(150);
});

test('a gust lasts as long as its plan says', () => {
  const alike = (gustSeconds: number): number => {
    const plan = { celsius: 5, windMetresPerSecond: 20, windSpread: 1, gustSeconds, pressure: [{ t: 0, hpa: 990 }] };
    const air = startAir(plan);
    const random = randomStream(9, 'weather');
    const winds = Array.from({ length: 30_000 }, (_, second) => {
      moveAir(air, plan, second * 1000, random);
      return air.windDrift;
    });
    const together = winds.slice(0, -100).reduce((sum, wind, index) => sum + wind * (winds[index + 100] ?? 0), 0);
    return together / winds.reduce((sum, wind) => sum + wind * wind, 0);
  };
  expect(alike(30)).toBeLessThan(0.2);
  expect(alike(600)).toBeGreaterThan(0.7);
});

const pour = (more: Partial<Deed>): Deed => ({
  when: { sight: 'depth-below', pan: 'p1', value: 500, times: 60, restSeconds: 30 },
  acts: [{ act: 'pour', pan: 'p1', litres: 0.1, brix: 2, celsius: 5 }],
  ...more,
});

const typed = (more: Partial<Deed>) => marksOf(wholeBoil(onePot({ deeds: [pour(more)], endsAt: 1_800_000 })).entries);

test('litres are typed wrong by the factor about as often as asked; what is poured stays what it is', () => {
  const litres = typed({ misread: { share: 0.3, factor: 2 } }).map((mark) => ('litres' in mark ? mark.litres : NaN));
  const wrong = litres.filter((value) => value === 0.2).length;
  expect(wrong + litres.filter((value) => value === 0.1).length).toBe(litres.length);
  expect(wrong / litres.length).toBeGreaterThan(0.1);
  expect(wrong / litres.length).toBeLessThan(0.5);
  const poured = (deed: Partial<Deed>): number =>
    massKg(panNamed(wholeBoil(onePot({ deeds: [pour(deed)], endsAt: 600_000 })).state, 'p1').liquid);
  expect(poured({ misread: { share: 1, factor: 2 } })).toBe(poured({}));
});

test('what is typed twice comes again within a minute, with the same time and an id of its own', () => {
  const marks = typed({ doubled: 1 }).filter(({ t }) => t < 1_700_000);
  const first = marks.filter(({ happened }) => happened === undefined);
  const again = marks.filter(({ happened }) => happened !== undefined);
  expect(first.length).toBeGreaterThan(40);
  expect(again.length).toBeGreaterThan(40);
  expect(new Set(marks.map(({ id }) => id)).size).toBe(marks.length);
  for (const { t, happened } of again) {
    expect(first.map((one) => one.t)).toContain(happened);
    expect(t - (happened ?? 0)).toBeGreaterThanOrEqual(10_000);
    expect(t - (happened ?? 0)).toBeLessThanOrEqual(60_000);
  }
});

test('a depth is misread by the factor, and a check is off by what it is told', () => {
  const deeds: Deed[] = [
    { when: { at: 60_000 }, acts: [{ act: 'measure-depth', pan: 'p1' }] },
    { when: { at: 60_000 }, acts: [{ act: 'measure-depth', pan: 'p1' }], misread: { share: 1, factor: 0.5 } },
    { when: { at: 60_000 }, acts: [{ act: 'check-water', probe: 'A/1', errorCelsius: 0.1 }] },
    { when: { at: 60_000 }, acts: [{ act: 'read-by-hand', pan: 'p1' }] },
  ];
  const { entries, state } = wholeBoil(onePot({ deeds, probe: { biasCelsius: 1 }, endsAt: 61_000 }));
  const marks = marksOf(entries);
  const depths = marks.flatMap((mark) => (mark.kind === 'depth' ? [mark.mm] : []));
  expect(depths).toHaveLength(2);
  expect(Math.abs((depths[1] ?? 0) - (depths[0] ?? 0) / 2)).toBeLessThan(4);
  const check = marks.find((mark) => mark.kind === 'water-check');
  expect(check?.celsius).toBeCloseTo(state.air.waterCelsius + 1.1, 1);
  const hand = marks.find((mark) => mark.kind === 'reading');
  expect(Math.abs((hand?.celsius ?? NaN) - panNamed(state, 'p1').liquid.celsius)).toBeLessThan(2);
});
