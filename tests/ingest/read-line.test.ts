// What lines say: the forms that need no set-up, everything that must give no value, and no input that throws.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLine } from '../../src/ingest/read-line.ts';

const values = (line: string) => Object.fromEntries(readLine(line).readings.map((r) => [r.channel, r.value]));
const reasons = (line: string) => readLine(line).rejected.map((reason) => reason.split(':')[0]);

test('pairs are parted by blanks, commas or semicolons, with = or : between name and value', () => {
  expect(values('T1=101.25C T2=97.1')).toEqual({ T1: 101.25, T2: 97.1 });
  expect(values('pan2:99.5')).toEqual({ pan2: 99.5 });
  expect(values('1:99.5,2:98;  T3=+7.25c\tT4=-3')).toEqual({ 1: 99.5, 2: 98, T3: 7.25, T4: -3 });
  expect(readLine('T1=101.25C T2=97.1').rejected).toEqual([]);
  expect(readLine('')).toEqual({ readings: [], rejected: [] });
});

test('a unit is told with its number, which stays as it is written', () => {
  const units = (line: string) => Object.fromEntries(readLine(line).readings.map((r) => [r.channel, r.unit]));
  expect(values('T1=212F T2=214.3f T3=373.15K T4=300k T5=99C T6=99')).toEqual({
    T1: 212,
    T2: 214.3,
    T3: 373.15,
    T4: 300,
    T5: 99,
    T6: 99,
  });
  expect(units('T1=212F T2=214.3f T3=373.15K T4=300k T5=99C T6=99 T7=212 F')).toEqual({
    T1: 'F',
    T2: 'F',
    T3: 'K',
    T4: 'K',
    T5: 'C',
    T6: null,
    T7: 'F',
  });
});

test('ohms and millivolts of any size are numbers like others', () => {
  expect(values('R1=32650 R2=1098765.4 V1=4.096 V2=-0.000 V3=-127')).toEqual({
    R1: 32650,
    R2: 1_098_765.4,
    V1: 4.096,
    V2: -0,
    V3: -127,
  });
});

test('a unit that stands apart belongs to the value before it', () => {
  expect(values('T1=212 F T2=99 C')).toEqual({ T1: 212, T2: 99 });
  expect(reasons('T1=99C F')).toEqual(['not a name with a value']);
  expect(values('T1=99C F')).toEqual({ T1: 99 });
});

test.each(['nan', 'NaN', 'OPEN', 'fault', 'nanC', 'openF'])('the word %s says that the probe is broken', (word) => {
  expect(readLine(`T1=${word} T2=98`)).toEqual({
    readings: [
      { channel: 'T1', value: null, unit: null },
      { channel: 'T2', value: 98, unit: null },
    ],
    rejected: [],
  });
});

test.each([
  ['Infinity', 'not a number'],
  ['inf', 'not a number'],
  ['1e999', 'not a number'],
  ['1e2', 'not a number'],
  ['0x1F', 'not a number'],
  ['12.5.1', 'not a number'],
  ['12.', 'not a number'],
  ['.5', 'not a number'],
  ['--5', 'not a number'],
  ['98CC', 'not a number'],
  ['98X', 'not a number'],
  ['98nan', 'not a number'],
  ['', 'no value'],
  ['9'.repeat(400), 'out of range'],
  ['\u00b2', 'unreadable bytes'],
  ['98\u00b0', 'unreadable bytes'],
  ['98\u0000', 'unreadable bytes'],
])('the value %j gives nothing: %s', (value, reason) => {
  expect(values(`T1=${value} T2=98`)).toEqual({ T2: 98 });
  expect(reasons(`T1=${value} T2=98`)).toEqual([reason]);
});

test('a decimal comma is not taken for the end of the value', () => {
  expect(values('T1=12,5 T2=98')).toEqual({ T2: 98 });
  expect(values('T1=12,5C')).toEqual({});
  expect(values('T1=1.234,5')).toEqual({});
  expect(reasons('T1=12,5 T2=98')).toEqual(['decimal comma']);
});

test('a name that comes twice in a line gives nothing, whether its values can be read or not', () => {
  expect(readLine('T1=98 T2=97 T1=99')).toEqual({
    readings: [{ channel: 'T2', value: 97, unit: null }],
    rejected: ['named twice: T1'],
  });
  expect(values('T1=98 T1=?')).toEqual({});
  expect(values('T1=98 T1=98 T1=98')).toEqual({});
  const many = Array.from({ length: 20 }, (_, n) => `T${n}=50`).join(' ');
  expect(Object.keys(values(many))).toHaveLength(20);
  expect(Object.keys(values(`${many} T7=51`))).toHaveLength(19);
});

test('names with unreadable bytes, boot text and clock times give nothing', () => {
  expect(values('T\u00e41=98')).toEqual({});
  expect(values('rst:0x10 (RTCWDT) boot:mode 12:34:56 =98 T1')).toEqual({});
});

test('reasons show the piece cut short and made safe', () => {
  const [reason] = readLine(`T1=\u0007${'x'.repeat(100)}`).rejected;
  expect(reason).toBe(`unreadable bytes: T1=?${'x'.repeat(36)}…`);
});

test('a line over 4096 bytes gives nothing', () => {
  expect(values(`${'x'.repeat(4091)} T1=9`.slice(0, 4096))).toEqual({ T1: 9 });
  expect(readLine(`${'x'.repeat(4093)} T1=9`)).toEqual({ readings: [], rejected: ['longer than 4096 bytes'] });
});

const anyLine = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc
    .array(
      fc.constantFrom(
        'T1',
        '=',
        ':',
        ',',
        ';',
        ' ',
        '-',
        '.',
        '1',
        '98.5',
        'C',
        'F',
        'nan',
        '\r',
        '\u00ff',
        '0x',
        'e9',
      ),
      { maxLength: 40 },
    )
    .map((parts) => parts.join('')),
);

test('no line throws, and no value is NaN, infinite or named twice', () => {
  fc.assert(
    fc.property(anyLine, (line) => {
      const { readings, rejected } = readLine(line);
      for (const { channel, value } of readings) {
        expect(channel).toMatch(/^[!-~]+$/);
        expect(value === null || Number.isFinite(value)).toBe(true);
      }
      expect(new Set(readings.map((r) => r.channel)).size).toBe(readings.length);
      for (const reason of rejected) expect(reason).toMatch(/^[ -~…]{1,100}$/);
    }),
    { numRuns: 3000 },
  );
});

test('every number that is written plainly is read as the nearest number there is', () => {
  const plain = fc.tuple(fc.integer({ min: -59, max: 449 }), fc.stringMatching(/^[0-9]{0,20}$/));
  fc.assert(
    fc.property(plain, ([whole, places]) => {
      const text = places === '' ? `${whole}` : `${whole}.${places}`;
      expect(values(`a=${text}`)).toEqual({ a: Number(text) });
    }),
    { numRuns: 2000 },
  );
});
