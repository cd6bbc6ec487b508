// `export` as a program: CSV of the readings and of the marks, written whole or not at all, with the numbers that `replay` prints.
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'csv-parse/sync';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ownFolder, panwarden } from './program.ts';

const fixture = fileURLToPath(new URL('../../fixtures/recordings/pulled-cable.boil.jsonl', import.meta.url));
const own = ownFolder();
const data = own.path('data');
let boil = '';

beforeAll(() => {
  boil = String(panwarden('import', fixture, '--data', data, '--json').lines()[0]?.['boil']);
});
afterAll(() => own.remove());

const exported = (to: string) => panwarden('export', 'latest', '--to', own.path(to), '--data', data);

/** Another parser than ours, held to RFC 4180: CR LF and nothing else ends a row, and every row is as long as the first. */
const readBack = (name: string): Record<string, string>[] =>
  parse(readFileSync(own.path(name)), { columns: true, record_delimiter: '\r\n' });

test('the CSV has the header of the contract and, row for row, what `replay --every 10` prints', () => {
  const { status, stdout } = exported('boil.csv');
  expect([status, stdout]).toEqual([0, `${boil} is in ${own.path('boil.csv')} and ${own.path('boil.marks.csv')}.\n`]);
  const text = readFileSync(own.path('boil.csv'), 'utf8');
  // The columns of recording.md, "The notebook commands" with "The replay command".
  expect(text.slice(0, text.indexOf('\r\n'))).toBe(
    't_s,pan,temperature_c,water_c,rise_c,rate_c_per_min,brix,brix_low,brix_high,litres,depth_mm,evaporation_l_per_h,' +
      'finish_in_s,finish_low_s,finish_high_s,scorch_in_s,top_up_in_s,stage,probe',
  );
  expect(text.endsWith('\r\n')).toBe(true);
  const readings = panwarden('replay', fixture, '--json', '--every', '10')
    .lines()
    .filter(({ kind }) => kind === 'reading');
  const expected = readings.map(({ kind: _, t, ...fields }) => ({
    t_s: String(Number(t) / 1000),
    ...Object.fromEntries(Object.entries(fields).map(([name, value]) => [name, value === null ? '' : String(value)])),
  }));
  expect(readings.length).toBeGreaterThan(1000);
  expect(readBack('boil.csv')).toEqual(expected);
});

test('the marks stand in a file beside it, one row each', () => {
  exported('other.csv');
  const marks = readFileSync(fixture, 'utf8')
    .split('\n')
    .filter((line) => line.includes('"mark"'))
    .map((line) => JSON.parse(line) as { t: number; mark: { kind: string } });
  const rows = readBack('other.marks.csv');
  expect(rows.map((row) => [Number(row['t_s']), row['kind']])).toEqual(
    marks.map(({ t, mark }) => [t / 1000, mark.kind]),
  );
});

test('what cannot be written leaves the old file and nothing beside it', () => {
  writeFileSync(own.path('old.csv'), 'kept');
  const marks = own.write('old.marks.csv/in-the-way', '');
  const { status, stderr } = exported('old.csv');
  expect([status, stderr]).toEqual([2, expect.stringContaining('old.marks.csv')]);
  expect(existsSync(marks)).toBe(true);
  expect(readFileSync(own.path('old.csv'), 'utf8')).toBe('kept');
  expect(readdirSync(own.folder).filter((name) => name.includes('unfinished'))).toEqual([]);
});

test('a folder that is not there is said', () => {
  const { status, stderr } = panwarden('export', 'latest', '--to', own.path('none/boil.csv'), '--data', data);
  expect([status, stderr]).toEqual([2, expect.stringContaining('none/boil.csv')]);
});

test('another end of the name is refused, and says which there are', () => {
  const { status, stderr } = exported('boil.xls');
  expect([status, stderr]).toEqual([2, expect.stringMatching(/\.boil\.jsonl.*\.csv/)]);
});

test('a report, labels and the season are written, on the paper that was asked for', () => {
  const pdf = (name: string) => readFileSync(own.path(name), 'latin1');
  expect(panwarden('export', 'latest', '--to', own.path('r.pdf'), '--data', data, '--paper', 'letter').status).toBe(0);
  expect(pdf('r.pdf')).toMatch(/^%PDF-[\s\S]*MediaBox \[0 0 612 792\]/);
  const labels = panwarden('labels', boil, '--to', own.path('l.pdf'), '--data', data, '--text', 'Ours');
  expect([labels.status, labels.stdout]).toEqual([0, expect.stringContaining(boil)]);
  expect(pdf('l.pdf')).toMatch(/^%PDF-[\s\S]*MediaBox \[0 0 595/);
  expect(panwarden('season', '--to', own.path('s.csv'), '--data', data, '--year', '2027').status).toBe(0);
  expect(readBack('s.csv').map((row) => row['boil'])).toEqual([boil]);
  expect(panwarden('export', 'latest', '--to', own.path('r.pdf'), '--data', data, '--paper', 'a5').status).toBe(2);
});

test('a pack that was exported is imported as a boil of its own', () => {
  expect(exported('b.senml.json').status).toBe(0);
  const { status, stderr, lines } = panwarden(
    'import',
    own.path('b.senml.json'),
    '--data',
    own.path('other'),
    '--json',
  );
  expect([status, lines()[0]]).toMatchObject([0, { kind: 'boil', running: false }]);
  expect(stderr).toContain('does not say which sap');
});

test.each(['labels', 'season'])('%s has --help and needs --to', (name) => {
  expect(panwarden(name, '--help').stdout).toContain(`panwarden ${name}`);
  expect(panwarden(name, 'latest').status).toBe(2);
});

test.each([
  ['export', 'report.pdf'],
  ['labels', 'jars.pdf'],
])('%s writes English, and another language where it is asked for one that there is', (name, file) => {
  const write = (...words: string[]) => panwarden(name, 'latest', '--to', own.path(file), '--data', data, ...words);
  const written = () => readFileSync(own.path(file), 'latin1');
  expect(write().status).toBe(0);
  expect(written()).toContain('/Lang (en)');
  expect(write('--language', 'fr').status).toBe(0);
  expect(written()).toContain('/Lang (fr)');
  expect(write('--language', 'xx')).toMatchObject({
    status: 2,
    stderr: expect.stringContaining('--language xx: there is en and fr.'),
  });
});
