// A pan that is read by hand: what the thermometer and the instrument show goes before a count, what is left out says why, and whoever stands by it is believed.
import { expect, test } from 'vitest';
import type { Entry, Header, Mark } from '../../../src/core/boil/entries.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { formOf } from '../../../src/language/host-words.ts';
import { boilingAt, foldAll, inOrder, lines, mark, readingAt, tarnHollow, told } from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const vessel = { shape: 'round-sloped' as const, bottom_diameter_mm: 300, top_diameter_mm: 320, height_mm: 280 };
const heat = { kind: 'propane' as const, power_w: 16_000 };
const birch = (over: Partial<NonNullable<Header['pans']>[number]> = {}): Header =>
  tarnHollow({ probes: [], pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', vessel, heat, ...over }] });

const at = (minutes: number, what: Mark): Entry => mark(minutes * MINUTE_MS, what);
const poured = at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 1 });
const read = (minutes: number, celsius: number, more: Partial<Mark> = {}): Entry =>
  at(minutes, { kind: 'reading', pan: 'p1', celsius, ...more } as Mark);
const density = (minutes: number, brix: number, more: Partial<Mark> = {}): Entry =>
  at(minutes, { kind: 'density', pan: 'p1', brix, celsius: 15.56, ...more } as Mark);
const depth = (minutes: number, mm: number, more: Partial<Mark> = {}): Entry =>
  at(minutes, { kind: 'depth', pan: 'p1', mm, ...more } as Mark);
const birchAt = (brix: number): number => boilingAt(brix, 'birch');

const after = (entries: Entry[], minutes: number, header = birch()) => {
  const { state, transitions } = foldAll(header, entries, minutes * MINUTE_MS);
  const view = boilView(state, minutes * MINUTE_MS);
  return { state, view, calls: told(transitions), now: readingAt(state, 'p1', minutes * MINUTE_MS) };
};

test('a reading past the finish calls, whatever was poured in a few minutes ago, and its call stands', () => {
  const { calls, now, view } = after([poured, read(5, birchAt(67.3))], 8);
  expect(calls).toContain('p1 finish raised');
  const standing = view.alarms.filter(({ condition }) => condition === 'active').map(({ alarm }) => alarm);
  expect(standing.some((alarm) => alarm === 'finish' || alarm === 'past-finish')).toBe(true);
  expect(now.stage).toBe('finished');
  expect(now.brix!).toBeGreaterThan(60);
  // What was noted of its amount cannot be so either.
  expect(now.litres).toBeNull();
});

test('the first fill, typed in the minutes after it, is in the pan as if it had been typed at once', () => {
  const noted = { kind: 'top-up', pan: 'p1', litres: 19, brix: 0.9 } as const;
  for (const [typedMs, happened] of [
    [20_000, 0],
    [60_000, 0],
    [60_000, 30_000],
    [170_000, 60_000],
  ] as const) {
    const inTime = after([mark(happened, noted)], 4);
    const late = after([mark(typedMs, { ...noted, happened })], 4);
    expect(inTime.now.litres).not.toBeNull();
    expect(late.now.litres).toBeCloseTo(inTime.now.litres!, 6);
    expect(late.now.finish_in_s!).toBeCloseTo(inTime.now.finish_in_s!, 0);
    const taken = after([mark(typedMs, { ...noted, happened, id: 'a' }), at(3.5, { kind: 'withdraw', id: 'a' })], 4);
    expect(taken.now.litres).toBeNull();
  }
});

