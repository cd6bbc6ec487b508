// The paragraph behind a number: its range, its sources with their ages, and what is least sure, in the person's units.
import { expect, test } from 'vitest';
import { EXPLAINED } from '../../../src/core/boil/explanation.ts';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import type { Explanation, PanFacts, Settings } from '../../../src/screen/client/types.ts';
import { explainTitle, explainWords, surerWords } from '../../../src/screen/words/explain-words.ts';
import { american, metric, moment } from '../moment.ts';

const MINUTE = 60_000;

const facts: PanFacts = {
  temperatureC: 101.9,
  riseC: 3.9,
  brix: 56.2,
  litres: 3.1,
  depthMm: 27,
  leastDepthMm: 15,
  evaporationLPerH: 4.8,
  finishBrix: 67,
  finishRiseC: null,
  scorchBrix: 75,
  scorchInS: 1500,
  ceilingC: null,
  probe: 'A/1',
  heardAt: moment.t - 20_000,
  correctionC: -0.3,
  sapFrom: null,
  densityAlone: null,
  volume: { kind: 'top-up', at: moment.t - 12 * MINUTE },
};

const strength: Explanation = {
  what: 'strength',
  pan: 'p1',
  t: moment.t,
  value: 56.2,
  low: 55.3,
  high: 57.1,
  parts: [
    { kind: 'sugar-model', at: null, sigma: 0.5 },
    { kind: 'boiling-check', at: moment.t - 40 * MINUTE, sigma: 0.3, of: 'A/1' },
  ],
  surer: 'density',
  waterC: 98,
  waterFrom: { kind: 'boiling-check', at: moment.t - 40 * MINUTE },
  facts,
};

const words = (told: Explanation, settings: Settings = metric): string =>
  explainWords(told, { now: moment, settings, saps: sapKinds }).replaceAll('\u00a0', ' ');

test('a strength says its range, the rise behind it with its age, the sap, the water point and what is least sure', () => {
  expect(words(strength)).toBe(
    '56.2 °Bx, between 55.3 and 57.1 °Bx in eight of ten cases. ' +
      'From 3.9 °C over boiling water by the probe T1 on board A (20 s ago), with the usual sugars of maple. ' +
      'Water boils at 98.0 °C here, from the boiling check 40 min ago. ' +
      'Least sure: how far this very sap rises with its sugars (±0.6 °Bx).',
  );
  expect(explainTitle('strength', 'p1', moment.header)).toBe('Front pot: strength');
  expect(surerWords(strength)).toBe('What would make it surer: a density reading.');
  const asked = { ...strength, surer: 'water-check' as const };
  expect(surerWords(asked)).toMatch(/a check of this probe in boiling water/u);
  expect(surerWords({ ...asked, facts: { ...facts, probe: null } })).toMatch(/a check of your thermometer/u);
});

test('in other units the same is said, and differences of temperature are no temperatures', () => {
  const said = words(strength, { ...american, strength: 'sg' });
  expect(said).toMatch(/^1\.268 SG, between 1\.263 and 1\.273 SG in eight/u);
  expect(said).toContain('From 7.0 °F over boiling water');
  expect(said).toContain('Water boils at 208.4 °F here');
});

test('a sap that a density reading taught is said to be corrected by it', () => {
  const taught = { ...facts, sapFrom: { kind: 'density-reading' as const, at: moment.t - 10 * MINUTE } };
  expect(words({ ...strength, facts: taught })).toContain(
    'with the usual sugars of maple, corrected by the density reading 10 min ago.',
  );
});

test('the water point names its sources, the weightiest first, the altitude last, and never the weather', () => {
  const parts = [
    { kind: 'weather' as const, at: moment.t, sigma: 0.09 },
    { kind: 'altitude' as const, at: null, sigma: 0.05 },
    { kind: 'pressure' as const, at: moment.t - 20 * MINUTE, sigma: 0.02 },
    { kind: 'boiling-check' as const, at: moment.t - 40 * MINUTE, sigma: 0.01 },
  ];
  const water = {
    ...strength,
    what: 'water' as const,
    pan: null,
    facts: null,
    value: 98,
    low: 97.9,
    high: 98.1,
    parts,
  };
  expect(words(water)).toBe(
    'Water boils at 98.0 °C here, between 97.9 and 98.1 °C in eight of ten cases. ' +
      'From the pressure noted 20 min ago, and the boiling check 40 min ago, and the altitude. ' +
      'Least sure: what the weather has done since (±0.1 °C).',
  );
  expect(words({ ...water, parts: parts.slice(1, 2) })).toContain('From the altitude alone.');
});

