// The marks, answers and calls of recording.md are read as they stand there, and their types agree with core.
import type { z } from 'zod';
import { expect, test } from 'vitest';
import type { Answer, Called, Entry, Header, Mark, MarkKind } from '../../src/core/boil/entries.ts';
import type { answerSchema, calledSchema, markSchema } from '../../src/protocol/entry-schemas.ts';
import { markKinds } from '../../src/protocol/entry-schemas.ts';
import type { headerSchema } from '../../src/protocol/header-schema.ts';
import { parseEntry } from '../../src/protocol/recording.ts';

/** The type without the index signatures that "unknown fields are kept" adds, at every depth. */
type Listed<T> = T extends readonly (infer Item)[]
  ? Listed<Item>[]
  : T extends object
    ? { [Key in keyof T as string extends Key ? never : Key]: Listed<T[Key]> }
    : T;
type Fits<From, To> = [From] extends [To] ? true : false;

// These lines are checked by the compiler: schema and core fit each other both ways.
const markFits: [Fits<z.infer<typeof markSchema>, Mark>, Fits<Mark, Listed<z.infer<typeof markSchema>>>] = [true, true];
const answerFits: [Fits<z.infer<typeof answerSchema>, Answer>, Fits<Answer, Listed<z.infer<typeof answerSchema>>>] = [
  true,
  true,
];
const calledFits: [Fits<z.infer<typeof calledSchema>, Called>, Fits<Called, Listed<z.infer<typeof calledSchema>>>] = [
  true,
  true,
];
const headerFits: [Fits<z.infer<typeof headerSchema>, Header>, Fits<Header, Listed<z.infer<typeof headerSchema>>>] = [
  true,
  true,
];

test('the types of the schemas are those of core', () => {
  expect([markFits, answerFits, calledFits, headerFits].flat()).toEqual(Array(8).fill(true));
});

const marks: Record<MarkKind, { full: object; least: object }> = {
  'top-up': { full: { pan: 'p1', litres: 20, brix: 1.5, celsius: 4 }, least: { pan: 'p1' } },
  transfer: { full: { from: 'p1', to: 'p2', litres: 3, all: true }, least: { from: 'p1', to: 'p2' } },
  'draw-off': { full: { pan: 'p1', litres: 1.2, all: true, brix: 66 }, least: { pan: 'p1' } },
  flame: { full: { pan: 'p1', level: 0.5 }, least: { pan: 'p1', level: 0 } },
  pressure: { full: { hpa: 951.2, at: 'sea-level', outdoor_celsius: 3 }, least: { hpa: 951 } },
  'water-check': { full: { probe: 'A/1', celsius: 98.4 }, least: { celsius: 98.4 } },
  density: {
    full: {
      pan: 'p1',
      brix: 60,
      baume: 32,
      sg: 1.3,
      celsius: 90,
      instrument: 'refractometer',
      reference_celsius: 20,
      compensated: true,
    },
    least: { pan: 'p1' },
  },
  depth: { full: { pan: 'p1', mm: 40 }, least: { pan: 'p1', mm: 0 } },
  reading: { full: { pan: 'p1', celsius: 101.5 }, least: { pan: 'p1', celsius: 101.5 } },
  'move-probe': { full: { probe: 'A/1', pan: 'p2' }, least: { probe: 'A/1', pan: null } },
  fuel: { full: { pan: 'p1', kg: 7.5 }, least: { pan: 'p1', kg: 0 } },
  'no-top-up': { full: { pan: 'p1' }, least: { pan: 'p1' } },
  remind: { full: { text: 'look at the filter', seconds: 900 }, least: { text: '', seconds: 0 } },
  note: {
    full: {
      text: 'this was no use',
      pan: 'p1',
      about: { alarm: 'probe-lost', pan: 'p1', port: 'A', raised: 5000 },
      no_use: true,
    },
    least: { text: 'snow' },
  },
  withdraw: { full: { id: 'm1' }, least: { id: 'm1' } },
};

test.each(Object.entries(marks))(
  'a %s mark is read with all of its fields and with the least',
  (kind, { full, least }) => {
    for (const fields of [full, least, { ...full, id: 'm1', happened: 900, later_field: { kept: [1] } }]) {
      const mark = { kind, ...fields };
      expect(parseEntry(JSON.stringify({ t: 1000, mark }))).toEqual({ ok: true, entry: { t: 1000, mark } });
    }
  },
);