test('what is poured from pan to pan, both typed late, arrives before anything else was noted', () => {
  const two = tarnHollow({
    probes: [],
    pans: [
      { id: 'p1', name: 'Back pot', sap: 'birch', vessel, heat },
      { id: 'p2', name: 'Front pot', sap: 'birch', vessel, heat },
    ],
  });
  const fill = { kind: 'top-up', pan: 'p1', litres: 12, brix: 0.9 } as const;
  const over = { kind: 'transfer', from: 'p1', to: 'p2', litres: 5 } as const;
  const late = [mark(50_000, { ...fill, happened: 5000 }), mark(55_000, { ...over, happened: 20_000 })];
  const litresIn = (entries: Entry[]): (number | null)[] => {
    const { state } = after(entries, 2, two);
    return ['p1', 'p2'].map((pan) => readingAt(state, pan, 120_000).litres);
  };
  const [back, front] = litresIn([mark(5000, fill), mark(20_000, over)]);
  expect(back!).toBeGreaterThan(6.9);
  expect(front!).toBeGreaterThan(4.8);
  const [backLate, frontLate] = litresIn(late);
  expect(backLate).toBeCloseTo(back!, 6);
  expect(frontLate).toBeCloseTo(front!, 6);
});

test('a reading at the finish calls where what is believed lies a little lower', () => {
  const slow = birch({ heat: { kind: 'electric', power_w: 150 } });
  const thick = at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 64, celsius: 98 });
  const densities = [density(4, 65.4), density(8, 65.4)];
  const { now } = after([thick, read(2, birchAt(65.4)), ...densities, read(12, birchAt(67.1))], 13, slow);
  expect(now.brix!).toBeLessThan(67);
  expect(now.stage).toBe('finished');
});

test('a reading well under the finish calls nobody', () => {
  expect(after([poured, read(5, birchAt(64))], 8).calls).toEqual([]);
});

test('a reading that fits leaves the litres as they were told', () => {
  for (const celsius of [0.1, 0.2, 0.4].map((more) => birchAt(1) + more - 0.2))
    expect(after([poured, read(1, celsius), read(3, celsius)], 4).now.litres!).toBeGreaterThan(8);
});

test('a hot reading is believed when the same is read again, or when its person was asked and is sure', () => {
  const hot = birchAt(60);
  const once = after([poured, read(5, hot)], 7);
  // What was left out says nothing, not even that the pan boils.
  expect(once.now.brix).toBeNull();
  expect(once.view.notices).toEqual([
    expect.stringMatching(/this thermometer should show about \d+\.\d °C\. It would mean/),
  ]);
  for (const entries of [
    [poured, read(5, hot), read(6, hot)],
    [poured, read(5, hot, { sure: true })],
  ])
    expect(after(entries, 7).now.brix!).toBeGreaterThan(50);
  expect(after([poured, read(5, hot, { sure: true })], 7).view.notices).toEqual([]);
});

const notices = (entries: Entry[], minutes: number, header = birch()): string[] =>
  after(entries, minutes, header).view.notices;

test('a reading that the sugar and the lost water do not allow says what it would mean, and is believed when typed again at once', () => {
  const [asked] = notices([poured, read(3, 103)], 4);
  expect(asked).toMatch(
    /^Back pot: 103\.0 °C was read.* It would mean about [45]\d °Bx, with only about 0\.\d L of \d+\.\d L left\. Until it is typed once more it does not count/u,
  );
  expect(formOf(asked!)).not.toBeNull();
  const again = after([poured, read(3, 103), read(3.1, 103)], 4);
  expect(again.now.brix!).toBeGreaterThan(30);
  // Pressed twice is not typed twice.
  expect(after([poured, read(3, 103), read(3.01, 103)], 4).now.brix).toBeNull();
});

test('what shows the finish is called before anybody has said that it is so, and its question says so', () => {
  const { view, calls } = after([poured, read(5, birchAt(67.3))], 6);
  expect(calls).toContain('p1 finish raised');
  expect(view.notices).toEqual([expect.stringContaining('To be safe it is called as if it were so')]);
  expect(view.notices.every((sentence) => formOf(sentence) !== null)).toBe(true);
});