test('a temperature says what was taken off and by what; one that nobody checked says so', () => {
  const told = { ...strength, what: 'temperature' as const, value: 101.9, low: 101.7, high: 102.1 };
  const check = { kind: 'boiling-check' as const, at: moment.t - 40 * MINUTE, sigma: 0.15 };
  expect(words({ ...told, parts: [check] })).toContain(
    'From the probe T1 on board A (20 s ago), with 0.3 °C taken off, by the boiling check 40 min ago.',
  );
  const unchecked = words({
    ...told,
    parts: [{ kind: 'assumed', at: null, sigma: 0.6 }],
    facts: { ...facts, correctionC: 0 },
  });
  expect(unchecked).toContain('(20 s ago), with nothing taken off.');
  expect(unchecked).toContain('Least sure: the probe T1 on board A, which nobody has checked (±0.8 °C).');
});

test('under boiling water the range has no signs and runs upwards', () => {
  const told = { ...strength, what: 'rise' as const, value: -26.4, low: -26.5, high: -26.3 };
  expect(words(told)).toMatch(/^26\.4 °C under boiling water, between 26\.3 and 26\.5 °C in eight/u);
});

test('a rise that is shown as none is not called under', () => {
  const told = { ...strength, what: 'rise' as const, value: -0.04, low: -0.1, high: 0.1 };
  expect(words(told)).toMatch(/^0\.0 °C over boiling water/u);
});

test('times are times of day, and the surest forecast still says on what it stands', () => {
  const told = { ...strength, what: 'finish' as const, value: 2400, low: 2100, high: 2700 };
  const said = words({ ...told, parts: [{ kind: 'evaporation', at: null, sigma: -240 }] });
  expect(said).toMatch(/^Done about 08:40, between 08:35 and 08:45 in eight of ten cases\./u);
  expect(said).toContain('Then it holds 67.0 °Bx, from 56 °Bx now while 4.8 L an hour boil away, if the fire stays');
  expect(said).toContain('Least sure: how evenly the fire burns (±5 min).');
});

test('of a range with one side longer the least sure part has its two ends, and no ± that would promise them alike', () => {
  const told = { ...strength, what: 'finish' as const, value: 7200, low: 3600, high: 18_000 };
  const part = (sigma: number): string =>
    words({ ...told, parts: [{ kind: 'evaporation', at: null, sigma: sigma / 1.2816 }] });
  expect(part(-5400)).toContain('Least sure: how evenly the fire burns (by itself between 09:30 and 11:30).');
  expect(part(-10_800)).toMatch(/Least sure: how evenly the fire burns\.$/u);
});

test('a power that nobody typed is not named as if somebody had', () => {
  const told = { ...strength, what: 'litres' as const, value: 3.1, low: 2.6, high: 3.6 };
  const counted = { ...told, parts: [{ kind: 'nominal-power' as const, at: null, sigma: -0.3 }] };
  const said = words(counted);
  expect(said).toContain('boiled away since by what is usual for such a fire.');
  expect(said).toContain('Least sure: how fast such a fire boils it away, for nobody typed its power');
  const header = { ...moment.header!, pans: [{ id: 'p1', heat: { kind: 'propane' as const, power_w: 16_000 } }] };
  const typed = explainWords(counted, { now: { ...moment, header }, settings: metric, saps: sapKinds });
  expect(typed).toContain('boiled away since by the burner’s nominal power.');
  expect(typed).toContain('Least sure: how much of the burner’s nominal power becomes steam');
});

test('whatever can be asked is one short paragraph without a gap, in any units', () => {
  for (const settings of [metric, american, { ...american, strength: 'baume' as const }]) {
    for (const what of EXPLAINED) {
      const said = words({ ...strength, what, pan: what === 'water' ? null : 'p1' }, settings);
      expect(said, what).not.toMatch(/undefined|null|NaN|not known| {2}|\.\.|,,/u);
      expect(said.split(/\s+/u).length, said).toBeLessThan(85);
      expect(said, what).toMatch(/[.]$/u);
    }
  }
});

test('what has become unknown meanwhile says so', () => {
  expect(words({ ...strength, value: null, low: null, high: null, parts: [] })).toBe('This is not known any more.');
});

test('a strength that no thermometer tells rests on what was poured, and no thermometer in the hand is made up for it', () => {
  const counted = words({
    ...strength,
    parts: [{ kind: 'volume', at: moment.t - 12 * MINUTE, sigma: 0.7 }],
    facts: { ...facts, temperatureC: null, riseC: null, probe: null, heardAt: null },
  });
  expect(counted).toMatch(/the volumes noted \(the last: .*12 min ago\).*no thermometer tells it now\./);
  expect(counted).not.toContain('in your hand');
});

