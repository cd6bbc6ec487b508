// Tables that another program reads, and that run nothing there.
import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { boilSource } from '../../../src/host/export/boil-source.ts';
import { csvText } from '../../../src/host/export/csv.ts';
import { marksCsv } from '../../../src/host/export/marks-csv.ts';
import { READING_FIELDS, readingFields } from '../../../src/host/export/reading-fields.ts';
import { readingsCsv } from '../../../src/host/export/readings-csv.ts';
import { seasonCsv } from '../../../src/host/export/season-csv.ts';
import { kept, recordingText, whole } from './tarn-boils.ts';

const machine = systemClock();

test('quoting and line ends are those of RFC 4180', () => {
  expect(csvText([['a', 'b,c', 'd"e', 'f\r\ng', null, -0.5, true]])).toBe('a,"b,c","d""e","f\r\ng",,-0.5,true\r\n');
});

test.each(['=1+1', '+1', '-1', '@x', '\tx', "'x", "'=x"])(
  '%j is no formula, and comes back with one apostrophe off',
  (text) => {
    const [[cell]] = parse(csvText([[text]])) as [[string]];
    expect(cell).toBe(`'${text}`);
  },
);

test('the columns are the fields of a reading in their order', () => {
  const nothing = Object.fromEntries(READING_FIELDS.map((name) => [name, null]));
  expect(Object.keys(readingFields(nothing as never))).toEqual([...READING_FIELDS]);
});

test('a mark keeps every field; one that was taken back says so', async () => {
  const marks = [
    { t: 5, mark: { kind: 'note', id: 'm1', text: '=HYPERLINK("x")', pan: 'p1', happened: 2 } },
    { t: 6, mark: { kind: 'withdraw', id: 'm1' } },
  ];
  const { notebook, boil } = await kept(recordingText({}, marks));
  const text = (await whole(marksCsv(boilSource(notebook, boil.boil), { machine }))).toString();
  expect(parse(text, { columns: true })).toMatchObject([
    {
      t_s: '0.005',
      happened_s: '0.002',
      kind: 'note',
      id: 'm1',
      pan: 'p1',
      text: `'=HYPERLINK("x")`,
      taken_back: 'true',
    },
    { t_s: '0.006', kind: 'withdraw', id: 'm1', taken_back: 'false' },
  ]);
});

test.each(['__proto__', 'constructor', 'hasOwnProperty'])('%s is the name of a pan like any other', async (id) => {
  const { notebook, boil } = await kept(recordingText({ pans: [{ id, probe: 'A/1' }] }));
  const text = (await whole(readingsCsv(boilSource(notebook, boil.boil), { machine }))).toString();
  const last = (parse(text, { columns: true }) as Record<string, string>[]).at(-1);
  expect([last?.['pan'], last?.['temperature_c']]).toEqual([id, '98.2']);
});

test('a year of silence and a gap are passed in slices, and can be broken off', async () => {
  const year = 365 * 86_400_000;
  const { notebook, boil } = await kept(
    `${recordingText()}{"t":${year},"run":"gap","seconds":86400}\n{"t":${year},"port":"A","line":"T1=20C"}\n`,
  );
  const controller = new AbortController();
  const pieces = readingsCsv(boilSource(notebook, boil.boil), { machine, signal: controller.signal });
  await pieces.next();
  const began = machine.monotonicMs();
  await pieces.next();
  expect(machine.monotonicMs() - began).toBeLessThan(200);
  controller.abort();
  await expect(pieces.next()).rejects.toThrow();
});

test('the season has a row for each boil that was no practice, oldest first', async () => {
  const { notebook, boil } = await kept(recordingText());
  for (const changes of [{ started: '2026-03-01T08:00:00Z', name: '=Old' }, { practice: true }]) {
    await notebook.importRecording([recordingText(changes)], 'more');
  }
  notebook.keepPage(boil.boil, { syrup: { litres: 2.5 } });
  const rowsOf = async (year: number | null) =>
    parse((await whole(seasonCsv(notebook, { machine, year }))).toString(), { columns: true }) as Record<
      string,
      string
    >[];
  const rows = await rowsOf(null);
  expect(rows.map((row) => row['name'])).toEqual(["'=Old", 'Sunday’s run']);
  expect(rows[1]).toMatchObject({
    boil: boil.boil,
    'syrup_litres [L]': '2.5',
    'syrup_litres from': 'page',
    cost_a_jar: '',
  });
  expect(await rowsOf(2026)).toHaveLength(1);
});