test('the better a thermometer is known, the less it may be over what was noted; water that may have gone is no question', () => {
  const two = at(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 2 });
  // 2.2 °F over what 2 °Bx boils at.
  const over = read(3, birchAt(2) + 1.22);
  expect(notices([two, over], 4)).toEqual([expect.stringContaining('or the thermometer is off')]);
  const checked = at(0, { kind: 'water-check', celsius: boilingAt(0, 'birch') });
  expect(notices([checked, two, over], 4)).toEqual([expect.stringContaining('It would mean about')]);
  // 25 min at 16 kW may have boiled most of 10 L of 12 °Bx away.
  const strong = at(0, { kind: 'top-up', pan: 'p1', litres: 4, brix: 12, celsius: 95 });
  expect(notices([checked, strong, read(25, birchAt(45))], 26)).toEqual([]);
});

test('where nobody knows how hot water boils, what a strength needs is said once, and nothing is asked or guessed', () => {
  const nowhere: Header = { ...birch(), site: { name: 'Tarn Hollow (invented)' } };
  const { view, now } = after([poured, read(3, 103), read(4, 103)], 5, nowhere);
  expect(view.notices).toEqual([
    expect.stringMatching(
      /^Back pot: how strong 103\.0 °C is cannot be told before .* Hold this thermometer in plain boiling/u,
    ),
  ]);
  expect(formOf(view.notices[0]!)).not.toBeNull();
  expect(now).toMatchObject({ rise_c: null, water_c: null });
  expect(view.marks.map(({ doubt }) => doubt)).toEqual([null, null, null]);
  expect(notices([poured, read(3, 40)], 5, nowhere)).toEqual([]);
});

test('a depth that its person is sure of stands when a reading throws over how strong the pan was thought', () => {
  const hot = [read(6, birchAt(60), { sure: true }), read(7, birchAt(62))];
  const { litres, depth_mm: mm } = after([poured, depth(5, 38, { sure: true }), ...hot], 8).now;
  expect(litres!).toBeGreaterThan(2);
  expect(Math.abs(mm! - 38)).toBeLessThan(8);
  // What was measured long before says no more of it than what was poured in.
  expect(
    after([poured, depth(5, 38, { sure: true }), read(40, birchAt(60), { sure: true })], 41).now.litres,
  ).toBeNull();
});

test('a reading that climbs on from one that was believed is not asked about again', () => {
  const { view } = after([poured, read(5, birchAt(50), { sure: true }), read(6, birchAt(63))], 7);
  expect(view.notices).toEqual([]);
});

test('a count that has run dry comes back to what the thermometer shows', () => {
  const thick = at(0, { kind: 'top-up', pan: 'p1', litres: 3, brix: 20 });
  const shows = birchAt(40);
  const { now } = after([thick, read(1, birchAt(20)), read(25, shows)], 25);
  expect(now.brix!).toBeGreaterThan(30);
  expect(now.brix!).toBeLessThan(50);
});

test('a density that agrees with the thermometer of that moment goes before a count of what went in', () => {
  const { now, view } = after([poured, read(5, birchAt(64)), density(5.5, 64)], 6);
  expect(view.marks.map(({ questioned }) => questioned)).toEqual([false, false, false]);
  expect(Math.abs(now.brix! - 64)).toBeLessThan(2);
});

test('a density that the thermometer contradicts moves nothing of the pan either, until it is said again', () => {
  const maple = birch({ sap: 'maple' });
  const hot = boilingAt(69, 'maple');
  const alone = after([read(5, hot)], 6, maple).now.brix!;
  const once = after([read(5, hot), density(5.2, 58)], 6, maple);
  expect(once.view.marks.at(-1)).toMatchObject({ questioned: true, doubt: expect.stringContaining('the thermometer') });
  expect(once.now.brix!).toBeCloseTo(alone, 6);
  const again = after([read(5, hot), density(5.2, 58), density(5.6, 58)], 6, maple);
  expect(again.view.marks.at(-1)!.questioned).toBe(false);
  expect(Math.abs(again.now.brix! - 58)).toBeLessThan(3);
});

test('a density that is insisted on against a reading is of the pan, and makes no thermometer 5 °C wrong', () => {
  const { now } = after([poured, read(5, birchAt(1)), density(5.5, 66, { sure: true })], 6);
  expect(Math.abs(now.brix! - 66)).toBeLessThan(2);
  expect(now.temperature_c!).toBeCloseTo(birchAt(1), 6);
});

