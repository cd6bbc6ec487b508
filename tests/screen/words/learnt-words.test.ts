// What was learnt is said in the person's units, with no more digits than it is known to, and with the boil that taught it.
import { expect, test } from 'vitest';
import type { LearntListing } from '../../../src/protocol/messages.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { learntOf, learntWords, taughtBy } from '../../../src/screen/words/learnt-words.ts';

const celsius = settingsSchema.parse({});
const fahrenheit = settingsSchema.parse({ temperature: 'F' });
const boil = {
  boil: '2027-04-18-sundays-run',
  title: "Sunday's run, invented",
  started: '2027-04-18T07:30:00-07:00',
};
const probe: LearntListing = { ...boil, name: 'probe A/1', about: 'probe', of: 'A/1', value: 0.42, sigma: 0.08 };
const birch: LearntListing = { ...boil, name: 'sap birch', about: 'sap', of: 'birch', value: 0.041, sigma: 0.009 };

/** Numbers and units stand together; here a plain space is easier to read. */
const said = (learnt: LearntListing, settings = celsius): string =>
  learntWords(learnt, settings).replaceAll('\u00A0', ' ');

test.each([
  [{}, celsius, 'Probe A/1 shows 0.4 °C too much, ±0.1 °C.'],
  [{}, fahrenheit, 'Probe A/1 shows 0.8 °F too much, ±0.2 °F.'],
  [{ value: -0.42 }, celsius, 'Probe A/1 shows 0.4 °C too little, ±0.1 °C.'],
  [{ value: 0.42, sigma: 0.05 }, celsius, 'Probe A/1 shows 0.42 °C too much, ±0.06 °C.'],
  [{ value: -0.02 }, celsius, 'Probe A/1 is right, ±0.1 °C.'],
])('a probe: %j', (change, settings, sentence) => {
  expect(said({ ...probe, ...change }, settings)).toBe(sentence);
});

test.each([
  [{}, 'Birch sap boils 4 % further over water than its sugars alone say, ±1 %.'],
  [{ value: -0.02 }, 'Birch sap boils 2 % less far over water than its sugars alone say, ±1 %.'],
  [{ value: 0.004 }, 'Birch sap boils as far over water as its sugars alone say, ±1 %.'],
  [{ sigma: 0.005 }, 'Birch sap boils 4.1 % further over water than its sugars alone say, ±0.6 %.'],
])('a sap: %j', (change, sentence) => {
  expect(said({ ...birch, ...change })).toBe(sentence);
});

test('a sap of its own mix is called by its shares', () => {
  const mix = { ...birch, of: '0.600/0.225/0.175/0.030' };
  expect(learntOf(mix, celsius).replaceAll('\u00A0', ' ')).toBe(
    'sap of 60 % sucrose, 22.5 % glucose, 17.5 % fructose, 3 % acids and minerals',
  );
  expect(learntOf({ ...birch, of: '1.000/0.000/0.000/0.000' }, celsius).replaceAll('\u00A0', ' ')).toBe(
    'sap of 100 % sucrose',
  );
});

test('the boil that taught it is named with its day, in its own zone', () => {
  expect(taughtBy(probe)).toBe("From “Sunday's run, invented”, begun 18 Apr 2027, 07:30.");
  expect(taughtBy({ ...probe, title: '' })).toBe('From a boil begun 18 Apr 2027, 07:30.');
});

const burner: LearntListing = {
  ...boil,
  ...{
    name: 'burner ["back pot","round 400","propane",16000]',
    about: 'burner',
    of: 'Back pot',
    value: 9.2,
    sigma: 0.17,
  },
  burner: { heat: 'propane', power_w: 16_000, efficiency: 0.361, boils: 3, spread: 0.12 },
};

test('a burner: what boils away, which share of its power that is, what to expect and how its boils differ', () => {
  expect(said(burner)).toBe(
    'Back pot on propane (16 kW) boils away about 9.2 L of water an hour at full flame, 36 % of its power; expect 7.4 L to 11.5 L of the next boil. Its boils differ by ±15 %.',
  );
  expect(taughtBy(burner)).toBe("From 3 boils, the last “Sunday's run, invented”, begun 18 Apr 2027, 07:30.");
  expect(said(burner, settingsSchema.parse({ volume: 'us-gallon', power: 'btu-per-hour' }))).toMatch(
    /^Back pot on propane \(54600 Btu\/h\) boils away about 2\.4 US gal/,
  );
});

test('a burner of which one boil and no power is known says so', () => {
  const one = {
    ...burner,
    burner: { heat: 'other', power_w: null, efficiency: null, boils: 1, spread: null } as const,
  };
  expect(said(one)).toBe(
    'Back pot boils away about 9.2 L of water an hour at full flame; expect 7.4 L to 11.5 L of the next boil. One boil does not tell how far its boils differ.',
  );
  expect(taughtBy(one)).toBe("From “Sunday's run, invented”, begun 18 Apr 2027, 07:30.");
});
