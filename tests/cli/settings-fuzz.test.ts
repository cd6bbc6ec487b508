// Settings files that were mutated thousands of times go through the real commands: each is used, or refused in a sentence with the field.
import { existsSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Header } from '../../src/core/boil/entries.ts';
import { readPatch } from '../../src/cli/patches.ts';
import { replay } from '../../src/cli/replay.ts';
import { createHost } from '../../src/host/create-host.ts';
import { tuneBoil } from '../../src/host/tuning/tune-boil.ts';
import { settingsSchema } from '../../src/protocol/messages.ts';
import { HandClock } from '../host/hand-clock.ts';
import { ownFolder } from './program.ts';

const own = ownFolder();
afterAll(() => own.remove());

/** Invented: two pans at Tarn Hollow with every kind of setting, and two minutes of one of them. */
const header: Header & Record<string, unknown> = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A', format: { kind: 'pairs' } }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1', offset_c: -0.4, sensor: { kind: 'temperature', unit: 'C' } }],
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      role: 'syrup',
      sap: { sucrose: 0.9, glucose: 0.05, fructose: 0.05, others: 0.01 },
      probe: ['A/1'],
      vessel: { shape: 'round', diameter_mm: 400 },
      heat: { kind: 'propane', power_w: 16_000 },
      min_depth_mm: 15,
      finish: { brix: 67 },
      settings: { near_finish_lead_s: 900, finish_probability: 0.5 },
    },
    {
      id: 'p2',
      vessel: {
        shape: 'measured',
        fill: [
          { mm: 0, litres: 0 },
          { mm: 100, litres: 9 },
        ],
      },
    },
  ],
  learnt: {
    names: ['probe A/1', 'sap maple'],
    mean: [0.4, 0],
    covariance: [
      [0.04, 0],
      [0, 0.001],
    ],
  },
  settings: {
    near_finish_lead_s: 600,
    scorch_lead_s: 240,
    low_level_lead_s: 600,
    finish_probability: 0.5,
    use_learnt: true,
  },
};
const entries = [
  { t: 0, port: 'A', state: 'open' },
  { t: 0, mark: { kind: 'pressure', hpa: 940 } },
  { t: 0, mark: { kind: 'top-up', pan: 'p1', litres: 4, brix: 50, celsius: 99 } },
  ...Array.from({ length: 120 }, (_, second) => ({
    t: 1000 * second,
    port: 'A',
    line: `T1=${(101 + second / 100).toFixed(2)}C`,
  })),
  { t: 120_000, mark: { kind: 'density', pan: 'p1', brix: 55, celsius: 20 } },
  { t: 121_000, run: 'ended' },
].map((entry) => JSON.stringify(entry));
const recording = own.write('tarn.boil.jsonl', `${[JSON.stringify(header), ...entries].join('\n')}\n`);

type Path = readonly (string | number)[];

/** Every place in a value, the deepest too, lists by their places. */
function placesIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path];
  const inside = Object.entries(value).flatMap(([name, one]) =>
    placesIn(one, [...path, Array.isArray(value) ? Number(name) : name]),
  );
  return path.length === 0 ? inside : [path, ...inside];
}

/** The whole header as a patch with one place changed: lists are given whole. */
function changedAt([step, ...rest]: Path, value: unknown, whole: unknown): unknown {
  if (step === undefined) return value;
  if (Array.isArray(whole)) return whole.map((one, place) => (place === step ? changedAt(rest, value, one) : one));
  return { ...(whole as object), [step]: changedAt(rest, value, (whole as Record<string, unknown>)[step]) };
}

const strange = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    '',
    ' ',
    '__proto__',
    -0,
    -1,
    1e308,
    -1e308,
    5e-324,
    0.5,
    2 ** 53,
    [],
    {},
    [[]],
    [null],
  ),
  fc.double(),
  fc.integer(),
  fc.string(),
  fc.jsonValue({ maxDepth: 3 }),
);
const fuzzed = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(fc.constantFrom(...placesIn(header)), strange).map(([path, value]) => ({ path, value })),
  },
  { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 4 }).map((value) => ({ path: [] as Path, value })) },
);

/** As somebody's file holds it; numbers beyond JSON's are written as the file may have them. */
function textOf({ path, value }: { path: Path; value: unknown }): string {
  const written = typeof value === 'number' && !Number.isFinite(value) ? 'TOO MUCH' : value;
  const text = JSON.stringify(path.length === 0 ? written : changedAt(path, written, header));
  return text.replaceAll('"TOO MUCH"', '1e999');
}

let said: string[];
beforeEach(() => {
  said = [];
  vi.spyOn(process.stdout, 'write').mockImplementation((piece) => (said.push(String(piece)), true));
  vi.spyOn(process.stderr, 'write').mockImplementation(() => true);
});
afterEach(() => vi.restoreAllMocks());

/** What a command came to: it did its work, or a problem with its exit code and sentence. Anything else is a crash. */
async function outcomeOf(work: () => Promise<unknown>): Promise<{ code: number; sentence: string }> {
  try {
    await work();
    return { code: 0, sentence: '' };
  } catch (error) {
    const { name, message, code } = error as Error & { code?: number };
    if (name !== 'CommandProblem' || code !== 2) throw error;
    return { code, sentence: message };
  }
}

