// Checks what must hold of a pan's course whatever happens: what was poured is there, late is as good as in time, and no number is ever none.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry, Mark } from '../../../src/core/boil/entries.ts';
import { applyEntry, type BoilState, startBoil } from '../../../src/core/boil/fold.ts';
import { beliefOf } from '../../../src/core/pan/course-time.ts';
import { SUGAR, waterOf } from '../../../src/core/pan/filter/belief.ts';
import { settingOf } from '../../../src/core/boil/settings.ts';
import {
  foldOn,
  inOrder,
  lines,
  mark,
  onePot,
  readingAt,
  tarnHollow,
  tools,
  waterCelsius,
} from '../boil/tarn-hollow.ts';
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';

const MINUTE_MS = 60_000;
const HPA = 1013.25;
const told = (litres: number, brix: number): Entry => mark(0, { kind: 'top-up', pan: 'p1', litres, brix, celsius: 90 });
const heated = {
  ...onePot('maple'),
  pans: [
    {
      id: 'p1',
      name: 'Back pot',
      probe: 'A/1',
      vessel: { shape: 'round' as const, diameter_mm: 360 },
      heat: { kind: 'propane' as const, power_w: 12_000 },
    },
  ],
};

/** A pan that boils from a strength on, losing water evenly: sugar in kg, water in kg/h. */
const climbing =
  (brix: number, sugarKg: number, perHour: number) =>
  (t: number): number => {
    const u = Math.max(0.4, (100 - brix) / brix - (perHour * t) / 3_600_000 / sugarKg);
    return waterCelsius(HPA) + riseFromStrength(100 / (1 + u), { sucrose: 0.98, glucose: 0.01, fructose: 0.01 }, HPA)!;
  };

function boiled(until: number, marks: Entry[], header = heated): BoilState {
  const heard = lines(0, until, { T1: climbing(20, 2, 4) });
  return foldOn(startBoil(header), inOrder([told(8, 20), ...marks], heard), until).state;
}

const finish = (state: BoilState, t: number): number => readingAt(state, 'p1', t).finish_in_s!;

/** Numbers of the belief: what two courses must agree in. */
function believed(state: BoilState): { x: number[]; p: number[] } {
  const { course } = state.pans['p1']!;
  return beliefOf(course, settingOf(state, 'p1'));
}

const LATE_MARKS: Mark[] = [
  { kind: 'top-up', pan: 'p1', litres: 1.5, brix: 3, celsius: 5 },
  { kind: 'draw-off', pan: 'p1', litres: 1 },
  { kind: 'flame', pan: 'p1', level: 0.7 },
  { kind: 'depth', pan: 'p1', mm: 70 },
];

test('marks that come late, in any order, end in the state that they would have made in time', () => {
  const until = 20 * MINUTE_MS;
  const happened = [6, 8, 11, 14].map((minute) => minute * MINUTE_MS + 1234);
  const inTime = boiled(
    until,
    LATE_MARKS.map((what, i) => mark(happened[i]!, what)),
  );
  const typed = fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 });
  fc.assert(
    fc.property(typed, (order) => {
      const late = order.map((place, i) =>
        mark(16 * MINUTE_MS + i * 1500, { ...LATE_MARKS[place]!, happened: happened[place]! }),
      );
      const { x, p } = believed(boiled(until, late));
      const expected = believed(inTime);
      x.forEach((one, i) => expect(one).toBeCloseTo(expected.x[i]!, 9));
      p.forEach((one, i) => expect(one).toBeCloseTo(expected.p[i]!, 9));
    }),
    { numRuns: 6 },
  );
});

test('a mark that is taken back leaves no trace, early or late', () => {
  const until = 20 * MINUTE_MS;
  const plain = believed(boiled(until, []));
  for (const what of LATE_MARKS) {
    const state = boiled(until, [
      mark(9 * MINUTE_MS, { ...what, id: 'm', happened: 7 * MINUTE_MS }),
      mark(18 * MINUTE_MS, { kind: 'withdraw', id: 'm' }),
    ]);
    const { x } = believed(state);
    x.forEach((one, i) => expect(one, what.kind).toBeCloseTo(plain.x[i]!, 9));
  }
});

