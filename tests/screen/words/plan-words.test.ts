// What a plan says in sentences, of plans as the core makes them. Invented, Tarn Hollow.
import { expect, test } from 'vitest';
import type { PanSetup } from '../../../src/core/boil/entries.ts';
import { planBoil } from '../../../src/core/plan/plan.ts';
import type { PlanInput } from '../../../src/core/plan/plan.ts';
import { litresFromVolume } from '../../../src/core/quantities/units.ts';
import {
  differenceWords,
  longWords,
  onlyUntilWords,
  finishWords,
  fuelWords,
  hoursWords,
  panSentences,
  shallowEndWords,
  stageSentences,
  stayWords,
} from '../../../src/screen/words/plan-words.ts';
import { underWayWords } from '../../../src/screen/words/under-way-words.ts';
import { american, metric } from '../moment.ts';

const pan = (id: string, diameter_mm: number, power_w?: number): PanSetup => ({
  id,
  vessel: { shape: 'round', diameter_mm },
  heat: { kind: 'propane', ...(power_w === undefined ? {} : { power_w }) },
});
const day: PlanInput = {
  ...{ sap: 'birch', litres: 140, brix: 0.9 },
  pans: [pan('Back', 400, 16_000), pan('Middle', 360, 12_000), pan('Front', 220, 5000)],
};
const START = '2027-04-18T07:30';
const NO_CLOCK = { seen: null, made: null };
const plain = (words: string | null | undefined): string => (words ?? '').replaceAll('\u00a0', ' ');
const numbers = (words: string): number[] => [...words.matchAll(/\d+(?:\.\d+)?/gu)].map(([each]) => Number(each));

test('little electricity has its tenths, so that its range is one', () => {
  const stove: PanSetup = { ...pan('Stove', 260), heat: { kind: 'electric', power_w: 1500 }, for_end: true };
  const plan = planBoil({ ...day, pans: [day.pans[0]!, stove] })!;
  const { main, range } = fuelWords(plan, metric)[1]!;
  expect(plain(main)).toMatch(/^\d\.\d kWh/u);
  expect(plain(range)).toMatch(/(\d\.\d) kWh to (?!\1)\d\.\d kWh/u);
});

test.each([
  ['litres', metric, 140],
  ['US gallons', american, litresFromVolume(37.5, 'us-gallon')],
  ['a few US gallons', american, litresFromVolume(9.3, 'us-gallon')],
])('what is boiled before the leaving and what is kept add up, in %s', (_, settings, litres) => {
  const { hours } = planBoil({ ...day, litres })!;
  const plan = planBoil({ ...day, litres, stay_hours: hours! * 0.8 })!;
  const [boil, keep] = numbers(plain(stayWords(plan, settings)!.main));
  const [boiled, all] = numbers(plain(onlyUntilWords(plan, settings)));
  expect(boiled).toBe(boil);
  expect(boil! + keep!).toBeCloseTo(all!, 9);
  expect(plain(stayWords(plan, settings)!.range)).toMatch(/done nine times in ten; .* only one time in two/u);
  // As soon as even the middle of all the sap is done in time, more than the sure amount is likelier than not.
  const nearly = planBoil({ ...day, litres, stay_hours: hours! * 1.02 })!;
  expect(plain(stayWords(nearly, settings)!.range)).toMatch(/; all .* less often/u);
});

test('the range of the finish ends when somebody leaves, not after', () => {
  const plan = planBoil({ ...day, stay_hours: 7 })!;
  expect(plan.hours_high!).toBeLessThanOrEqual(7);
  expect(plan.hours_high!).toBeGreaterThan(6.9);
});

test('pouring together says that the litres are of all pans, and how they are shared out', () => {
  const [, , , first, last] = stageSentences(planBoil(day)!, START, (id) => id, metric).map(plain);
  expect(first).toMatch(
    /all the pans together still hold about [\d.]+ L, at \d+ °Bx; less, spread over all of them, would soon stand too shallow in Back\. Pour Back into Middle and Front, so that they stand equally deep\.$/u,
  );
  expect(last).toMatch(/Pour Middle into Front, which boils it down alone in about .*min\.$/u);
});