test('a density that the count contradicts is left out with its reason, and counts when it is said again', () => {
  const thin = [poured, read(1, birchAt(1))];
  const first = after([...thin, density(5, 66)], 6);
  expect(first.view.marks.at(-1)).toMatchObject({
    questioned: true,
    doubt: 'Back pot: 66.0 °Bx is far from what went in and boiled away.',
  });
  expect(first.view.notices).toEqual([
    'Back pot: 66.0 °Bx is far from what went in and boiled away. It was left out; the same again counts.',
  ]);
  expect(first.now.brix!).toBeLessThan(5);
  for (const entries of [
    [...thin, density(5, 66), density(5.5, 66)],
    [...thin, density(5, 66, { sure: true })],
  ]) {
    const meant = after(entries, 6);
    expect(meant.view.marks.at(-1)).toMatchObject({ questioned: false, doubt: null });
    expect(Math.abs(meant.now.brix! - 66)).toBeLessThan(2);
  }
  // One press too many is no second look.
  expect(after([...thin, density(5, 66), density(5.1, 66)], 6).view.marks.at(-1)!.questioned).toBe(true);
});

test('the same of a depth', () => {
  const first = after([poured, depth(5, 40)], 6);
  expect(first.view.marks.at(-1)).toMatchObject({
    questioned: true,
    doubt: 'Back pot: 40 mm is far from what went in and boiled away.',
  });
  expect(first.now.depth_mm!).toBeGreaterThan(100);
  for (const entries of [
    [poured, depth(5, 40), depth(5.5, 42)],
    [poured, depth(5, 40, { sure: true })],
  ]) {
    const meant = after(entries, 6);
    expect(meant.view.marks.at(-1)!.questioned).toBe(false);
    expect(Math.abs(meant.now.depth_mm! - 40)).toBeLessThan(8);
  }
});

test.each([
  [80, 1, { sure: true }],
  [80, 10, {}],
  [90, 1, {}],
] as const)(
  'a ruler in the pan goes before a count: %s mm noted after %s min are shown to a few mm, beside what was counted',
  (mm, minutes, meant) => {
    const pot = birch({ vessel: { shape: 'round', diameter_mm: 400 }, heat: { kind: 'propane', power_w: 9000 } });
    const filled = [at(0, { kind: 'top-up', pan: 'p1', litres: 12, brix: 1 }), read(0.5, birchAt(1))];
    const counted = after(filled, minutes, pot).now.depth_mm!;
    const { now, view } = after([...filled, depth(minutes, mm, meant)], minutes, pot);
    expect(counted).toBeGreaterThan(mm + 8);
    expect(Math.abs(now.depth_mm! - mm)).toBeLessThan(2);
    const { depths } = view.marks.at(-1)!;
    expect(depths!.countedMm).toBeCloseTo(counted, 1);
    expect(depths!.takenMm).toBeCloseTo(now.depth_mm!, 1);
    // What was left out stands beside nothing, and where nobody had told of an amount there was no count.
    expect(after([...filled, depth(minutes, 20)], minutes, pot).view.marks.at(-1)!.depths).toBeUndefined();
    expect(after([depth(minutes, mm, meant)], minutes, pot).view.marks.at(-1)!.depths).toBeUndefined();
  },
);

test('a ruler that agrees with the count moves it no more than the two are known to', () => {
  const pot = birch({ vessel: { shape: 'round', diameter_mm: 400 } });
  const filled = [at(0, { kind: 'top-up', pan: 'p1', litres: 12, brix: 1 })];
  const counted = after(filled, 1, pot).now.depth_mm!;
  const { now } = after([...filled, depth(1, counted - 3)], 1, pot);
  expect(now.depth_mm!).toBeLessThan(counted - 1);
  expect(now.depth_mm!).toBeGreaterThan(counted - 3);
});

