// Downloads of the page: every form of a boil behind the session, as an attachment, and nothing else.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { recordingText } from '../host/export/tarn-boils.ts';
import { servedTarn } from './tarn-page.ts';

let page: Awaited<ReturnType<typeof servedTarn>>;
let cookie = '';
const boil = '2027-04-18-sundays-run';

beforeAll(async () => {
  page = await servedTarn();
  cookie = await page.letIn();
  await post('/import', recordingText());
});
afterAll(() => page.close());

const post = (path: string, body: string) =>
  page.ask(path, { method: 'POST', headers: { origin: page.origin, cookie }, body });
const download = (name: string) => page.ask(`/export/${name}`, { headers: { cookie } });

test.each([
  [`${boil}.boil.jsonl`, 'application/x-ndjson; charset=utf-8', '{"recording"'],
  [`${boil}.csv`, 'text/csv; charset=utf-8', 't_s,pan,temperature_c,'],
  [`${boil}.marks.csv`, 'text/csv; charset=utf-8', 't_s,happened_s,kind,'],
  [`${boil}.senml.json`, 'application/senml+json', '[\n{"bn":"panwarden:'],
  [`${boil}.pdf`, 'application/pdf', '%PDF-'],
  [`${boil}.labels.pdf`, 'application/pdf', '%PDF-'],
  ['season.csv', 'text/csv; charset=utf-8', 'boil,name,started,'],
])('%s comes whole, with its type and name', async (name, type, start) => {
  const { status, headers, text } = await download(name);
  expect([status, headers['content-type']]).toEqual([200, type]);
  expect(headers['content-disposition']).toBe(`attachment; filename*=UTF-8''${name}`);
  expect(text.slice(0, start.length)).toBe(start);
});

test('paper and words of the person are asked for in the address', async () => {
  expect((await download(`${boil}.pdf?paper=letter`)).text).toContain('/MediaBox [0 0 612 792]');
  expect((await download('season.csv?year=2026')).text.trimEnd().split('\r\n')).toHaveLength(1);
});

test.each([
  ['A4 with litres', 'litre', '[0 0 595.28 841.89]'],
  ['Letter with US gallons', 'us-gallon', '[0 0 612 792]'],
])('paper that nobody asked for is %s', async (_what, volume, box) => {
  expect(await page.host.command({ ref: 's', settings: { volume } })).toMatchObject({ ok: true });
  const printed = [`${boil}.pdf`, `${boil}.labels.pdf`].map(async (name) => (await download(name)).text);
  for (const text of await Promise.all(printed)) expect(text).toContain(`/MediaBox ${box}`);
  expect((await download(`${boil}.pdf?paper=a4`)).text).toContain('/MediaBox [0 0 595.28 841.89]');
  await page.host.command({ ref: 's', settings: { volume: 'litre' } });
});

test.each([
  ['the language of the page', `${boil}.labels.pdf?language=fr-CA`, {}, `${boil}.étiquettes.pdf`],
  ['that of the settings', `${boil}.marks.csv`, { language: 'fr' }, `${boil}.notes.csv`],
  [
    'that of the page before that of the settings',
    `${boil}.labels.pdf?language=en`,
    { language: 'fr' },
    `${boil}.labels.pdf`,
  ],
  ['the settings’ own', 'season.csv?year=2027', { language: 'fr' }, 'saison-2027.csv'],
  ['English, where there is no catalogue', `${boil}.labels.pdf?language=xx`, {}, `${boil}.labels.pdf`],
])('a file is named in %s', async (_what, address, settings, name) => {
  const asked = { ref: 's', settings: { language: 'system', ...settings } };
  expect(await page.host.command(asked)).toMatchObject({ ok: true });
  const { status, headers } = await download(address);
  await page.host.command({ ref: 's', settings: { language: 'system' } });
  expect([status, headers['content-disposition']]).toEqual([
    200,
    `attachment; filename*=UTF-8''${encodeURIComponent(name)}`,
  ]);
});

test('a report is written in the language of the page', async () => {
  expect((await download(`${boil}.pdf?language=fr`)).text).toContain('/Lang (fr)');
  expect((await download(`${boil}.pdf`)).text).toContain('/Lang (en)');
});

test.each([
  'nothing.csv',
  `${boil}.xls`,
  '..%2f..%2fpanwarden-secret.txt',
  `..%2f${boil}.csv`,
  `${boil}%00.csv`,
  'latest%2f.pdf',
])('%s is not there', async (name) => {
  const { status, text } = await download(name);
  expect(status).toBe(404);
  expect(text).not.toContain('secret');
});

test('without the session there is nothing', async () => {
  expect((await page.ask(`/export/${boil}.csv`)).status).toBe(401);
});

test('a SenML pack is taken in by the same door as a recording', async () => {
  const { text } = await download(`${boil}.senml.json`);
  const answer = await post('/import', text);
  expect([answer.status, JSON.parse(answer.text)]).toMatchObject([200, { boil: '2027-04-18-sundays-run-2' }]);
});

test('what is hostile is refused in words', async () => {
  const { status, text } = await post('/import', `[{"a":${'['.repeat(1000)}`);
  expect([status, text]).toEqual([400, expect.stringContaining('nested deeper')]);
});