test('every kind of mark of the contract is known', () => {
  expect([...markKinds].sort()).toEqual(Object.keys(marks).sort());
});

test.each([
  [{ kind: 'flame', pan: 'p1' }, 'mark of kind flame: level is missing: it must be a number'],
  [{ kind: 'flame', pan: 'p1', level: 1.5 }, 'mark of kind flame: level must be at most 1, but is 1.5'],
  [{ kind: 'top-up', litres: 5 }, 'mark of kind top-up: pan is missing: it must be text'],
  [{ kind: 'top-up', pan: 'p1', litres: '5' }, 'mark of kind top-up: litres must be a number, but is "5"'],
  [{ kind: 'pressure', hpa: 95 }, 'mark of kind pressure: hpa must be at least 300, but is 95'],
  [
    { kind: 'pressure', hpa: 950, at: 'roof' },
    'mark of kind pressure: at must be "station" or "altimeter" or "sea-level", but is "roof"',
  ],
  [{ kind: 'withdraw' }, 'mark of kind withdraw: id is missing: it must be text'],
  [{ kind: 'note', text: 'x', happened: 2000 }, 'mark of kind note: happened is 2000, which is after its t of 1000'],
])('a known mark with a bad field is refused and the field named: %j', (mark, why) => {
  expect(parseEntry(JSON.stringify({ t: 1000, mark }))).toEqual({ ok: false, why });
});

test('a number too large for JSON is no quantity', () => {
  expect(parseEntry('{"t":0,"mark":{"kind":"depth","pan":"p1","mm":1e999}}')).toEqual({
    ok: false,
    why: 'mark of kind depth: mm must be a number, but is Infinity',
  });
});

test('a note that means something else by about or no_use is still a note', () => {
  const mark = { kind: 'note', text: 'snow', about: 'the lid', no_use: 'hardly any' };
  expect(parseEntry(JSON.stringify({ t: 1, mark }))).toMatchObject({ ok: true, entry: { mark: { text: 'snow' } } });
});

test('a mark of a later kind, or one whose only figure was not noted, is kept and ignored', () => {
  const unknown = { ok: true, entry: { t: 5, unknown: true } };
  expect(parseEntry('{"t":5,"mark":{"kind":"skimmed","pan":"p1"}}')).toEqual(unknown);
  expect(parseEntry('{"t":5,"mark":{"kind":"fuel","pan":"p1"}}')).toEqual(unknown);
});

test('answers are read, and an alarm without a pan may leave it out', () => {
  const answers: Answer[] = [
    { acknowledge: { pan: 'p1', alarm: 'finish' } },
    { silence: { seconds: 120 } },
    { put_aside: { pan: null, alarm: 'port-lost', port: 'A', seconds: 600, reason: 'cable is being dried' } },
  ];
  for (const answer of answers) {
    expect(parseEntry(JSON.stringify({ t: 1, answer }))).toEqual({ ok: true, entry: { t: 1, answer } });
  }
  expect(parseEntry('{"t":1,"answer":{"acknowledge":{"alarm":"port-lost","port":"A"}}}')).toEqual({
    ok: true,
    entry: { t: 1, answer: { acknowledge: { pan: null, alarm: 'port-lost', port: 'A' } } },
  });
  expect(parseEntry('{"t":1,"answer":{"silence":{"seconds":-1}}}').ok).toBe(false);
  expect(parseEntry('{"t":1,"answer":{"shrug":{}}}')).toEqual({ ok: true, entry: { t: 1, unknown: true } });
});

test('a call is read, and one of a later version is kept and ignored', () => {
  const called: Called = { pan: 'p1', alarm: 'finish', event: 'raised', priority: 'high', why: '67 °Bx' };
  const entry: Entry = { t: 1, called };
  expect(parseEntry(JSON.stringify(entry))).toEqual({ ok: true, entry });
  const later = JSON.stringify({ t: 1, called: { ...called, alarm: 'boil-over' } });
  expect(parseEntry(later)).toEqual({ ok: true, entry: { t: 1, unknown: true } });
});
