// `plan` as the contract has it: one line with its fields, words for people, and refusals that name the field.
import { afterAll, expect, test } from 'vitest';
import type { Header, PanSetup } from '../../src/core/boil/entries.ts';
import { burnerName } from '../../src/core/pan/burner.ts';
import { latentHeatKjPerKg } from '../../src/core/physics/heat.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
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

test('a pot for the end is poured into, and what no pan can finish is told to leave it', () => {
  const flat = { ...plan.pans[0], vessel: { shape: 'rectangular', length_mm: 500, width_mm: 400 } };
  const alone = { ...plan, pans: [flat] };
  expect(panwarden('plan', own.write('flat.json', alone)).stdout).toMatch(
    /°Bx, [\d.]+ h after the start: pour what is left into a smaller pot and finish there\./,
  );
  const pot = {
    id: 'p2',
    name: 'Stove pot',
    for_end: true,
    vessel: { shape: 'round', diameter_mm: 240, height_mm: 60 },
  };
  const { stdout } = panwarden('plan', own.write('pot.json', { ...plan, pans: [flat, pot] }));
  expect(stdout).toMatch(/pour together into Stove pot\. Foam needs room: no more than 45 mm deep in Stove pot/);
  expect(stdout).not.toMatch(/smaller pot/);
  const wrong = panwarden('plan', own.write('wrong.json', { ...plan, pans: [{ ...pot, for_end: 'yes' }] }));
  expect([wrong.status, wrong.stderr]).toEqual([2, expect.stringContaining('for_end')]);
});

/** Three boils in which the back pot's fire made so much steam, kg/s. */
function notebookOf(kgPerS: number): string {
  const folder = own.path('notebook');
  const notebook = openNotebook(folder);
  for (const name of ['First', 'Second', 'Third']) {
    const header = { recording: 'panwarden', version: 1, name, started: plan.start, pans: plan.pans };
    const { boil } = notebook.begin(header as Header, 'live');
    const names = [burnerName(plan.pans[0] as PanSetup)!];
    notebook.keepLearnt(boil, { names, mean: [Math.log(kgPerS)], covariance: [[0.0025]] }, []);
    notebook.end(boil, 0);
  }
  notebook.close();
  return folder;
}

test('with a notebook named, the fires are what its boils showed of them, unless that was switched off', () => {
  const file = own.write('plan.json', plan);
  const hours = (...words: string[]): number =>
    Number(panwarden('plan', file, '--json', ...words).lines()[0]!['hours']);
  const folder = notebookOf(0.001);
  // 1 kg of steam is 2257 kJ at 100 °C (IAPWS-95), so 1 g/s is 2.3 kW and carries 3.6 kg of water off an hour.
  expect((0.001 * latentHeatKjPerKg(100)!).toFixed(1)).toBe('2.3');
  expect(hours('--data', folder)).toBeGreaterThan((0.95 * 138) / 3.6);
  expect(hours()).toBeLessThan(0.8 * hours('--data', folder));
  expect(panwarden('plan', file, '--data', folder).stdout).toContain('as earlier boils showed: Back pot 2.');
  const notebook = openNotebook(folder);
  notebook.keepSetting('settings', { use_learnt: false });
  notebook.close();
  expect(hours('--data', folder)).toBe(hours());
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