test('of a depth of a few millimetres that its person stands by, the amount is said and acts, and no depth is asked for at once', () => {
  const { now, view, calls } = after([poured, read(2, birchAt(1)), depth(5, 8, { sure: true })], 6);
  // A minute at full flame took 1 to 2 mm of it.
  expect(now.depth_mm).toBeGreaterThan(6);
  expect(now.depth_mm).toBeLessThan(8);
  expect(view.advice[0]?.ask ?? null).not.toBe('depth');
  expect(calls.some((call) => call.startsWith('p1 low-level'))).toBe(true);
});

test('a depth over the rim is a mistake, not a figure', () => {
  const { now, view } = after([depth(5, 300)], 6);
  expect(view.marks.at(-1)).toMatchObject({
    questioned: true,
    doubt: 'Back pot: 300 mm is deeper than the vessel itself, which is 280 mm high.',
  });
  expect(now.depth_mm).toBeNull();
});

test('what was left out counts once a note that came late explains it', () => {
  const late = at(6, { kind: 'draw-off', pan: 'p1', litres: 7, happened: 4 * MINUTE_MS });
  expect(after([poured, depth(5, 40), late], 7).view.marks[1]).toMatchObject({ questioned: false, doubt: null });
});

test('an instrument that shows the finish, or less by what a stem is read to, finishes the pan', () => {
  const rising = [1, 5, 9, 13].map((minutes) => read(minutes, birchAt(64 + minutes / 8)));
  for (const [brix, stage] of [
    [67, 'finished'],
    [66.8, 'finished'],
    [66, 'near-finish'],
  ] as const)
    expect(after([...rising, density(13.5, brix)], 14).now.stage).toBe(stage);
  expect(after([...rising, density(13.5, 67)], 14).calls).toContain('p1 finish raised');
});

test('what a density teaches of the thermometer in the hand goes for what it read before, too', () => {
  const typed = birchAt(67) + 0.5;
  const once = after([read(5, typed), density(5.2, 64)], 6);
  const twice = after([read(5, typed), density(5.2, 64), density(5.9, 64)], 6);
  expect(once.now.temperature_c!).toBeLessThan(typed - 0.4);
  // The second is held against what was read, not against what was made of it.
  expect(Math.abs(twice.now.temperature_c! - once.now.temperature_c!)).toBeLessThan(0.3);
  expect(twice.view.marks.every(({ questioned }) => !questioned)).toBe(true);
});

test('a density is held against a reading no closer than water point and thermometer are known', () => {
  const thin = (brix: number) => after([read(5, birchAt(1) + 0.3), density(5.5, brix)], 6).view.marks.at(-1)!;
  expect(thin(2.5)).toMatchObject({ questioned: false, doubt: null });
  expect(thin(60)).toMatchObject({ questioned: true, doubt: expect.stringContaining('the thermometer') });
});

test.each([48, 38])('a call says what was read last, %s °Bx, till it is ended, not what it was raised by', (brix) => {
  const thick = at(0, { kind: 'top-up', pan: 'p1', litres: 6, brix: 40, celsius: 98 });
  const entries = [thick, read(12, birchAt(60), { sure: true }), read(21, birchAt(brix), { sure: true })];
  const whyAt = (minutes: number) => after(entries, minutes).view.alarms.find((one) => one.alarm === 'near-finish')!;
  expect(whyAt(20.9)).toMatchObject({
    condition: 'active',
    why: expect.stringMatching(/by hand 9 min ago$/) as string,
  });
  expect(whyAt(21.2)).toMatchObject({ condition: 'active', why: expect.stringMatching(/by hand just now$/) as string });
});

test('a pan that was called burnt by its count is not, once an instrument shows that it is far from it', () => {
  const thick = at(0, { kind: 'top-up', pan: 'p1', litres: 3, brix: 45, celsius: 98 });
  const entries = [thick, read(2, birchAt(46)), density(12, 36, { sure: true })];
  const burns = (minutes: number): boolean =>
    after(entries, minutes).view.alarms.some((one) => one.alarm === 'scorch-risk' && one.condition === 'active');
  expect(burns(11.9)).toBe(true);
  expect(burns(13)).toBe(false);
});

