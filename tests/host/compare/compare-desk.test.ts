// Kept boils beside each other, through the host: read once and kept, laid by their finish, and the best one behind tonight's pan.
import { createReadStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { CompareDesk } from '../../../src/host/compare/compare-desk.ts';
import type { Tonight } from '../../../src/host/compare/ghost.ts';
import type { Notebook } from '../../../src/notebook/contract.ts';
import { openNotebook } from '../../../src/notebook/open-notebook.ts';
import type { CompareCommand, CompareView, Ghost, SmallCurves } from '../../../src/protocol/compare-messages.ts';

/** With the true finishes of fixtures/stories, the simulator's own: ms of boil time. */
const BOILS = [
  { file: 'birch-one-pan', finished: 18_411_000 },
  { file: 'scorched', finished: 8_377_000 },
];
const HOUR_MS = 3_600_000;

let folder: string;
let notebook: Notebook;
let desk: CompareDesk;
let tonight: Tonight | null = null;
const ids: string[] = [];
let count = 0;
const ask = async <Data>(command: object): Promise<Data> => {
  const outcome = await desk.do({ ref: String((count += 1)), ...command } as CompareCommand);
  if (!outcome.ok) throw new Error(outcome.why);
  return outcome.data as Data;
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  notebook = openNotebook(folder);
  for (const { file } of BOILS) {
    const name = `fixtures/recordings/${file}.boil.jsonl`;
    ids.push((await notebook.importRecording(createReadStream(name), name)).boil.boil);
  }
  desk = new CompareDesk(notebook, systemClock(), () => tonight);
});
afterAll(() => {
  desk.close();
  notebook.close();
  rmSync(folder, { recursive: true });
});

test('what is not read yet is read in the background; laid by their finish, both end at it', async () => {
  const compare = { boils: ids, align: 'before-finish', what: 'strength', points: 500 };
  const first = await ask<CompareView>({ compare });
  expect(first).toMatchObject({
    working: 2,
    boils: [
      { isWorking: true, x: [] },
      { isWorking: true, x: [] },
    ],
  });
  await desk.idle();
  const { boils, working } = await ask<CompareView>({ compare });
  expect(working).toBe(0);
  for (const [index, { finished }] of BOILS.entries()) {
    const { t, x, y, why } = boils[index]!;
    expect(why).toBeNull();
    const zero = x.findIndex((hours) => hours >= 0);
    expect(Math.abs(t[zero]! - finished)).toBeLessThan(4 * 60_000);
    expect(y[zero]).toBeGreaterThan(64);
    expect(x[0]).toBeCloseTo(-(finished / HOUR_MS), 0);
  }
});

test('what a boil took from strength to strength is told against the first', async () => {
  const compare = { boils: ids, align: 'strength', what: 'evaporation', points: 200 };
  const { differences } = await ask<CompareView>({ compare });
  const thick = differences.find(({ fromBrix }) => fromBrix === 30)!;
  // By the samples of the stories, the simulator's truth: 60.4 min, and 76.5 min.
  expect(thick.boil).toBe(ids[1]);
  expect(Math.abs(thick.minutesFirst - 60.4)).toBeLessThan(4);
  expect(Math.abs(thick.minutes - 76.5)).toBeLessThan(4);
  expect(thick.sentence).toMatch(/^1\d min slower from 30 to 60 °Bx: /);
});

test('left open, boils are laid by a way in which all are drawn, and what no stretch tells of is told as that', async () => {
  const started = '2027-03-01T08:00:00Z';
  const lines = [
    { recording: 'panwarden', version: 1, started, pans: [{ id: 'p1', name: 'Front pot', sap: 'birch' }] },
    ...[0, 1, 2].map((minute) => ({ t: 60_000 * minute, mark: { kind: 'reading', pan: 'p1', celsius: 99 + minute } })),
  ];
  const text = Readable.from([lines.map((line) => `${JSON.stringify(line)}\n`).join('')]);
  const { boil } = (await notebook.importRecording(text, 'unfinished')).boil;
  const open = { align: null, what: null, points: 100 };
  const wish = { compare: { ...open, boils: [ids[0], boil] } };
  await ask<CompareView>(wish);
  await desk.idle();
  const view = await ask<CompareView>(wish);
  expect(view).toMatchObject({ align: 'clock', what: 'temperature', boils: [{ why: null }, { why: null }] });
  expect(view.untold).toEqual([boil]);
  expect(await ask<CompareView>({ compare: { ...open, boils: ids } })).toMatchObject({
    align: 'before-finish',
    what: 'strength',
    untold: [],
  });
});

test('a boil that is not kept, and a pan that is in none, say so', async () => {
  const compare = { align: 'clock', what: 'temperature', points: 100 };
  await expect(ask({ compare: { ...compare, boils: ['nope'] } })).rejects.toThrow(/nope/);
  const { boils, pans } = await ask<CompareView>({ compare: { ...compare, boils: ids, pan: 'p9' } });
  // Those that can be asked for, each once though two boils have it.
  expect(new Set(pans.map(({ id }) => id)).size).toBe(pans.length);
  const [{ id = '' } = {}] = pans;
  const { boils: ofOne } = await ask<CompareView>({ compare: { ...compare, boils: ids, pan: id } });
  expect(ofOne.some(({ pan }) => pan?.id === id)).toBe(true);
  expect(boils.map(({ why }) => why)).toEqual(['This boil has no such pan.', 'This boil has no such pan.']);
});

test('the small curves of a season come in order of start', async () => {
  const { year } = await ask<SmallCurves>({ small_curves: { year: null, points: 60 } });
  expect(year).toBeGreaterThan(2000);
  const years = [...new Set(notebook.boils().map(({ started }) => Number(started.slice(0, 4))))];
  for (const one of years) {
    const { boils, working } = await ask<SmallCurves>({ small_curves: { year: one, points: 60 } });
    expect(working).toBe(0);
    expect(boils.length).toBeGreaterThan(0);
    for (const { x, y } of boils) {
      expect(x[0]).toBe(0);
      expect(y.length).toBeLessThanOrEqual(60);
    }
    const starts = boils.map(({ started }) => Date.parse(started));
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
  }
});

test('behind a pan of another sap nothing stands by itself', async () => {
  tonight = { pan: 'p1', sap: '0.250/0.250/0.500/0.000', t: 2 * HOUR_MS, brix: 40 };
  expect(await ask({ ghost: { boil: null, pan: 'p1', points: 200 } })).toBeNull();
  tonight = null;
});

test('the fastest past pan stands where tonight’s is now', async () => {
  await expect(ask({ ghost: { boil: null, pan: 'p1', points: 200 } })).rejects.toThrow('no boil that runs');
  tonight = { pan: 'p1', sap: 'birch', t: 2 * HOUR_MS, brix: 40 };
  const ghost = await ask<Ghost>({ ghost: { boil: null, pan: 'p1', points: 2000 } });
  expect(ghost).toMatchObject({ boil: ids[0], alignedBy: 'strength' });
  const now = ghost.t.findIndex((t) => t >= 2 * HOUR_MS);
  expect(ghost.brix[now]).toBeCloseTo(40, 0);
  expect(ghost.finished! - 2 * HOUR_MS).toBeGreaterThan(20 * 60_000);
  tonight = { pan: 'p1', sap: 'birch', t: 60_000, brix: null };
  expect(await ask<Ghost>({ ghost: { boil: ids[1], pan: 'p1', points: 50 } })).toMatchObject({
    alignedBy: 'start',
    boil: ids[1],
    t: expect.arrayContaining([0]),
  });
});