test('before the fire is lit it says how much to fill each pan with, and after it how much they take each time', () => {
  const [fill, light, refill] = stageSentences(planBoil(day)!, START, (id) => id, metric).map(plain);
  // A pot of 400 mm holds 12.6 L at 100 mm, cold as they are poured; of 360 mm 10.2 L and of 220 mm 3.8 L.
  expect(fill).toBe(
    'First pour in cold sap: 13 L into Back (100 mm deep); 10 L into Middle (100 mm deep); 3.8 L into Front (100 mm deep).',
  );
  expect(light).toMatch(/^07:30: light the fire under/u);
  // Down to where the boil calls: ten minutes over the least depth.
  expect(refill).toMatch(
    /^Then pour in cold sap, little by little so that it boils on, until all of it is in: about 9\.3 L into Back every 65 min; about 7\.7 L into Middle every 75 min; about 2\.8 L into Front every 65 min\.$/u,
  );
});

test('sap that is no more than the pans hold is shared out equally deep, and none is said to be poured in later', () => {
  const [fill, , all] = stageSentences(planBoil({ ...day, litres: 20 })!, START, (id) => id, metric).map(plain);
  const [depth, ...others] = [...fill!.matchAll(/(\d+) mm deep/gu)].map(([, mm]) => mm);
  expect(others).toEqual([depth, depth]);
  const litres = [...fill!.matchAll(/([\d.]+) L/gu)].map(([, each]) => Number(each));
  expect(litres.reduce((sum, each) => sum + each, 0)).toBeCloseTo(20, 0);
  expect(all).toBe('All of the sap is in the pans then: none is poured in later.');
  const plan = planBoil({ ...day, litres: 20 })!;
  expect(panSentences(plan.pans[0]!, plan, metric).join(' ')).not.toContain('cold sap');
});

test('a pan without a size is not said to be filled, and sap that it may share in is not shared out', () => {
  const bare: PanSetup = { id: 'Bare', heat: { kind: 'propane', power_w: 12_000 } };
  const steps = (litres: number) =>
    stageSentences(planBoil({ ...day, litres, pans: [day.pans[0]!, bare] })!, START, (id) => id, metric).map(plain);
  expect(steps(140)[0]).toBe('First pour in cold sap: 13 L into Back (100 mm deep).');
  expect(steps(9)[0]).toMatch(/light the fire/u);
  expect(steps(9).join(' ')).not.toMatch(/in the pans then/u);
});

test('a pan that could finish the batch, but is poured into another before, is not said to finish it', () => {
  const plan = planBoil({ ...day, sap: 'maple', brix: 1.8 })!;
  // 140 L at 1.8 °Bx make 2.9 L of syrup: deep enough in each pot, and finished in the smallest.
  expect(plan.pans.map((each) => each.can_finish)).toEqual([true, true, true]);
  expect(plan.stages.at(-1)!.pans).toEqual(['Front']);
  const said = plan.pans.map((each) => plain(panSentences(each, plan, metric).at(-1)));
  for (const each of said.slice(0, 2))
    expect(each).toMatch(
      /^This batch is finished in Front; alone, this pan could finish one of \d+ L of this sap or more\.$/u,
    );
  expect(said[2]).toMatch(/^It can finish this batch; /u);
});

test('each pan says by which share of its fire it is reckoned, or that only its size counts, and how deep full is', () => {
  const plan = planBoil({ ...day, pans: [pan('Back', 400, 16_000), pan('Front', 220)] })!;
  const [back, front] = plan.pans.map((each) => panSentences(each, plan, metric).map(plain).join(' '));
  expect(back).toContain('33 % of the fire’s power is taken to reach the pan');
  expect(back).toContain(
    'Taken as filled 100 mm deep (type how high its wall is, and it is reckoned from that): it then wants cold sap again',
  );
  expect(front).toContain('Reckoned by its size alone');
});

test('midnight is told by the clock as any other time, and begins its day', () => {
  const plan = planBoil(day)!;
  const at = (hours: number) => hoursWords({ ...plan, hours }, START)!.main;
  expect(at(16.5)).toBe('Done about 00:00 the next day');
  expect(at(16.75)).toBe('Done about 00:15 the next day');
  expect(at(40.5)).toBe('Done about 00:00, 2 days later');
  expect(at(64.5)).toBe('Done about 00:00, 3 days later');
});

