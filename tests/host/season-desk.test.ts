// What the host answers of the season: pages, collected sap, sums, what is looked for; over a real notebook of a made-up season.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { tarnHollowSeason } from '../../fixtures/tarn-hollow-season.ts';
import { systemClock } from '../../src/host/clock.ts';
import { createHost } from '../../src/host/create-host.ts';
import { SLICE_MS } from '../../src/host/slices.ts';
import { watchTurns } from '../faults/turns.ts';
import type { BoilPageView, CollectionsView, FoundView, SeasonView } from '../../src/protocol/season-messages.ts';

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
const season = tarnHollowSeason(7);
/** By the season's own order. */
const ids: string[] = [];
let longestTurnMs = 0;

async function obeyed<Data>(command: Record<string, unknown>): Promise<Data> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data as Data;
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tarn-hollow-'));
  const clock = systemClock();
  // Noon of the last day but one of the season, so that sap has an age.
  const machine = { ...clock, wallMs: () => Date.parse('2027-04-28T12:00:00Z') };
  host = await createHost({ folder, machine });
  for (const { header, entries, page } of season.boils) {
    const text = [header, ...entries].map((line) => `${JSON.stringify(line)}\n`).join('');
    const { boil } = await host.importRecording(
      (async function* () {
        yield text;
      })(),
      'a recording',
    );
    ids.push(boil);
    await obeyed({ keep_page: { boil, page } });
  }
  for (const [index, collection] of season.collections.entries()) {
    await obeyed({ keep_collection: { ...collection, boil: ids[Math.floor(index / 3)] } });
  }
  const turns = watchTurns();
  const { working } = await obeyed<SeasonView>({ season: { year: null } });
  expect(working).toBe(30);
  await host.season.idle();
  longestTurnMs = turns().turnMs;
});
afterAll(async () => {
  await host.close();
  rmSync(folder, { recursive: true, force: true });
});

test('figures are worked out in the background, in slices', () => {
  expect(longestTurnMs).toBeLessThan(SLICE_MS * 10);
});

test('the season: every boil in order of start with its figures, sums, days, and the years side by side', async () => {
  const view = await obeyed<SeasonView>({ season: { year: null } });
  expect(view).toMatchObject({ year: 2027, years: [2027], working: 0 });
  expect(view.boils.map(({ boil }) => boil)).toEqual(ids);
  expect(view.boils.every(({ figures, balance }) => figures !== null && balance === 'closes')).toBe(true);
  expect(view.totals.syrup_litres.boils_known).toBe(30);
  expect(view.seasons).toEqual([{ year: 2027, totals: view.totals }]);
  expect(view.days.length).toBeGreaterThan(30);
  expect(JSON.stringify(view).length).toBeLessThan(200_000);
  expect(await obeyed<SeasonView>({ season: { year: 2026 } })).toMatchObject({ year: 2026, boils: [], days: [] });
});

test('boils are found by words, sap, pan, day and outcome, and sorted by any figure', async () => {
  const found = async (find: Record<string, unknown>): Promise<string[]> =>
    (await obeyed<FoundView>({ find })).boils.map(({ boil }) => boil);
  const foamed = ids.filter((_, index) => index % 7 === 3);
  expect(new Set(await found({ text: 'foam' }))).toEqual(new Set(foamed));
  expect(await found({ text: 'nobody wrote this' })).toEqual([]);
  expect(new Set(await found({ sap: 'birch' }))).toEqual(new Set(ids.slice(20)));
  expect(await found({ pan: 'small pot' })).toHaveLength(30);
  expect(await found({ pan: 'kettle' })).toEqual([]);
  expect(await found({ from: '2027-03-03', to: '2027-03-05' })).toEqual([ids[2], ids[1]]);
  expect(await found({ outcome: 'finished' })).toEqual([]);
  const litres = (await obeyed<FoundView>({ find: { sort: 'syrup_litres', descending: true } })).boils.map(
    ({ figures }) => figures!.syrup_litres!.value,
  );
  expect(litres).toEqual(litres.toSorted((a, b) => b - a));
  expect(await found({})).toEqual(ids.toReversed());
});

test('a page keeps what was written, and gives pours, marks and steps with their ticks', async () => {
  const boil = ids[4]!;
  const { page } = await obeyed<BoilPageView>({ boil_page: { boil } });
  const steps = { 'filter-hot': '2027-03-09T18:00:00-05:00' };
  const view = await obeyed<BoilPageView>({ keep_page: { boil, page: { ...page, taste: 'Of smoke', steps } } });
  expect(view.page).toEqual({ ...page, taste: 'Of smoke', steps });
  expect(view.pours).toHaveLength(5);
  expect(view.marks).toHaveLength(9);
  expect(view.steps.find(({ id }) => id === 'filter-hot')?.ticked).toBe('2027-03-09T18:00:00-05:00');
  expect(view.steps.find(({ id }) => id === 'jars')?.ticked).toBeNull();
  const answer = await host.command({ ref: 'r', boil_page: { boil: 'no-such-boil' } });
  expect(answer).toMatchObject({ ok: false });
});

test('the form of the end asks for what is likely: jars of the size before, the cylinder as it was last weighed', async () => {
  const { form, figures } = await obeyed<BoilPageView>({ boil_page: { boil: ids[4]! } });
  expect(form!.jars!.litres).toBe(0.25);
  expect(form!.fuel).toMatchObject({ kind: 'propane', ask: 'after_kg' });
  expect(form!.fuel.likely).toBe(season.boils[4]!.page.fuel![0]!.after_kg);
  expect(form!.asks_sap).toBe(false);
  expect(Math.abs(form!.syrup_litres! - figures!.syrup_litres!.value)).toBeLessThan(0.1 * form!.syrup_litres!);
});

test('sap in store has its age, and is warned of when it gets too old: birch sooner than maple', async () => {
  const add = (day: string, sap: string): Promise<CollectionsView> =>
    obeyed({ keep_collection: { day, sap, litres: 40, brix: 1, store_celsius: 3, trees: 'North slope' } });
  await add('2027-04-25', 'birch');
  await add('2027-04-24', 'birch');
  const view = await add('2027-04-24', 'maple');
  const states = view.collections.filter(({ keeping }) => keeping !== null).map((one) => [one.sap, one.keeping!.state]);
  expect(states).toEqual(
    expect.arrayContaining([
      ['birch', 'use-now'],
      ['birch', 'past'],
      ['maple', 'fresh'],
    ]),
  );
  expect(view.store).toMatchObject({
    collections: 3,
    litres: 120,
    oldest_days: 4,
    use_now_litres: 40,
    past_litres: 40,
  });
  const { id } = view.collections.find(({ sap, keeping }) => sap === 'maple' && keeping !== null)!;
  const after = await obeyed<CollectionsView>({ drop_collection: { id } });
  expect(after.store.litres).toBe(80);
  expect(await host.command({ ref: 'r', drop_collection: { id } })).toMatchObject({ ok: false });
});