test('what cannot be finished in its pot says so first, and whose time it is', () => {
  const finish: Explanation = { ...strength, what: 'finish', value: 1800, low: 1500, high: 2400, parts: [] };
  const one = { pan: 'p1', ask: null, shallow: null, tooLittle: true, roomLitres: null, smallestBatch: null };
  const little = {
    ...moment,
    advice: [{ ...one, fellC: null, moreThanNoted: false, litresRoughly: null, readAgainAt: null }],
  };
  const said = (now: typeof moment, told: Explanation): string =>
    explainWords(told, { now, settings: metric, saps: sapKinds });
  expect(said(little, finish)).toMatch(
    /^There is too little in this pan to finish it here\. What is in it alone would be done about 08:30, between 08:25 and 08:40/u,
  );
  expect(said(little, { ...finish, pan: 'p2' })).toMatch(/^Done about 08:30/u);
  const there = { ...finish, value: 0, low: 0, high: 0 };
  expect(said(little, there)).toMatch(/^May be done\./u);
  const finished = { ...moment.readings[0]!, stage: 'finished' as const };
  expect(said({ ...little, readings: [finished] }, there)).toMatch(/^Done now/u);
  expect(said(little, strength)).toMatch(/^56\.2/u);
});

test('a pan that is called before the middle of what is believed has no time at which it is done, as on its card', () => {
  const finish: Explanation = { ...strength, what: 'finish', value: 540, low: 430, high: 690, parts: [] };
  const called = { ...moment, readings: [{ ...moment.readings[0]!, stage: 'finished' as const }] };
  const said = explainWords(finish, { now: called, settings: metric, saps: sapKinds });
  expect(said).toMatch(/^May be done, between 08:07 and 08:12/u);
});

test('a rise says what is added to or taken off the number of its thermometer', () => {
  const rise: Explanation = { ...strength, what: 'rise', value: 3.9, low: 3.7, high: 4.1 };
  expect(words(rise)).toContain('101.9 °C by the probe T1 on board A (20 s ago), with 0.3 °C taken off.');
  expect(words({ ...rise, facts: { ...facts, correctionC: 0 } })).toContain('by the probe T1 on board A (20 s ago). ');
});

test('a strength beside a density that was noted of late says that both are weighed', () => {
  const noted = {
    ...{ t: moment.t - 4 * MINUTE, at: moment.t - 4 * MINUTE, withdrawn: false, questioned: false, doubt: null },
    ...{ mark: { kind: 'density', pan: 'p1', brix: 58 }, corrections: [], cameTo: 58.2, takenC: null },
  } as (typeof moment.marks)[number];
  const said = (now: typeof moment): string =>
    explainWords(strength, { now, settings: metric, saps: sapKinds }).replaceAll('\u00a0', ' ');
  const weighed = 'The density that you noted 4 min ago, 58.2 °Bx, is weighed with that, each by how sure it is.';
  expect(said({ ...moment, marks: [noted] })).toContain(weighed);
  expect(said({ ...moment, marks: [{ ...noted, withdrawn: true }] })).not.toContain('weighed');
});

test('where a thermometer in the hand is off, the finish says what it shows then; a density without it moved the strength alone', () => {
  const hand = { ...facts, probe: null, correctionC: -0.2, densityAlone: moment.t - 4 * MINUTE };
  const point: Explanation = { ...strength, what: 'finish-point', value: 105.3, low: 105, high: 105.6, facts: hand };
  expect(words(point)).toContain('Your thermometer shows 105.5 °C then: it reads 0.2 °C too high.');
  expect(words(point, american)).toContain('Your thermometer shows 221.9 °F then: it reads 0.4 °F too high.');
  expect(words(point)).toContain('The density that you noted 4 min ago set the strength right, and not this');
  expect(surerWords(point)).toContain('read the thermometer, and note a density right after');
  const low = { ...point, facts: { ...hand, correctionC: 0.3, densityAlone: null } };
  expect(words(low)).toContain('Your thermometer shows 105.0 °C then: it reads 0.3 °C too low.');
  expect(words(low)).not.toContain('set the strength right');
  const probe = { ...point, facts: { ...hand, probe: 'A/1', densityAlone: null } };
  expect(words(probe)).not.toContain('Your thermometer');
  expect(surerWords(probe)).toBe('What would make it surer: a density reading.');
});
