// A recording is read whatever state it is in: what is good is used, and what is not is said.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  entryText,
  parseEntry,
  readRecording,
  RecordingProblem,
  type RecordingItem,
} from '../../src/protocol/recording.ts';
import { heldBytes } from '../faults/turns.ts';

const header =
  '{"recording":"panwarden","version":1,"name":"Invented — été ☃ 𝄞","started":"2027-04-18T07:30:00-07:00"}';

async function read(chunks: Iterable<Uint8Array | string>): Promise<RecordingItem[]> {
  const items: RecordingItem[] = [];
  for await (const item of readRecording(chunks)) items.push(item);
  return items;
}

/** What of an item matters in a story: the text of what was used, the sentence of what was not. */
function told(items: RecordingItem[]): string[] {
  return items.map((item) => ('raw' in item ? item.raw : item.why));
}

test('entries come with their exact text, unknown fields and odd spacing included', async () => {
  const lines = [
    '{"t":0,"port":"A","state":"open"}',
    '{ "t" : 1000 , "port":"A",  "line":"T1=98.25C", "later": {"x":[1, 2]} }',
    '{"line":"T1=98.30C","port":"A","t":2000}',
    '{"t":2000,"set":{"pans":[{"id":"p1"}]}}',
    '{"t":2500,"port":"A","state":"lost","why":"cable"}',
    '{"t":3000,"run":"gap","seconds":840}',
    '{"t":3000,"weather":"snow"}',
    '{"t":4000,"run":"ended"}',
  ];
  const items = await read([[header, ...lines, ''].join('\n')]);
  expect(told(items)).toEqual([header, ...lines]);
  expect(items.map((item) => (item.kind === 'entry' ? item.entry : item.kind))).toEqual([
    'header',
    { t: 0, port: 'A', state: 'open' },
    { t: 1000, port: 'A', line: 'T1=98.25C' },
    { t: 2000, port: 'A', line: 'T1=98.30C' },
    { t: 2000, set: { pans: [{ id: 'p1' }] } },
    { t: 2500, port: 'A', state: 'lost', why: 'cable' },
    { t: 3000, run: 'gap', seconds: 840 },
    { t: 3000, unknown: true },
    { t: 4000, run: 'ended' },
  ]);
});

test('a torn tail is dropped and said, and everything before it is used', async () => {
  const items = await read([`${header}\n{"t":1}\n{"t":2,"port":"A","li`]);
  expect(told(items).slice(1)).toEqual([
    '{"t":1}',
    'line 3, the last, has no line end: its 21 bytes were left out, and everything before it was used',
  ]);
});

test('a whole object without a line end is a torn tail too', async () => {
  expect((await read([`${header}\n{"t":1}`])).map((item) => item.kind)).toEqual(['header', 'torn']);
});

test('a line that is no entry, or steps back, is left out and named', async () => {
  const lines = [
    '{"t":5000}',
    'T1=98.2C',
    '',
    '[1]',
    '{"port":"A","line":"x"}',
    '{"t":-1}',
    '{"t":1.5}',
    '{"t":4999}',
    '{"t":5000,"x":1}',
  ];
  const items = await read([[header, ...lines, ''].join('\n')]);
  expect(told(items).slice(1)).toEqual([
    '{"t":5000}',
    'line 3 was left out: it is no JSON: "T1=98.2C"',
    'line 4 was left out: it is no JSON: ""',
    'line 5 was left out: it is no JSON object: [1]',
    'line 6 was left out: t is missing: it must be whole milliseconds since the start',
    'line 7 was left out: t must be whole milliseconds from 0 to 34560000000, but is -1',
    'line 8 was left out: t must be whole milliseconds from 0 to 34560000000, but is 1.5',
    'line 9 was left out: its t of 4999 steps back behind the 5000 of line 2',
    '{"t":5000,"x":1}',
  ]);
});

test('bytes that are no UTF-8 and lines that are too long cost only themselves', async () => {
  const bad = new Uint8Array([0x7b, 0xff, 0xfe, 0x7d, 10]);
  const items = await read([`${header}\n{"t":1}\n`, bad, `{"t":2,"x":"${'y'.repeat(1_100_000)}"}\n`, '{"t":3}\n']);
  expect(told(items).slice(1)).toEqual([
    '{"t":1}',
    'line 3 was left out: it is no UTF-8 text',
    'line 4 was left out: it is longer than 1000000 bytes',
    '{"t":3}',
  ]);
});

test('a byte order mark and CRLF are tolerated, and no part of the text', async () => {
  const items = await read([`\uFEFF${header}\r\n{"t":1}\r\n`]);
  expect(told(items)).toEqual([header, '{"t":1}']);
});