/** A header is refused by the name of its field, or of the one beside or under it that no longer fits. */
function expectNamed(sentence: string, { path }: { path: Path }): void {
  expect(sentence).toMatch(/^[^\n]{10,600}$/u);
  const first = path[0];
  const names = first === undefined ? Object.keys(header) : [String(first), 'ports', 'probes', 'pans'];
  const isNamed = names.some((name) => sentence.includes(`${name}`)) || sentence.includes('must hold one JSON object');
  expect([isNamed, sentence]).toEqual([true, sentence]);
}

const RUNS = 1000;

test(
  `replay --with: ${RUNS} mutated files are used or refused with 2, the file and the field`,
  { timeout: 240_000 },
  async () => {
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(fuzzed, async (change) => {
        said = [];
        const file = own.write('fuzzed.json', textOf(change));
        const { code, sentence } = await outcomeOf(() => replay(recording, { json: true, every: 60, with: [file] }));
        if (code === 0) {
          const lines = said
            .join('')
            .trimEnd()
            .split('\n')
            .filter((line) => line !== '');
          for (const line of lines) expect(JSON.parse(line)).toHaveProperty('kind');
          return;
        }
        refused += 1;
        expect(sentence.startsWith(file)).toBe(true);
        expectNamed(sentence.slice(file.length), change);
      }),
      { numRuns: RUNS, seed: 8 },
    );
    // Neither all nor none: the mutations reach both ways.
    expect(refused).toBeGreaterThan(RUNS / 4);
    expect(refused).toBeLessThan(RUNS);
  },
);

test(
  'tune --with: what its threads do with 1000 mutated files is a score or a reason',
  { timeout: 240_000 },
  async () => {
    const kept = { boil: 'tarn', header, texts: entries, noUse: [] };
    await fc.assert(
      fc.asyncProperty(fuzzed, async (change) => {
        const file = own.write('fuzzed.json', textOf(change));
        let result: ReturnType<typeof tuneBoil>['tuned'] = [];
        const { code, sentence } = await outcomeOf(async () => {
          const { patch } = await readPatch(file);
          result = tuneBoil(kept, [{ name: file, patch }]).tuned;
        });
        if (code === 2) {
          expect(sentence).toBe(`${file}: it must hold one JSON object, a merge patch over the header.`);
          return;
        }
        expect(result).toHaveLength(1);
        const [tuned] = result;
        if (tuned !== undefined && 'why' in tuned) expectNamed(tuned.why, change);
        else expect(tuned?.score.alarms).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1000, seed: 9 },
    );
  },
);

test.each([
  ['an empty file', '', 'must hold one JSON object'],
  ['a file that is cut', '{"settings":{"near', 'must hold one JSON object'],
  ['a list', '[1]', 'must hold one JSON object'],
  ['a number beyond all', '{"settings":{"scorch_lead_s":1e999}}', 'settings.scorch_lead_s must be a number'],
  [
    'brackets deeper than any stack',
    `{"pans":${'['.repeat(200_000)}${']'.repeat(200_000)}}`,
    'pans is nested more than 100 deep',
  ],
  [
    'objects deeper than any stack',
    `{"a":`.repeat(200_000) + '1' + '}'.repeat(200_000),
    'a is nested more than 100 deep',
  ],
  ['a prototype', '{"__proto__":{"started":"x"},"constructor":{"prototype":{"version":2}}}', null],
])('%s', async (_what, text, sentence) => {
  const file = own.write('odd.json', text);
  const outcome = await outcomeOf(() => replay(recording, { json: true, every: 60, with: [file] }));
  if (sentence === null) expect(outcome.code).toBe(0);
  else expect(outcome).toEqual({ code: 2, sentence: expect.stringContaining(sentence) });
  expect(Object.prototype).not.toHaveProperty('started');
});

/** Settings that a refusal calls as the screen does. */
const CALLED: Record<string, string[]> = { backup_folder: ['copies'] };

test('the settings of a notebook: 1000 mutated changes are taken or refused in a sentence, and what is kept holds together', async () => {
  const folder = own.path('notebook');
  const host = await createHost({ folder, machine: new HandClock() });
  const names = Object.keys(settingsSchema.parse({}));
  const change = fc.dictionary(fc.oneof({ weight: 5, arbitrary: fc.constantFrom(...names) }, fc.string()), strange, {
    minKeys: 1,
    maxKeys: 2,
  });
  await fc.assert(
    fc.asyncProperty(change, async (settings) => {
      const answer = await host.command({ ref: 'r', settings });
      if (answer.ok) return;
      expect(answer.why).toMatch(/^[^\n]{10,600}$/u);
      const names = Object.keys(settings).flatMap((name) => [name, ...(CALLED[name] ?? [])]);
      expect(names.some((name) => answer.why.includes(name))).toBe(true);
    }),
    { numRuns: 1000, seed: 10 },
  );
  await host.close();
  expect(existsSync(folder)).toBe(true);
  const again = await createHost({ folder, machine: new HandClock() });
  expect((await again.command({ ref: 'r', settings: { use_learnt: false } })).ok).toBe(true);
  await again.close();
});