test('a pour never brings the finish nearer, whatever is poured', () => {
  const at = 12 * MINUTE_MS;
  const plain = finish(boiled(at, []), at);
  const pour = fc.record({
    litres: fc.double({ min: 0.05, max: 20, noNaN: true }),
    brix: fc.double({ min: 0.3, max: 20, noNaN: true }),
    celsius: fc.double({ min: 0, max: 95, noNaN: true }),
  });
  const state = boiled(at, []);
  fc.assert(
    fc.property(pour, (poured) => {
      const after = applyEntry(structuredClone(state), mark(at, { kind: 'top-up', pan: 'p1', ...poured }), tools);
      expect(finish(after, at)).toBeGreaterThan(plain);
    }),
    { numRuns: 40 },
  );
});

test('more heat never delays the finish', () => {
  const at = 12 * MINUTE_MS;
  const state = boiled(at, []);
  const level = fc.double({ min: 0.05, max: 1, noNaN: true });
  const left = (flame: number): number =>
    finish(applyEntry(structuredClone(state), mark(at, { kind: 'flame', pan: 'p1', level: flame }), tools), at);
  fc.assert(
    fc.property(level, level, (one, other) => {
      const [less, more] = [Math.min(one, other), Math.max(one, other)];
      expect(left(more)).toBeLessThanOrEqual(left(less) + 1e-6);
    }),
    { numRuns: 40 },
  );
});