test('it is the same recording however its bytes are cut', async () => {
  const text = `\uFEFF${header}\n{"t":1,"x":"é☃𝄞"}\r\nnonsense\n{"t":2}\n\n{"t":1}\n{"t":3,"to`;
  const bytes = new TextEncoder().encode(text);
  const whole = await read([bytes]);
  const cuts = fc.uniqueArray(fc.nat(bytes.length), { maxLength: 40 });
  await fc.assert(
    fc.asyncProperty(cuts, async (places) => {
      const edges = [0, ...places.sort((a, b) => a - b), bytes.length];
      const chunks = edges.slice(1).map((edge, index) => bytes.slice(edges[index], edge));
      expect(await read(chunks)).toEqual(whole);
    }),
  );
});

test.each([
  ['', 'line 1: there is no header, for the file is empty'],
  ['hello\n', 'line 1: the header does not hold together: it is no JSON: "hello"'],
  [header, 'line 1: this is no recording, for its first line has no end'],
  ['{"t":0}\n', 'line 1: the header does not hold together: recording is missing: it must be "panwarden"'],
  [
    '{"recording":"panwarden","version":1,"started":"2027-04-18T14:30:00Z","pans":[{"id":"p1"},{"id":"p2","probe":"A/9"}]}\n',
    'line 1: the header does not hold together: pans[1].probe names "A/9", which is not among the probes',
  ],
])('%j is no recording, and the line and field are named', async (text, sentence) => {
  const problem = await read([text]).catch((error: unknown) => error);
  expect(problem).toBeInstanceOf(RecordingProblem);
  expect(problem).toMatchObject({ message: sentence, code: 2 });
});

test('every entry that is written is read again the same', () => {
  const t = fc.nat(34_560_000_000);
  const entry = fc.oneof(
    fc.record({ t, port: fc.string(), line: fc.string({ unit: 'binary' }) }),
    fc.record({ t, port: fc.string(), state: fc.constantFrom('open' as const, 'lost' as const) }),
    fc.record({ t, run: fc.constant('gap' as const), seconds: fc.nat(1_000_000) }),
    fc.record({ t, mark: fc.record({ kind: fc.constant('note' as const), text: fc.string({ unit: 'binary' }) }) }),
  );
  fc.assert(
    fc.property(entry, (written) => {
      const text = entryText(written);
      expect(text).not.toMatch(/[\n\r]/u);
      expect(parseEntry(text)).toEqual({ ok: true, entry: written });
    }),
  );
});

test('whatever a line holds, reading it never throws', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (text) => typeof parseEntry(text).ok === 'boolean'),
  );
  const withKeys = fc.dictionary(
    fc.constantFrom('t', 'port', 'line', 'state', 'mark', 'set', 'answer', 'called', 'run'),
    fc.jsonValue(),
  );
  fc.assert(fc.property(withKeys, (value) => typeof parseEntry(JSON.stringify({ t: 0, ...value })).ok === 'boolean'));
});

test('300 MB go through in flat memory, with a line without end among them', async () => {
  const chunkBytes = 1 << 20;
  const block = new TextEncoder().encode('{"t":7,"port":"A","line":"T1=98.25C T2=97.10C"}\n'.repeat(20_000));
  const endless = new Uint8Array(chunkBytes).fill(0x61);
  let peakBytes = 0;
  function* chunks(): Generator<Uint8Array> {
    yield new TextEncoder().encode(`${header}\n`);
    for (let sent = 0; sent < 300; sent += 1) {
      yield sent >= 20 && sent < 280 ? endless : block;
      if (sent % 20 === 0) peakBytes = Math.max(peakBytes, heldBytes());
    }
  }
  const before = heldBytes();
  const counts = { header: 0, entry: 0, 'left-out': 0, torn: 0 };
  for await (const item of readRecording(chunks())) counts[item.kind] += 1;
  // The endless line swallows the one that it ends in.
  expect(counts).toEqual({ header: 1, entry: 40 * 20_000 - 1, 'left-out': 1, torn: 0 });
  expect(peakBytes - before).toBeLessThan(100 * 1024 * 1024);
});

test('an entry nested without end is refused or ignored, and never followed', () => {
  const deep = `${'['.repeat(400_000)}${']'.repeat(400_000)}`;
  const places = [
    '"port":',
    '"port":"A","line":',
    '"mark":',
    '"mark":{"kind":',
    '"set":{"x":',
    '"answer":',
    '"called":',
    '"run":"gap","seconds":',
    '"x":',
    '"t":',
  ];
  for (const place of places) {
    const closing = place.includes('{') ? '}' : '';
    const parsed = parseEntry(`{"t":1,${place}${deep}${closing}}`);
    expect(parsed.ok ? parsed.entry : parsed.why.length < 200).toEqual(parsed.ok ? { t: 1, unknown: true } : true);
  }
  expect(parseEntry(deep).ok).toBe(false);
});