test('a shallow pan that is read cooler than it was counted is as strong as it is read, and its call to burn ends', () => {
  const header = tarnHollow({
    probes: [],
    pans: [
      {
        id: 'p1',
        name: 'Back pot',
        sap: 'birch',
        vessel: { shape: 'round', diameter_mm: 300 },
        heat: { ...heat, power_w: 4500 },
      },
    ],
  });
  // Some 1.4 L is 20 mm deep; by its count the fire, turned down since, would have made 65 °Bx of 54 in nine minutes.
  const entries = [at(0, { kind: 'top-up', pan: 'p1', litres: 8, brix: 12 }), read(195, birchAt(54))];
  const called = ({ view }: ReturnType<typeof after>) =>
    view.alarms.filter(({ condition }) => condition === 'active').map(({ alarm }) => alarm);
  const counted = after(entries, 203, header);
  expect(counted.now.brix!).toBeGreaterThan(64);
  expect(called(counted)).toContain('scorch-risk');
  const shown = after([...entries, read(204, birchAt(58))], 204.5, header);
  // Its thermometer was not checked: what the count says of its error stays with it.
  expect(Math.abs(shown.now.brix! - 58)).toBeLessThan(4);
  expect(called(shown)).toEqual(['near-finish', 'low-level']);
});

test('a pot that stands empty on purpose is empty, and nothing is asked of it until something is in it', () => {
  const two = tarnHollow({
    probes: [],
    pans: [
      { id: 'p1', name: 'Back pot', sap: 'birch', vessel, heat },
      { id: 'p2', name: 'Stove pot', sap: 'birch', vessel, heat },
    ],
  });
  const empty = at(1, { kind: 'depth', pan: 'p2', mm: 0, id: 'd' });
  const stove = (entries: Entry[]) => {
    const { state, view } = after([poured, ...entries], 5, two);
    const { litres, stage } = readingAt(state, 'p2', 5 * MINUTE_MS);
    return { litres, stage, next: `${view.next.what} ${view.next.pan}`, notices: view.notices };
  };
  expect(stove([])).toMatchObject({ litres: null, stage: 'unknown', next: 'read-by-hand p1' });
  expect(stove([empty])).toEqual({ litres: 0, stage: 'off', next: 'read-by-hand p1', notices: [] });
  const full = stove([empty, at(2, { kind: 'top-up', pan: 'p2', litres: 3, brix: 40, celsius: 98 })]);
  expect(full.litres!).toBeGreaterThan(2);
  expect(full.stage).not.toBe('off');
  // What was read in it, or a note that was taken back, leaves it as unknown as before.
  expect(stove([empty, at(3, { kind: 'reading', pan: 'p2', celsius: birchAt(1) })]).litres).toBeNull();
  expect(stove([empty, at(2, { kind: 'withdraw', id: 'd' })])).toMatchObject({ litres: null, stage: 'unknown' });
});

test('a pan of which an amount was noted is not empty by a stick that shows nothing', () => {
  expect(after([poured, depth(1, 0)], 2).now.litres!).toBeGreaterThan(8);
});

test('a probe that shows a finish in a pot that was noted as empty calls all the same', () => {
  const one = tarnHollow({
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', vessel, heat, probe: 'A/1' }],
  });
  const shown = lines(0, 10 * MINUTE_MS, { T1: (t) => Math.min(birchAt(67.5), 20 + t / 3000) });
  const { transitions } = foldAll(one, inOrder([depth(0.1, 0)], shown), 10 * MINUTE_MS);
  expect(told(transitions)).toContain('p1 finish raised');
});

