// Checks the fold itself: one story whatever the calls between, late marks, changed setups, gaps, reminders and kept states.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { advance, applyEntry, enterGap, startBoil } from '../../../src/core/boil/fold.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import {
  boilingAt,
  foldAll,
  foldOn,
  inOrder,
  lines,
  mark,
  onePot,
  readingAt,
  steadyCelsius,
  tarnHollow,
  told,
  tools,
  waterCelsius,
} from './tarn-hollow.ts';

const MINUTE_MS = 60_000;
const water = waterCelsius(1013.25);

/** The back pot runs through its finish, the front pot's probe breaks and comes back, people pour, answer and move things. */
function eventfulBoil(): Entry[] {
  const stream = randomStream(2, 'eventful');
  const back = { fromBrix: 50, k: 8e-4, start: 60_000, sap: 'maple' as const };
  const noise = (): number => 0.08 * nextNormal(stream);
  const front = (t: number): number | null => (t > 300_000 && t < 350_000 ? null : water + 0.3 + noise());
  return inOrder(lines(137, 900_000, { T1: (t) => steadyCelsius(back, t) + noise(), T2: front }), [
    { t: 0, port: 'A', state: 'open' },
    mark(10_000, { kind: 'top-up', pan: 'p1', litres: 4, brix: 50 }),
    mark(20_000, { kind: 'remind', text: 'stir', seconds: 90 }),
    { t: 200_500, answer: { acknowledge: { pan: 'p1', alarm: 'near-finish' } } },
    { t: 305_100, answer: { acknowledge: { pan: 'p2', alarm: 'probe-lost' } } },
    mark(400_000, { kind: 'pressure', hpa: 1010 }),
    { t: 450_000, set: { settings: { near_finish_lead_s: 900 } } },
    { t: 500_000, answer: { put_aside: { pan: 'p1', alarm: 'finish', seconds: 60, reason: 'filter first' } } },
    { t: 520_000, answer: { silence: { seconds: 30 } } },
    mark(700_000, { kind: 'top-up', pan: 'p2', litres: 3, happened: 650_000 }),
    { t: 750_000, port: 'A', state: 'lost' },
    { t: 770_000, port: 'A', state: 'open' },
  ] as Entry[]);
}

test('the same entries give the same calls and the same state, whenever somebody looks in between', () => {
  const entries = eventfulBoil();
  const until = 960_000;
  const plain = foldAll(tarnHollow(), entries, until);
  expect(new Set(told(plain.transitions))).toContain('p1 finish raised');
  expect(new Set(told(plain.transitions))).toContain('p2 probe-lost raised');
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: until }), { maxLength: 300 }), (looks) => {
      const folded = foldAll(tarnHollow(), entries, until, looks);
      expect(folded.transitions).toEqual(plain.transitions);
      expect({ ...folded.state, fresh: [] }).toEqual({ ...plain.state, fresh: [] });
    }),
    { numRuns: 40 },
  );
});

test('calls come in order of time, none later than the moment that was run to', () => {
  const { transitions } = foldAll(tarnHollow(), eventfulBoil(), 960_000);
  const times = transitions.map(({ t }) => t);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  expect(times.at(-1)).toBeLessThanOrEqual(960_000);
});

test('a cloned state folds on as the one that it was cloned from: a snapshot is as good as the start', () => {
  const entries = eventfulBoil();
  const whole = foldAll(tarnHollow(), entries, 960_000);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: entries.length }), (cut) => {
      const first = entries
        .slice(0, cut)
        .reduce((state, entry) => applyEntry(state, entry, tools), startBoil(tarnHollow()));
      const second = foldOn(structuredClone(first), entries.slice(cut), 960_000);
      expect({ ...second.state, fresh: [] }).toEqual({ ...whole.state, fresh: [] });
    }),
    { numRuns: 20 },
  );
});

test('a clone shares nothing with its original', () => {
  const entries = eventfulBoil();
  const { state } = foldAll(tarnHollow(), entries.slice(0, 200), 0);
  const kept = structuredClone(state);
  foldOn(structuredClone(state), entries.slice(200), 960_000);
  expect(state).toEqual(kept);
});

test('a silent probe is lost at its very moment, between two ticks', () => {
  const entries = lines(137, 60_000, { T1: () => water });
  const { transitions } = foldAll(onePot(), entries, 120_000);
  const last = entries.at(-1)!.t;
  expect(transitions.map(({ t, alarm, event }) => [t, alarm, event])).toEqual([[last + 5000, 'probe-lost', 'raised']]);
});

