// `plan` as the contract has it: one line with its fields, words for people, and refusals that name the field.
import { afterAll, expect, test } from 'vitest';
import { ownFolder, panwarden } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());

const plan = {
  site: { name: 'Tarn Hollow, invented', altitude_m: 640 },
  ...{ sap: 'birch', litres: 140, brix: 0.9, celsius: 5, finish: { brix: 67 } },
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16_000 },
    },
  ],
  start: '2027-04-18T07:30:00-07:00',
};

test('one line with every field of the contract, numbers in order of their ranges', () => {
  const { status, stderr, lines } = panwarden('plan', own.write('plan.json', plan), '--json');
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const [line, ...more] = lines();
  expect(more).toEqual([]);
  expect(Object.keys(line!).slice(0, 12).join()).toBe(
    'kind,syrup_litres,syrup_kg,evaporate_litres,hours,hours_low,hours_high,fuel_kg,fuel_low_kg,fuel_high_kg,finish_rise_c,smallest_batch_litres',
  );
  const { hours, hours_low, hours_high, fuel_kg, fuel_low_kg, fuel_high_kg, jars } = line as Record<string, number>;
  expect(hours_low! < hours! && hours! < hours_high!).toBe(true);
  expect(fuel_low_kg! < fuel_kg! && fuel_kg! < fuel_high_kg!).toBe(true);
  expect(jars).toContainEqual({ litres: 0.25, count: 5 });
});

test('in words for people, with the pans by their names', () => {
  const { stdout } = panwarden('plan', own.write('plan.json', plan));
  expect(stdout).toMatch(/140 L of sap of 0\.9 °Bx make 1\.42 L/);
  expect(stdout).toMatch(/At full flame it takes about/);
});

test.each([
  ['no litres', { ...plan, litres: undefined }, /litres/],
  ['no pans', { ...plan, pans: [] }, /pans/],
  ['a wrong sap', { ...plan, sap: 'oak' }, /sap must be/],
  ['a sap over the finish', { ...plan, brix: 50, finish: { brix: 40 } }, /stronger than the sap/],
  ['no JSON', '140 litres', /no JSON/],
])('%s is refused with 2 and a sentence', (_what, value, sentence) => {
  const { status, stdout, stderr } = panwarden('plan', own.write('wrong.json', value), '--json');
  expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  expect(stderr).toMatch(sentence);
  expect(stderr).toContain('wrong.json');
});
