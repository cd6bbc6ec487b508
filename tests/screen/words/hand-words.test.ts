// A card says when its thermometer was read by hand, and what was typed where something else counts.
import { expect, test } from 'vitest';
import type { MarkView, Now } from '../../../src/screen/client/types.ts';
import { depthWords } from '../../../src/screen/words/depth-words.ts';
import { readAgo, readByHand } from '../../../src/screen/words/hand-words.ts';
import { metric, moment, reading } from '../moment.ts';

const typed = (celsius: number, at: number): MarkView => ({
  t: at,
  at,
  mark: { kind: 'reading', pan: 'p1', celsius },
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
});
const now: Now = { ...moment, marks: [typed(104.9, 1_620_000), typed(99, 60_000)] };
const said = (temperature_c: number | null, probe: typeof reading.probe = null): string | null =>
  readByHand(now, { ...reading, temperature_c, probe }, metric, null);

test('the latest reading, and nothing more where it counts as it was typed', () => {
  expect(said(104.9)).toBe('Read 07:57, 3\u00a0min ago');
  expect(said(104.93)).toBe('Read 07:57, 3\u00a0min ago');
  expect(said(null)).toBe('Read 07:57, 3\u00a0min ago');
  // The pans of a boil that is over grow no older, and an age that stands still is none.
  expect(readByHand({ ...now, ended: true }, { ...reading, temperature_c: 104.9, probe: null }, metric, null)).toBe(
    'Read 07:57',
  );
  expect(said(104.1, 'ok')).toBeNull();
  // Of what was emptied out, nobody asks how warm it was.
  const off = { ...reading, temperature_c: null, probe: null, stage: 'off' as const };
  expect(readByHand(now, { ...off, litres: 0 }, metric, null)).toBeNull();
  expect(readByHand(now, { ...off, litres: 2 }, metric, null)).not.toBeNull();
  expect(readByHand({ ...now, marks: [] }, { ...reading, probe: null }, metric, null)).toBeNull();
});

test('how old a reading by hand is stands beside it, and beside no number of a probe', () => {
  const told = (over: Partial<typeof reading>, of = now) => readAgo(of, { ...reading, probe: null, ...over });
  expect(told({})).toBe('read 3\u00a0min ago');
  expect(told({ probe: 'ok' })).toBeNull();
  expect(told({ temperature_c: null })).toBeNull();
  expect(told({}, { ...now, marks: [] })).toBeNull();
});

const measured = (...brix: number[]): Now =>
  ({
    ...now,
    marks: [
      ...now.marks,
      ...brix.map((each, at) => ({ ...typed(0, at), mark: { kind: 'density', brix: each, pan: 'p1' } })),
    ],
  }) as Now;
const saidAfter = (temperature_c: number, ...brix: number[]): string | null =>
  readByHand(measured(...brix), { ...reading, temperature_c, probe: null }, metric, null);

test('what was typed is said where density readings showed that the thermometer is off', () => {
  expect(saidAfter(104.1, 60, 61)).toMatch(
    /3\u00a0min ago\. You typed 104\.9\s°C; 104\.1\s°C counts, for density readings .* reads too high\.$/u,
  );
  expect(saidAfter(105.3, 60)).toMatch(
    /You typed 104\.9\s°C; 105\.3\s°C counts, for a density reading .* reads too low\.$/u,
  );
});

test('what was typed is said where boiling water showed that the thermometer is off, and not by the check of a probe', () => {
  const checked = (probe?: string): Now => ({
    ...now,
    marks: [...now.marks, { ...typed(0, 0), mark: { kind: 'water-check', celsius: 99, ...(probe && { probe }) } }],
  });
  const saidBy = (probe?: string) =>
    readByHand(checked(probe), { ...reading, temperature_c: 104.1, probe: null }, metric, null);
  expect(saidBy()).toMatch(/104\.1\s°C counts, for boiling water showed that this thermometer reads too high\.$/u);
  expect(saidBy('A/1')).toMatch(/with all that was noted/u);
});

test('of boiling water and density readings, what taught the thermometer is named', () => {
  const check = (celsius: number): MarkView => ({ ...typed(0, 0), mark: { kind: 'water-check', celsius } });
  const saidBy = (celsius: number, counts: number, pan = 'p1') => {
    const density = { ...typed(0, 0), mark: { kind: 'density', brix: 60, pan } } as MarkView;
    const marks = [...now.marks, density, check(celsius)];
    return readByHand({ ...now, marks }, { ...reading, temperature_c: counts, probe: null }, metric, null);
  };
  // Water boils at 97.9 °C here: it showed nothing, so the density did.
  expect(saidBy(98, 104.1)).toMatch(/counts, for a density reading showed that this thermometer reads too high\.$/u);
  expect(saidBy(97.5, 104.1)).toMatch(/counts, for a density reading showed that this thermometer reads too high\.$/u);
  expect(saidBy(98.8, 104.1)).toMatch(/counts, for boiling water showed that this thermometer reads too high\.$/u);
  expect(saidBy(98.5, 103.4)).toMatch(/for boiling water and a density reading showed that .* reads too high\.$/u);
  expect(saidBy(97.4, 106.4)).toMatch(/for boiling water and a density reading showed that .* reads too low\.$/u);
  // A pan that was never read by hand says nothing of the thermometer in the hand.
  expect(saidBy(98, 104.1, 'p2')).toMatch(/with all that was noted/u);
});

test('a thermometer is not said to be off by less than it is read to, nor by density readings that are not there', () => {
  for (const words of [saidAfter(104.8, 60), said(104.1)]) {
    expect(words).toMatch(/You typed 104\.9\s°C; with all that was noted, 104\.\d\s°C counts\.$/u);
  }
});

test('a depth that the vessel cannot hold is no figure', () => {
  const vessel = { shape: 'round-sloped', bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 } as const;
  expect(depthWords(250, { id: 'p1', vessel }, metric)).toMatch(/^250\smm deep$/u);
  expect(depthWords(281, { id: 'p1', vessel }, metric)).toBe('more than the vessel holds');
  const fill = [
    { mm: 50, litres: 5 },
    { mm: 200, litres: 20 },
  ];
  expect(depthWords(201, { id: 'p1', vessel: { shape: 'measured', fill } }, metric)).toBe('more than the vessel holds');
  const round = { shape: 'round', diameter_mm: 300 } as const;
  expect(depthWords(500, { id: 'p1', vessel: round }, metric)).toMatch(/^500\smm deep$/u);
  expect(depthWords(639, { id: 'p1', vessel: round }, metric)).toBe('more than the vessel holds');
});

test('of a thermometer that is off, what it shows when the pan is done is said once that is waited for', () => {
  const at = (counts: number | null, stage: typeof reading.stage, settings = metric): string =>
    readByHand(now, { ...reading, stage, temperature_c: counts, probe: null }, settings, 105.3)!.replaceAll(
      '\u00a0',
      ' ',
    );
  expect(at(104.7, 'thickening')).toMatch(/104\.7 °C counts\. Done when it shows 105\.5 °C\.$/u);
  expect(at(105.2, 'near-finish')).toMatch(/Done when it shows 105\.0 °C\.$/u);
  expect(at(104.7, 'near-finish', { ...metric, temperature: 'F' })).toMatch(/Done when it shows 221\.9 °F\.$/u);
  for (const said of [at(104.7, 'boiling'), at(104.7, 'finished'), at(104.86, 'near-finish'), at(null, 'near-finish')])
    expect(said).not.toContain('Done');
});
