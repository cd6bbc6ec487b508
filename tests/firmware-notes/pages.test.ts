// The pages of firmware-notes against the program: their lines are read as they say, and their words are the screen's own.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { brokenWords } from '../../src/core/boil/broken-probe.ts';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { platinumCelsius } from '../../src/core/physics/platinum.ts';
import { thermistorCelsius } from '../../src/core/physics/thermistor.ts';
import { readPairs } from '../../src/ingest/formats/pairs.ts';
import { probeWords } from '../../src/screen/words/pan-words.ts';
import { busCrc } from './one-wire-sensor.ts';

const notes = new URL('../../firmware-notes/', import.meta.url);
const pages = readdirSync(notes)
  .filter((name) => name.endsWith('.md'))
  .map((name) => ({ name, text: readFileSync(new URL(name, notes), 'utf8') }));
const wirings = pages.filter(({ name }) => name !== 'README.md' && name !== 'by-hand.md');
const lineOf = (text: string): string => /## The line\n```\n(.*)\n```/u.exec(text)?.[1] ?? '';

test('each wiring has its drawing, parts, cautions, line and table of what goes wrong', () => {
  expect(wirings).toHaveLength(7);
  for (const { name, text } of wirings) {
    for (const part of ['Parts, by kind', 'Wiring', 'In and at the pan', 'Cautions', 'The line', 'When it goes wrong'])
      expect(text, name).toContain(`\n## ${part}\n`);
    for (const word of ['**Food:**', '**Strain:**', '**Drip loop:**', 'Low voltage only', 'local codes'])
      expect(text, name).toContain(word);
  }
});

test('what a page links to is there', () => {
  for (const { name, text } of pages)
    for (const [, path] of text.matchAll(/\]\(([^)#]+)/gu))
      expect(() => readFileSync(new URL(path!, notes)), `${name}: ${path}`).not.toThrow();
});

test('each page’s line gives readings, and the last field of it neither a value nor a channel', () => {
  for (const { name, text } of wirings) {
    const { readings, rejected } = readPairs(lineOf(text));
    expect(readings.length, name).toBeGreaterThan(0);
    expect(
      readings.every(({ channel }) => /^[TDPR]\d$/u.test(channel)),
      name,
    ).toBe(true);
    expect(
      rejected.every((reason) => reason.startsWith('not a name with a value: #12*')),
      name,
    ).toBe(true);
  }
});

test('the checksums that are printed in the pages are right', () => {
  const sums = pages.flatMap(({ text }) => [...text.matchAll(/^(.*#12)\*([0-9A-F]{2})$/gmu)]);
  expect(sums.length).toBeGreaterThan(3);
  for (const [, body, sum] of sums) expect(busCrc([...Buffer.from(body!)])).toBe(Number.parseInt(sum!, 16));
});

test('the ohms in the pages are the degrees that they say', () => {
  expect(platinumCelsius(100, 137.84)).toBeCloseTo(98.25, 1);
  expect(thermistorCelsius({ r25_ohm: 10_000, beta_k: 3950 }, 733)).toBeCloseTo(98.25, 0);
});

test('what stands in bold in the last column is a word of the screen, and so are the quoted causes', () => {
  const screen = [
    ...Object.values(ALARM_WORDS).map(({ title }) => title),
    ...(['ok', 'late', 'lost', 'broken', 'stuck', 'suspect'] as const).map((state) => probeWords(state)),
  ];
  for (const { name, text } of wirings) {
    const table = text.slice(text.indexOf('## When it goes wrong'));
    for (const [, word] of table.matchAll(/\*\*([^*]+)\*\*/gu)) expect(screen, name).toContain(word);
  }
  const all = wirings.map(({ text }) => text).join('');
  for (const cause of [
    brokenWords({ by: 'board' }),
    brokenWords({ by: 'power-on' }),
    brokenWords({ by: 'code', celsius: -127, written: '-127' }),
  ])
    expect(all).toContain(`“${cause}”`);
});