test('a change of the time is that of the times shown, in fives of minutes', () => {
  const plan = planBoil(day)!;
  const shifted = (hours: number) => ({ ...plan, hours });
  // 9 h 10 min and 9 h 16 min are shown as 9 h 10 and 9 h 15.
  expect(differenceWords(shifted(9 + 10 / 60), shifted(9 + 16 / 60), metric)).toEqual(['5\u00a0min sooner']);
  expect(differenceWords(shifted(9 + 11 / 60), shifted(9 + 9 / 60), metric)).toEqual([]);
});

test('a fire of more hours than one person can watch is said to need another', () => {
  expect(longWords(planBoil(day)!)).toBeNull();
  expect(plain(longWords(planBoil({ ...day, litres: 900 })!))).toMatch(
    /on the fire is more than one person can watch/u,
  );
});

test('a boil of which something is not known says which pan lacks what', () => {
  const under = { poured_litres: 20, left_litres: 120, hours: null, hours_low: null, hours_high: null };
  const words = (lacking: { pan: string; litres: boolean; brix: boolean }[]): string =>
    plain(underWayWords({ ...under, lacking }, (id) => id, metric, NO_CLOCK).range);
  expect(
    words([
      { pan: 'Back', litres: false, brix: true },
      { pan: 'Front', litres: true, brix: true },
    ]),
  ).toMatch(/^Note this first, and it can be told: Back: how strong it is; Front: how much is in it and how strong\./u);
  expect(words([])).toMatch(/once a pan is on the fire/u);
});

test('when a boil that runs is done is told once as it is seen, and the plan’s own time as the plan’s', () => {
  const under = { poured_litres: 20, left_litres: 120, hours: 2, hours_low: 1.5, hours_high: 3, lacking: [] };
  const told = underWayWords(under, (id) => id, metric, { seen: '14:20', made: '13:40' });
  expect(told.main).toBe('Done about 14:20, as seen now');
  expect(plain(told.range)).toMatch(/^about 2 h to go, likely 1 h 30 min to 3 h, /u);
  expect(told.made).toMatch(/^As it was planned, .*13:40\.$/u);
  expect(underWayWords(under, (id) => id, metric, { seen: '14:20', made: null }).made).toBeNull();
});

test('the dial of the finish is told in the degrees that are shown, and small beneath in the others', () => {
  const plan = planBoil(day)!;
  expect(plain(finishWords(plan, american).main)).toMatch(/^2\d\d\.\d °F on the thermometer$/u);
  expect(plain(finishWords(plan, american).range)).toMatch(/^or 10\d\.\d °C, for 67\.0 °Bx/u);
  expect(plain(finishWords(plan, metric).main)).toMatch(/°C on the thermometer$/u);
});

test('where nothing was poured in yet that is said, and no 0.0 L of sap', () => {
  const under = { poured_litres: 0, left_litres: 120, hours: null, hours_low: null, hours_high: null, lacking: [] };
  const { range } = underWayWords(under, (id) => id, metric, NO_CLOCK);
  expect(plain(range)).toMatch(/No sap is noted as poured in yet: 120 L of the plan are to come\.$/u);
});

const flat = (id: string): PanSetup => ({
  id,
  vessel: { shape: 'rectangular', length_mm: 500, width_mm: 400, height_mm: 65 },
  heat: { kind: 'wood', power_w: 20_000 },
});
const two: PlanInput = { ...day, litres: 100, pans: [flat('One'), flat('Two')] };
const steps = (input: PlanInput) => stageSentences(planBoil(input)!, START, (id) => id, metric).map(plain);

test('where both pans are too wide to finish, the last step pours into a smaller pot, and none boils it down in them', () => {
  const said = steps(two);
  expect(said.at(-1)).toMatch(
    /^About \d\d:\d\d: about 4\.3 L are left, at \d+ °Bx\. Pour Two into a smaller pot and finish there: in Two so little burns\.$/u,
  );
  expect(said.at(-2)).toMatch(/Pour One into Two\.$/u);
  expect(said.join(' ')).not.toContain('boils it down');
});