test('a lost probe is heard again: its alarm is over but still to be seen', () => {
  const heard = (t: number): number | null => (t >= 60_000 && t < 90_000 ? null : water);
  const { state, transitions } = foldAll(onePot(), lines(0, 120_000, { T1: heard }), 120_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised', 'p1 probe-lost cleared']);
  expect(boilView(state, 120_000).alarms).toMatchObject([{ alarm: 'probe-lost', condition: 'over', answered: false }]);
});

test('nothing is known of a pan whose probe is broken, and no alarm of it ends by that', () => {
  const celsius = boilingAt(68, 'maple');
  const good = lines(0, 120_000, { T1: () => celsius });
  const broken: Entry[] = lines(120_000, 180_000, { T1: () => 0 }).map(({ t }) => ({ t, port: 'A', line: 'T1=fault' }));
  const { state, transitions } = foldAll(onePot('maple', { brix: 67.5 }), [...good, ...broken], 180_000);
  expect(told(transitions)).toEqual(['p1 finish raised', 'p1 probe-lost raised']);
  expect(readingAt(state, 'p1', 180_000)).toMatchObject({
    temperature_c: null,
    rise_c: null,
    brix: null,
    probe: 'broken',
  });
});

test('port-lost stands for the probes behind it, and is over when the port is back', () => {
  const entries = inOrder(
    lines(0, 60_000, { T1: () => water, T2: () => water }),
    lines(90_000, 120_000, { T1: () => water, T2: () => water }),
    [
      { t: 0, port: 'A', state: 'open' },
      { t: 60_000, port: 'A', state: 'lost' },
      { t: 89_000, port: 'A', state: 'open' },
    ] as Entry[],
  );
  const { transitions } = foldAll(tarnHollow(), entries, 120_000);
  expect(told(transitions)).toEqual(['A port-lost raised', 'A port-lost cleared']);
});

test('a lost probe does not turn well because its port was opened again', () => {
  const entries = inOrder(lines(0, 60_000, { T1: () => water }), [
    { t: 0, port: 'A', state: 'open' },
    { t: 90_000, port: 'A', state: 'open' },
  ] as Entry[]);
  const { transitions } = foldAll(onePot(), entries, 180_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised']);
});

test('noise around the finish makes one call', () => {
  for (const seed of [1, 2, 3, 4, 5]) {
    const stream = randomStream(seed, 'around the finish');
    const celsius = boilingAt(66.9, 'maple');
    const around = lines(0, 30 * MINUTE_MS, { T1: () => celsius + 0.2 * nextNormal(stream) });
    const { transitions } = foldAll(onePot(), around, 30 * MINUTE_MS);
    const finish = told(transitions).filter((one) => one.startsWith('p1 finish'));
    expect(finish, `seed ${seed}`).toEqual(['p1 finish raised']);
  }
});

test.each([0, 1, 2, 3])('one wild reading makes no call (at %i s of a block)', (second) => {
  const wild = 120_000 + second * 1000;
  const celsius = boilingAt(40, 'maple');
  for (const spike of [-60, 10, 60, 750]) {
    const heard = lines(0, 300_000, { T1: (t) => (t === wild ? celsius + spike : celsius) });
    expect(told(foldAll(onePot(), heard, 300_000).transitions), `${spike} °C`).toEqual([]);
  }
});

test('lines held for a minute and sent at once make no rate and no call but the lost probe', () => {
  const celsius = boilingAt(40, 'maple');
  const before = lines(0, 120_000, { T1: () => celsius });
  const held = Array.from({ length: 60 }, (): Entry => ({ t: 180_000, port: 'A', line: `T1=${celsius.toFixed(2)}C` }));
  const after = lines(181_000, 240_000, { T1: () => celsius });
  const { state, transitions } = foldAll(onePot(), [...before, ...held, ...after], 240_000);
  expect(told(transitions)).toEqual(['p1 probe-lost raised', 'p1 probe-lost cleared']);
  expect(Math.abs(readingAt(state, 'p1', 240_000).rate_c_per_min!)).toBeLessThan(0.05);
});

const pan = (id: string, probe?: string) => ({ id, name: id, ...(probe && { probe }) });

test('a pan that joins in the middle is read from then on, and the others go on', () => {
  const entries = inOrder(lines(0, 240_000, { T1: () => boilingAt(40, 'maple'), T2: () => boilingAt(50, 'maple') }), [
    { t: 120_000, set: { pans: [pan('p1', 'A/1'), pan('p3', 'A/2')], probes: tarnHollow().probes } },
  ]);
  const { state } = foldAll(onePot(), entries, 240_000);
  expect(Math.abs(readingAt(state, 'p1', 240_000).brix! - 40)).toBeLessThan(0.3);
  expect(Math.abs(readingAt(state, 'p3', 240_000).brix! - 50)).toBeLessThan(0.3);
});

test('a finish that is moved up ends its call, and moved back makes a new one', () => {
  const finish = (brix: number) => ({ pans: [{ ...pan('p1', 'A/1'), finish: { brix } }] });
  const entries = inOrder(lines(0, 360_000, { T1: () => boilingAt(62, 'maple') }), [
    { t: 120_000, set: finish(68) },
    { t: 240_000, set: finish(61.5) },
  ] as Entry[]);
  const { transitions } = foldAll(onePot('maple', { brix: 61.5 }), entries, 360_000);
  expect(told(transitions)).toEqual(['p1 finish raised', 'p1 finish cleared', 'p1 finish raised']);
});

test('two probes that were set up crosswise are put right: no rate and no call comes of the change', () => {
  const entries = inOrder(lines(0, 400_000, { T1: () => boilingAt(65, 'maple'), T2: () => boilingAt(3, 'maple') }), [
    { t: 180_000, set: { pans: [pan('p1', 'A/2'), pan('p2', 'A/1')] } },
  ]);
  for (let t = 185_000; t <= 400_000; t += 5000) {
    const { state } = foldAll(
      tarnHollow(),
      entries.filter((entry) => entry.t <= t),
      t,
    );
    const rates = ['p1', 'p2'].map((id) => Math.abs(readingAt(state, id, t).rate_c_per_min ?? 0));
    expect(Math.max(...rates), `at ${t} ms`).toBeLessThan(0.2);
  }
  const { state, transitions } = foldAll(tarnHollow(), entries, 400_000);
  expect(told(transitions)).toEqual([]);
  expect(Math.abs(readingAt(state, 'p1', 400_000).brix! - 3)).toBeLessThan(1);
  expect(Math.abs(readingAt(state, 'p2', 400_000).brix! - 65)).toBeLessThan(0.3);
});

test('one probe that goes round by marks is read in the pan where it hangs', () => {
  const header = tarnHollow({ probes: [{ id: 'A/1', port: 'A', channel: 'T1' }], pans: [pan('p1', 'A/1'), pan('p2')] });
  const at = (t: number): number => (t < 180_000 ? boilingAt(30, 'maple') : boilingAt(60, 'maple'));
  const entries = inOrder(lines(0, 400_000, { T1: at }), [
    mark(180_000, { kind: 'move-probe', probe: 'A/1', pan: 'p2' }),
  ]);
  const { state, transitions } = foldAll(header, entries, 400_000);
  expect(readingAt(state, 'p1', 400_000)).toMatchObject({ temperature_c: null, brix: null, probe: null });
  expect(Math.abs(readingAt(state, 'p2', 400_000).brix! - 60)).toBeLessThan(0.3);
  expect(told(transitions)).toEqual([]);
});

test('alarms of a pan that leaves the boil are over, not active for ever', () => {
  const entries = inOrder(lines(0, 180_000, { T1: () => boilingAt(68, 'maple'), T2: () => water }), [
    { t: 120_000, set: { pans: [pan('p2', 'A/2')], probes: [{ id: 'A/2', port: 'A', channel: 'T2' }] } },
  ]);
  const { state, transitions } = foldAll(tarnHollow(), entries, 180_000);
  expect(told(transitions)).toContain('p1 past-finish raised');
  expect(boilView(state, 180_000).alarms.filter((alarm) => alarm.condition === 'active')).toEqual([]);
});

test('a setup that does not hold together is kept out, with a sentence', () => {
  const entries: Entry[] = [{ t: 1000, set: { pans: [pan('p1', 'Z/9')] } }];
  const { state } = foldAll(tarnHollow(), entries, 2000);
  expect(state.header).toEqual(tarnHollow());
  expect(state.notices).toHaveLength(1);
  expect(state.notices[0]?.sentence).toMatch(/^A change of the setup could not be used: .*Z\/9/u);
});

test('what this build does not know changes nothing', () => {
  const unknown = [
    { t: 500, unknown: true },
    { t: 600, called: { pan: 'p1', alarm: 'finish', event: 'raised', priority: 'high', why: 'then' } },
    { t: 700, mark: { kind: 'a-mark-of-a-later-build', pan: 'p1' } },
    { t: 800, port: 'Z', line: 'T1=98C' },
    { t: 900, port: 'A', line: 'T9=98C' },
  ] as unknown as Entry[];
  const known = foldAll(tarnHollow(), [], 10_000);
  const with_ = foldAll(tarnHollow(), unknown, 10_000);
  expect(with_.transitions).toEqual(known.transitions);
  expect(with_.state.pans).toEqual(known.state.pans);
});

test('a channel that no probe names is offered, with its own number', () => {
  const { state } = foldAll(onePot(), [{ t: 1000, port: 'A', line: 'T1=98C T7=55C' }], 2000);
  expect(boilView(state, 2000).probes).toMatchObject([
    { id: 'A/1', celsius: 98 },
    { id: 'A T7', pan: null, celsius: 55 },
  ]);
});

test('after the end nothing is called and nothing changes', () => {
  const entries: Entry[] = [
    ...lines(0, 30_000, { T1: () => water }),
    { t: 30_000, run: 'ended' },
    ...lines(60_000, 90_000, { T1: () => 120 }),
  ];
  const { state, transitions } = foldAll(onePot(), entries, 600_000);
  expect(transitions).toEqual([]);
  expect(state.now).toBeLessThanOrEqual(30_000);
});

const gap = (t: number, seconds: number): Entry => ({ t, run: 'gap', seconds });

test('inside a gap nothing is called, after it nothing recent is known, and the pan is taken to have boiled on', () => {
  const celsius = boilingAt(40, 'maple');
  const before = inOrder(
    [mark(0, { kind: 'top-up', pan: 'p1', litres: 10, brix: 40 })],
    lines(0, 300_000, { T1: () => celsius }),
  );
  const stopped = foldAll(onePot(), before, 299_000);
  const litres = readingAt(stopped.state, 'p1', 299_000).litres!;
  const after = foldOn(stopped.state, [gap(2_100_000, 1800)], 2_100_000);
  expect(stopped.transitions).toEqual([]);
  expect(after.transitions).toEqual([]);
  expect(readingAt(after.state, 'p1', 2_100_000)).toMatchObject({
    temperature_c: null,
    rise_c: null,
    rate_c_per_min: null,
  });
  const { litres: left } = readingAt(after.state, 'p1', 2_100_000);
  expect(left!).toBeLessThan(litres);
  expect(left!).toBeGreaterThan(0.5 * litres);
});

test('what was before a gap has no part in rate or forecast after it', () => {
  const before = lines(0, 300_000, { T1: () => boilingAt(55, 'maple') });
  const later = lines(421_000, 600_000, { T1: () => boilingAt(62, 'maple') });
  const stopped = foldAll(onePot('maple', { brix: 67 }), before, 299_000);
  let folded = foldOn(stopped.state, [gap(420_000, 120)], 420_000);
  for (const entry of later) {
    folded = foldOn(folded.state, [entry], entry.t);
    expect(folded.transitions, `at ${entry.t} ms`).toEqual([]);
    const { rate_c_per_min: rate, finish_in_s: finish } = readingAt(folded.state, 'p1', entry.t);
    expect(Math.abs(rate ?? 0), `at ${entry.t} ms`).toBeLessThan(0.2);
    expect(finish, `at ${entry.t} ms`).toBeNull();
  }
  expect(Math.abs(readingAt(folded.state, 'p1', 599_000).brix! - 62)).toBeLessThan(0.3);
});

test('alarms and answers come through a gap as they were', () => {
  const before = inOrder(lines(0, 120_000, { T1: () => boilingAt(68, 'maple') }), [
    { t: 100_000, answer: { acknowledge: { pan: 'p1', alarm: 'past-finish' } } },
  ] as Entry[]);
  const stopped = foldAll(onePot(), before, 119_000);
  const listed = boilView(stopped.state, 119_000).alarms;
  expect(listed).toContainEqual(expect.objectContaining({ alarm: 'past-finish', condition: 'active', answered: true }));
  const after = foldOn(stopped.state, [gap(720_000, 600)], 724_000);
  expect(after.transitions).toEqual([]);
  expect(boilView(after.state, 724_000).alarms).toEqual(listed);
});

test('a probe that was lost before a gap stays lost until it is heard', () => {
  const stopped = foldAll(onePot(), lines(0, 60_000, { T1: () => water }), 120_000);
  expect(told(stopped.transitions)).toEqual(['p1 probe-lost raised']);
  const after = foldOn(stopped.state, [gap(720_000, 600)], 780_000);
  expect(told(after.transitions)).toEqual([]);
  const heard = foldOn(after.state, lines(781_000, 800_000, { T1: () => water }), 800_000);
  expect(told(heard.transitions)).toEqual(['p1 probe-lost cleared']);
});

test('a gap that is shown while it lasts is the same as one that is only told afterwards', () => {
  const before = lines(0, 300_000, { T1: () => boilingAt(50, 'maple') });
  const later = lines(900_000, 1_000_000, { T1: () => boilingAt(55, 'maple') });
  const toldAfter = foldAll(onePot(), [...before, gap(900_000, 600), ...later], 1_000_000);
  const shown = foldAll(onePot(), before, 299_000);
  shown.state = enterGap(shown.state, 300_000);
  const shownBefore = foldOn(shown.state, [gap(900_000, 600), ...later], 1_000_000);
  expect({ ...shownBefore.state, fresh: [] }).toEqual({ ...toldAfter.state, fresh: [] });
});

test('a reminder is called when it is due, and is over when it is seen', () => {
  const entries: Entry[] = [
    mark(10_000, { kind: 'remind', text: 'stir the back pot', seconds: 90 }),
    { t: 130_000, answer: { acknowledge: { pan: null, alarm: 'reminder' } } },
  ];
  const { state, transitions } = foldAll(onePot(), entries, 140_000);
  const reminders = transitions.filter(({ alarm }) => alarm === 'reminder');
  expect(reminders.map(({ t, event, why }) => [t, event, why])).toEqual([
    [100_000, 'raised', 'stir the back pot'],
    [130_000, 'acknowledged', 'stir the back pot'],
    [130_000, 'cleared', 'stir the back pot'],
  ]);
  expect(boilView(state, 140_000).alarms.filter(({ alarm }) => alarm === 'reminder')).toEqual([]);
});

test('two reminders of the same moment are both called', () => {
  const entries: Entry[] = [
    mark(1000, { kind: 'remind', text: 'stir', seconds: 60 }),
    mark(1000, { kind: 'remind', text: 'wood', seconds: 60 }),
  ];
  const { transitions } = foldAll(onePot(), entries, 70_000);
  expect(transitions.filter(({ alarm }) => alarm === 'reminder').map(({ why }) => why)).toEqual(['stir', 'wood']);
});

test('a reminder that is withdrawn is not called', () => {
  const entries: Entry[] = [
    mark(1000, { kind: 'remind', text: 'stir', seconds: 60, id: 'm' }),
    mark(30_000, { kind: 'withdraw', id: 'm' }),
  ];
  expect(told(foldAll(onePot(), entries, 120_000).transitions)).not.toContain('all reminder raised');
});

test('a reminder that came due in a gap is called after it', () => {
  const asked = foldAll(onePot(), [mark(1000, { kind: 'remind', text: 'stir', seconds: 300 })], 2000);
  const after = foldOn(asked.state, [gap(602_000, 600)], 610_000);
  expect(told(after.transitions)).toContain('all reminder raised');
});

test('time that is run twice to the same moment does nothing the second time', () => {
  const { state } = foldAll(onePot(), lines(0, 60_000, { T1: () => water }), 120_000);
  const before = structuredClone({ ...state, fresh: [] });
  expect(advance(state, 120_000).fresh).toEqual([]);
  expect({ ...state, fresh: [] }).toEqual(before);
});

test('a pan that is first seen in its last, fast minutes is called all the same', () => {
  const fast = { fromBrix: 60, k: 1e-3, start: 0, sap: 'maple' as const };
  const heard = lines(0, 240_000, { T1: (t) => steadyCelsius(fast, t) });
  const { transitions } = foldAll(onePot(), heard, 240_000);
  expect(told(transitions)).toContain('p1 finish raised');
});
