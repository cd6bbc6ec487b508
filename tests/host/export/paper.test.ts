// What goes onto paper: the report and the jar labels as PDF, the same for the same boil, whatever stands in its names.
import { inflateSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { systemClock } from '../../../src/host/clock.ts';
import { labelsPdf } from '../../../src/host/export/labels-pdf.ts';
import { printable } from '../../../src/host/export/printable.ts';
import { reportPdf } from '../../../src/host/export/report-pdf.ts';
import type { Notebook } from '../../../src/notebook/contract.ts';
import { kept, keptFixture, recordingText, whole } from './tarn-boils.ts';

const machine = systemClock();

const report = (notebook: Notebook, boil: string, paper: 'a4' | 'letter' = 'a4') =>
  whole(reportPdf(notebook, boil, { machine, paper }));

/** The words that the standard fonts draw, by page; pdfkit writes them in hex, kerned apart. */
function wordsOf(pdf: Buffer): string {
  const raw = pdf.toString('latin1');
  const streams = [...raw.matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].map(([, body]) => {
    try {
      return inflateSync(Buffer.from(body ?? '', 'latin1')).toString('latin1');
    } catch {
      return '';
    }
  });
  return streams
    .map((stream) =>
      [...stream.matchAll(/\[([^\]]*)\] TJ/g)]
        .map(([, parts]) =>
          [...(parts ?? '').matchAll(/<([0-9a-f]*)>/g)]
            .map(([, hex]) => Buffer.from(hex ?? '', 'hex').toString('latin1'))
            .join(''),
        )
        .join('\n'),
    )
    .join('\n');
}

test.each([
  ['a4', '[0 0 595.28 841.89]'],
  ['letter', '[0 0 612 792]'],
] as const)('the report stands on %s', async (paper, box) => {
  const { notebook, boil } = await kept(recordingText());
  const pdf = await report(notebook, boil.boil, paper);
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  expect(pdf.toString('latin1')).toContain(`/MediaBox ${box}`);
});

test('name, place, figures and log can be read, and the same boil gives the same bytes', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  const pdf = await report(notebook, boil);
  const words = wordsOf(pdf);
  expect(words).toContain('A bad plug');
  expect(words).toContain('2027-03-14, 10:05 to 13:35 (3 h 30 min)');
  expect(words).toContain('Left pot: Probe lost (high)');
  expect(words).toContain('Left pot: top-up, 12.0\u00a0L, 28');
  expect(words).not.toContain('Practice');
  expect((await report(notebook, boil)).equals(pdf)).toBe(true);
});

test('the units are those that were chosen', async () => {
  const { notebook, boil } = await keptFixture('lost-probe');
  notebook.keepSetting('settings', { temperature: 'F', volume: 'us-gallon' });
  const words = wordsOf(await report(notebook, boil));
  expect(words).toContain('Left pot: top-up, 3.2\u00a0US gal');
  expect(words).toContain('Check in boiling water, A/1, 207.8\u00a0\u00b0F');
});

test('a practice boil says so on every page', async () => {
  const { notebook, boil } = await kept(
    recordingText({ practice: true }, [{ t: 0, mark: { kind: 'note', text: 'x' } }]),
  );
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words.match(/PRACTICE/g)).toHaveLength(2);
  expect(words).toContain('no sap was boiled');
});

test('names in any letters are printed as far as the fonts go, and what is missing is said', async () => {
  const { notebook, boil } = await kept(recordingText({ name: 'Café Žofie Берёза 🍁\u0000\n<script>' }));
  const words = wordsOf(await report(notebook, boil.boil));
  expect(words).toContain('Caf\u00e9 \u008eofie \u00a4\u00a4\u00a4\u00a4\u00a4\u00a4 \u00a4  <script>');
  expect(words).toContain('have no such letter');
});

test('letters with a stroke of their own lose it rather than vanish', () => {
  expect(printable('ő−5 °C')).toEqual({ text: 'o–5 °C', isWhole: false });
});

test('a boil without a single reading has a report', async () => {
  const { notebook, boil } = await kept('{"recording":"panwarden","version":1,"started":"2027-04-18T07:30:00Z"}\n');
  expect(wordsOf(await report(notebook, boil.boil))).toContain('there is no curve');
});

test('one label for each jar, with what is known and lines for what is not', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, {
    jars: [
      { litres: 0.25, count: 20, lot: 'L1', filled: '2027-04-19' },
      { litres: 0.5, count: 3 },
    ],
    syrup: { brix: 66.5 },
  });
  const pdf = await whole(labelsPdf(notebook, boil.boil, { paper: 'letter', text: 'From our own trees' }));
  const words = wordsOf(pdf);
  expect(words.match(/Lot L1/g)).toHaveLength(20);
  expect(words.match(/Lot ____/g)).toHaveLength(3);
  expect(words.match(/From our own trees/g)).toHaveLength(23);
  expect(words).toContain('Density 66.5\u00a0\u00b0Bx');
  expect(words).toContain('Date 2027-04-19');
  expect(words.match(/Volume 250 ml/g)).toHaveLength(20);
  expect(words).toContain('Ask your food authority');
  // 23 labels are two sheets of 21; nothing says of which kind or grade the syrup is.
  expect(pdf.toString('latin1').match(/\/Type \/Page\n/g)).toHaveLength(2);
  expect(words).not.toMatch(/maple|birch|pure|organic|grade/i);
});

test.each([
  // 0.5 L / 3.785411784 L * 128 and 0.5 L / 4.54609 L * 160, by hand.
  ['us-gallon', 'Volume 16.9 US fl oz (500 ml)'],
  ['imperial-gallon', 'Volume 17.6 imp fl oz (500 ml)'],
])('with %s chosen, a jar holds ounces', async (volume, words) => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepSetting('settings', { volume });
  notebook.keepPage(boil.boil, { jars: [{ litres: 0.5, count: 1 }] });
  expect(wordsOf(await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '' })))).toContain(words);
});

test('very many jars are twenty sheets', async () => {
  const { notebook, boil } = await kept(recordingText());
  notebook.keepPage(boil.boil, { jars: [{ litres: 0.25, count: 100_000 }] });
  const pdf = await whole(labelsPdf(notebook, boil.boil, { paper: 'a4', text: '' }));
  expect(pdf.toString('latin1').match(/\/Type \/Page\n/g)).toHaveLength(20);
});