test('sap too little for the last of two pans goes into a smaller pot straight away, not into that pan before', () => {
  // 3.6 L are more than the least of either pan, 2.9 L, and less than half as much again.
  const said = steps({ ...two, litres: 3.6 });
  expect(said.at(-1)).toMatch(/Pour One and Two into a smaller pot and finish there: in Two so little burns\.$/u);
  expect(said.join(' ')).not.toContain('into Two.');
});

test('a pot for the end is lit when the pan is poured into it, and filled no higher than foam allows', () => {
  const pot: PanSetup = { ...pan('Stove', 240, 4000), for_end: true };
  const with_pot = { ...two, pans: [...two.pans, pot] };
  const last = steps(with_pot).at(-1);
  expect(steps(with_pot).join(' ')).toMatch(/light the fire under One and Two\. /u);
  expect(last).toMatch(/Pour One into Stove and light the fire under it: there it boils down in about .* min\.$/u);
  const low = { ...pot, vessel: { shape: 'round', diameter_mm: 240, height_mm: 100 } } as const;
  expect(steps({ ...two, pans: [...two.pans, low] }).at(-1)).toMatch(
    /Foam needs room: no more than 75 mm deep in Stove, the rest as it boils down\.$/u,
  );
  expect(shallowEndWords(planBoil(with_pot)!)).toBeNull();
});

test('a plan that ends too shallow names the pan, and that a smaller one takes longer', () => {
  const alone = planBoil({ sap: 'maple', litres: 40, brix: 2, pans: [pan('Wide', 700)] })!;
  expect(shallowEndWords(alone)).toMatch(
    /^So little syrup ends too shallow in Wide and burns: .* takes longer than is told here\. Add that pot to the pans, lit for the end only, .*\.$/u,
  );
  expect(shallowEndWords(planBoil({ ...day, litres: 400 })!)).toBeNull();
});

test('both ends of a range of hours are told in one form', () => {
  const plan = { ...planBoil(day)!, hours: 19 / 12, hours_low: 80 / 60, hours_high: 105 / 60 };
  expect(plain(hoursWords(plan, '')!.range)).toBe('likely 1 h 20 min to 1 h 45 min');
  expect(plain(hoursWords({ ...plan, hours_low: 0.5 }, '')!.range)).toBe('likely 30 min to 1 h 45 min');
});

test('a pot for the end is poured into because what is left fits, or it says at that pan and in the steps why it stays cold', () => {
  const end = (height_mm?: number): PanSetup => ({
    id: 'Kitchen pot',
    for_end: true,
    vessel: { shape: 'round', diameter_mm: 254, ...(height_mm === undefined ? {} : { height_mm }) },
    heat: { kind: 'electric' },
  });
  const of = (last: PanSetup) =>
    planBoil({
      sap: 'maple',
      litres: 227,
      brix: 2,
      pans: [pan('Wide pot', 500, 17_600), pan('Stock pot', 406, 17_600), last],
    })!;
  const told = (made: ReturnType<typeof of>) => ({
    steps: stageSentences(made, START, (id) => id, metric).map(plain),
    pans: made.pans.map((one) => plain(panSentences(one, made, metric).at(-1))),
  });
  const lit = told(of(end()));
  expect(lit.steps.at(-1)).toMatch(
    /are left, at [\d–]+ °Bx: that now fits into Kitchen pot\. Pour Stock pot into Kitchen pot and light the fire under it: there it boils down in about/u,
  );
  expect(lit.pans[1]).toMatch(/^This batch is finished in Kitchen pot;/u);
  const low = told(of(end(130)));
  expect(low.steps.at(-1)).toBe(
    'Kitchen pot stays cold in this batch: all of its syrup, with room for foam, does not fit into it. It is finished in Stock pot.',
  );
  expect(low.pans[2]).toMatch(
    /^It stays cold in this batch: the syrup, with room for foam, is more than it holds up to 98 mm deep\.$/u,
  );
  expect(low.pans[1]).toMatch(/^It can finish this batch;/u);
});