test('whatever is read and noted, no number is none and every range holds its middle', () => {
  const minute = fc.integer({ min: 0, max: 30 });
  const size = fc.double({ min: 0.001, max: 300, noNaN: true });
  const brix = fc.double({ min: 0.01, max: 80, noNaN: true });
  const anyMark: fc.Arbitrary<Mark> = fc.oneof(
    fc.record({ kind: fc.constant('top-up' as const), pan: fc.constant('p1'), litres: size, brix }),
    fc.record({ kind: fc.constant('draw-off' as const), pan: fc.constant('p1'), litres: size }),
    fc.record({ kind: fc.constant('draw-off' as const), pan: fc.constant('p1'), all: fc.constant(true) }),
    fc.record({ kind: fc.constant('depth' as const), pan: fc.constant('p1'), mm: size }),
    fc.record({ kind: fc.constant('density' as const), pan: fc.constant('p1'), brix }),
    fc.record({ kind: fc.constant('flame' as const), pan: fc.constant('p1'), level: fc.constantFrom(0, 0.01, 0.5, 1) }),
    fc.record({
      kind: fc.constant('reading' as const),
      pan: fc.constant('p1'),
      celsius: fc.double({ min: 0, max: 130, noNaN: true }),
    }),
    fc.record({ kind: fc.constant('no-top-up' as const), pan: fc.constant('p1') }),
    fc.record({
      kind: fc.constant('move-probe' as const),
      probe: fc.constant('A/1'),
      pan: fc.constantFrom('p1', null),
    }),
  );
  const noted = fc.array(fc.record({ minute, late: fc.integer({ min: 0, max: 12 }), what: anyMark }), { maxLength: 8 });
  const steps = fc.array(fc.double({ min: -20, max: 125, noNaN: true }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(noted, steps, (marks, celsius) => {
      const until = 34 * MINUTE_MS;
      const read = (t: number): number => celsius[Math.floor((t / until) * celsius.length)]!;
      const entries = marks.map(({ minute: at, late, what }) =>
        mark(at * MINUTE_MS + 2_000, { ...what, happened: Math.max(0, (at - late) * MINUTE_MS) }),
      );
      const { state } = foldOn(startBoil(heated), inOrder(entries, lines(0, until, { T1: read })), until);
      expect(JSON.stringify(state.pans)).not.toMatch(/null,null,null|NaN/u);
      const belief = state.pans['p1']!.course.belief ?? { x: [], p: [] };
      for (const one of [...belief.x, ...belief.p]) expect(Number.isFinite(one)).toBe(true);
      const reading = readingAt(state, 'p1', until);
      for (const [low, middle, high] of [
        [reading.brix_low, reading.brix, reading.brix_high],
        [reading.finish_low_s, reading.finish_in_s, reading.finish_high_s],
      ]) {
        if (middle === null || middle === undefined) continue;
        expect(low!).toBeLessThanOrEqual(middle);
        expect(high!).toBeGreaterThanOrEqual(middle);
      }
    }),
    { numRuns: 25 },
  );
}, 60_000);

test('of a drop that ran dry by count no strength is told', () => {
  const until = 34 * MINUTE_MS;
  const entries = [
    mark(2_000, { kind: 'top-up', pan: 'p1', litres: 0.001, brix: 0.0216 }),
    mark(302_000, { kind: 'move-probe', probe: 'A/1', pan: null }),
  ];
  const { state } = foldOn(startBoil(heated), inOrder(entries, lines(0, until, { T1: () => 115.945 })), until);
  const { brix, brix_low, brix_high } = readingAt(state, 'p1', until);
  expect({ brix, brix_low, brix_high }).toEqual({ brix: null, brix_low: null, brix_high: null });
});

test('a pan stays small however long it boils', () => {
  const until = 150 * MINUTE_MS;
  const heard = lines(0, until, { T1: climbing(5, 2, 2) });
  const { state } = foldOn(startBoil(heated), inOrder([told(20, 5)], heard), until);
  expect(JSON.stringify(state.pans).length).toBeLessThan(100 * 1024);
}, 30_000);

test('what is poured from pan to pan is neither more nor less, in time or late', () => {
  const until = 10 * MINUTE_MS;
  const heard = lines(0, until, { T1: () => 20, T2: () => 20 });
  const litres = fc.double({ min: 0.2, max: 4, noNaN: true });
  fc.assert(
    fc.property(litres, fc.integer({ min: 1, max: 8 }), (poured, late) => {
      const filled = ['p1', 'p2'].map((pan) => mark(0, { kind: 'top-up', pan, litres: 10, brix: 8 }));
      const moved = mark(9 * MINUTE_MS, {
        kind: 'transfer',
        from: 'p1',
        to: 'p2',
        litres: poured,
        happened: late * MINUTE_MS,
      });
      const { state } = foldOn(startBoil(tarnHollow()), inOrder([...filled, moved], heard), until);
      const held = ['p1', 'p2'].map((id) => {
        const now = beliefOf(state.pans[id]!.course, settingOf(state, id));
        const sugarKg = Math.exp(now.x[SUGAR]!);
        return { sugarKg, waterKg: sugarKg * waterOf(now) };
      });
      const { state: before } = foldOn(startBoil(tarnHollow()), inOrder(filled, heard), until);
      const was = Math.exp(beliefOf(before.pans['p1']!.course, settingOf(before, 'p1')).x[SUGAR]!);
      expect(held[0]!.sugarKg + held[1]!.sugarKg).toBeCloseTo(2 * was, 6);
      expect(held[1]!.sugarKg).toBeGreaterThan(was);
    }),
    { numRuns: 10 },
  );
});

test('what is noted late of a pan counts in every pan that it was poured into since, by way of another too', () => {
  const until = 12 * MINUTE_MS;
  const three = tarnHollow();
  three.pans = [...three.pans!, { ...three.pans![1]!, id: 'p3', name: 'Small pot', probe: undefined }];
  const heard = lines(0, until, { T1: () => 20, T2: () => 20 });
  const filled = ['p1', 'p2', 'p3'].map((pan) => mark(0, { kind: 'top-up', pan, litres: 10, brix: 8 }));
  const poured = [
    mark(4 * MINUTE_MS, { kind: 'transfer', from: 'p1', to: 'p2', litres: 5 }),
    mark(6 * MINUTE_MS, { kind: 'transfer', from: 'p2', to: 'p3', litres: 5 }),
  ];
  const thick = { kind: 'top-up' as const, pan: 'p1', litres: 4, brix: 30 };
  const ends = (thickNoted: Entry): BoilState =>
    foldOn(startBoil(three), inOrder([...filled, ...poured, thickNoted], heard), until).state;
  const inTime = ends(mark(2 * MINUTE_MS, thick));
  const late = ends(mark(9 * MINUTE_MS, { ...thick, happened: 2 * MINUTE_MS }));
  for (const id of ['p1', 'p2', 'p3']) {
    const [one, other] = [inTime, late].map((state) => beliefOf(state.pans[id]!.course, settingOf(state, id)).x);
    one!.forEach((x, i) => expect(other![i], id).toBeCloseTo(x, 9));
  }
});