test('a pan that cannot have had the heat for what is read of it is asked about, and believed when it is typed again', () => {
  const full = at(0, { kind: 'top-up', pan: 'p1', litres: 12.5, brix: 2 });
  const seconds = (s: number, celsius: number, more: Partial<Mark> = {}): Entry => read(2 + s / 60, celsius, more);
  const asked = (entries: Entry[], header = birch()) =>
    notices([full, ...entries], 5, header).filter((sentence) => sentence.includes('so fast'));
  for (const power of [{}, { power_w: 16_000 }]) {
    const pot = birch({ heat: { kind: 'propane', ...power } });
    const [sentence] = asked([seconds(0, 45), seconds(55, 99.4)], pot);
    expect(sentence).toMatch(
      /^Back pot: 99\.4 °C was read, 55 s after 45\.0 °C: no burner heats 12\.\d L so fast\. Until it/u,
    );
    expect(formOf(sentence!)).toMatchObject({ values: { doubt: expect.stringContaining('so fast.') } });
    expect(formOf(formOf(sentence!)!.values['doubt']!)?.key).toBe('host.notice.hand_fast');
    expect(after([full, seconds(0, 45), seconds(55, 99.4)], 3, pot).now.stage).toBe('warming');
    for (const again of [[seconds(55, 99.4), seconds(60, 99.4)], [seconds(55, 99.4, { sure: true })]])
      expect(after([full, seconds(0, 45), ...again], 4, pot).now.stage).toBe('boiling');
  }
  // 12.5 L by 54 °C are 2.8 MJ, of which 16 kW bring 0.9 in a minute and a stronger burner all.
  expect(asked([seconds(0, 45), seconds(200, 99.4)])).toEqual([]);
  expect(asked([seconds(0, 45), seconds(55, 99.4)], birch({ heat: { kind: 'electric', power_w: 60_000 } }))).toEqual(
    [],
  );
  expect(asked([seconds(0, 45), seconds(55, 55)])).toEqual([]);
  // What was poured in of no warmth that anybody noted may have been boiled before; what was noted as cold was not.
  expect(asked([seconds(55, 99.4)])).toEqual([]);
  const cold = at(0, { kind: 'top-up', pan: 'p1', litres: 12.5, brix: 2, celsius: 4 });
  expect(notices([cold, read(1, 99.4)], 2)).toEqual([expect.stringContaining('60 s after 4.0 °C: no burner')]);
  const topped = at(2.5, { kind: 'top-up', pan: 'p1', litres: 5, brix: 2 });
  expect(asked([seconds(0, 45), topped, seconds(55, 99.4)])).toEqual([]);
});

test('a pan that is read at its finish is called, however fast it came there', () => {
  const full = at(0, { kind: 'top-up', pan: 'p1', litres: 5, brix: 60 });
  const { calls } = after([full, read(2, 45), read(2.5, birchAt(67.3))], 4);
  expect(calls).toContain('p1 finish raised');
});

test('of a thermometer that nobody checked and that shows a little too much it is said once, and nothing is left out', () => {
  // 213.4 °F typed for 211.4, in a pan just filled with sap of 1 °Bx.
  const slip = birchAt(1) + 2 / 1.8;
  const { view, now } = after([poured, read(2, slip, { id: 'r' } as Partial<Mark>)], 3);
  expect(view.notices).toEqual([
    expect.stringMatching(
      /^Back pot: by what was noted of it, it boils at about 100\.\d °C, and this thermometer showed 101\.\d+ °C: one/u,
    ),
  ]);
  expect(formOf(view.notices[0]!)?.key).toBe('host.notice.hand_off');
  expect(view.marks.map(({ doubt }) => doubt)).toEqual([null, null]);
  expect(now.stage).toBe('boiling');
  const said = (entries: Entry[]): string[] => after(entries, 4).state.notices.map(({ sentence }) => sentence);
  expect(said([poured, read(2, slip), read(23, slip + 0.4)])).toHaveLength(1);
  // It goes with its reading.
  const back = at(2.5, { kind: 'withdraw', id: 'r' });
  expect(notices([poured, read(2, slip, { id: 'r' } as Partial<Mark>), back], 3)).toEqual([]);
  expect(said([poured, read(2, birchAt(1) + 0.8)])).toEqual([]);
  const checked = at(0, { kind: 'water-check', celsius: boilingAt(0, 'birch') + 1 });
  expect(said([checked, poured, read(2, slip)])).toEqual([]);
});
