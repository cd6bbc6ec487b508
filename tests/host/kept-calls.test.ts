// Calls of a running boil: each is on disk before it is told, and the program's own alarms are answered and taken up like the pans'.
import { afterEach, expect, test } from 'vitest';
import type { Entry } from '../../src/core/boil/entries.ts';
import { advance, applyEntry, type BoilState, startBoil } from '../../src/core/boil/fold.ts';
import { boilView } from '../../src/core/boil/view.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { TARN_HEADER, tarnBoil } from './tarn-boil.ts';

let boil: ReturnType<typeof tarnBoil>;
afterEach(() => boil.close());

function heat(seconds: number): void {
  for (let second = 0; second < seconds; second += 1) {
    boil.line(97 + (second % 3) / 10);
    boil.machine.run(1000);
  }
}

/** Nothing comes, and the source says so once a second. */
function wait(seconds: number): void {
  for (let second = 0; second < seconds; second += 1) {
    boil.machine.run(1000);
    boil.send({ kind: 'idle', t: boil.run.snapshot().t });
  }
}

function foldedAgain(): BoilState {
  const entries = boil.entries() as Entry[];
  const state = entries.reduce((before, entry) => applyEntry(before, entry, foldTools), startBoil(TARN_HEADER));
  return advance(state, entries.at(-1)!.t);
}

const shown = () => boil.run.snapshot().alarms.map(({ alarm, answered, condition }) => [alarm, answered, condition]);

test('every call is on disk before it is told', async () => {
  boil = tarnBoil();
  heat(20);
  wait(40);
  boil.run.own('no-sound', true, 'no page can sound');
  await boil.run.answer({ acknowledge: { pan: 'p1', alarm: 'probe-lost' } });
  heat(20);
  expect(boil.heard.alarms.map(({ alarm, event }) => `${alarm} ${event}`)).toEqual([
    'probe-lost raised',
    'no-sound raised',
    'probe-lost acknowledged',
    'probe-lost cleared',
  ]);
  const places = boil.entries().flatMap((entry, index) => ('called' in entry ? [index + 1] : []));
  boil.heard.keptWhenTold.forEach((kept, index) => expect(kept).toBeGreaterThanOrEqual(places[index]!));
});

test('a probe that says it is broken is called within two milliseconds, though nothing else comes; a silent one at its moment', () => {
  boil = tarnBoil();
  heat(20);
  boil.machine.run(313);
  const brokenT = boil.run.snapshot().t;
  boil.send({ kind: 'entry', entry: { t: brokenT, port: 'A', line: 'T1=nan' } });
  boil.machine.run(2);
  expect(boil.heard.alarms.map(({ alarm, t }) => [alarm, t])).toEqual([['probe-lost', brokenT]]);
  heat(10);
  // The last line came a second ago; five periods of a second make it lost.
  boil.machine.run(4002);
  expect(boil.heard.alarms.at(-1)).toMatchObject({ alarm: 'probe-lost', event: 'raised' });
});

test('a bad contact that says "broken" five hundred times in a second is one call', () => {
  boil = tarnBoil();
  heat(20);
  const before = boil.entries().length;
  for (let i = 0; i < 1000; i += 1) {
    boil.send({
      kind: 'entry',
      entry: { t: boil.run.snapshot().t, port: 'A', line: i % 2 === 0 ? 'T1=nan' : 'T1=97.1' },
    });
    boil.machine.run(1);
  }
  boil.machine.run(1000);
  expect(boil.heard.alarms.map(({ event }) => event)).toEqual(['raised']);
  expect(boil.entries().length).toBeGreaterThan(before + 1000);
});

test('while nothing can be written a call is told all the same', () => {
  boil = tarnBoil();
  heat(20);
  boil.disk.full = true;
  wait(40);
  expect(boil.heard.alarms.map(({ alarm }) => alarm)).toContain('probe-lost');
  boil.disk.full = false;
  wait(2);
});

test('an alarm of the program is listed, answered and over, and said again it is no second one', async () => {
  boil = tarnBoil();
  boil.run.own('power-low', true, '20 min left');
  boil.run.own('power-low', true, '19 min left');
  expect(shown()).toEqual([['power-low', false, 'active']]);
  expect(boil.run.snapshot().sound.priority).toBe('medium');
  expect(await boil.run.answer({ acknowledge: { pan: null, alarm: 'power-low' } })).toEqual({ ok: true });
  expect(boil.run.snapshot().sound.priority).toBeNull();
  boil.run.own('power-low', false, 'mains power is back');
  boil.run.own('power-low', false, 'mains power is back');
  expect(shown()).toEqual([]);
  expect(boil.heard.alarms.map(({ event }) => event)).toEqual(['raised', 'acknowledged', 'cleared']);
});

test('an alarm of the program is put aside with an end, and then sounds again', async () => {
  boil = tarnBoil();
  boil.run.own('no-sound', true, 'no page can sound');
  const put_aside = { pan: null, alarm: 'no-sound', seconds: 300, reason: 'the speaker is being fetched' };
  expect(await boil.run.answer({ put_aside })).toEqual({ ok: true });
  expect(boil.run.snapshot().sound.priority).toBeNull();
  heat(302);
  expect(boil.run.snapshot().sound.priority).toBe('medium');
  expect(boil.heard.alarms.map(({ event }) => event)).toEqual(['raised', 'put-aside', 'returned']);
});

test('a restart shows the same alarms in the same state, those of the program too', async () => {
  boil = tarnBoil();
  heat(20);
  wait(40);
  boil.run.own('no-sound', true, 'no page can sound');
  boil.run.own('power-low', true, '20 min left');
  await boil.run.answer({ acknowledge: { pan: null, alarm: 'no-sound' } });
  await boil.run.answer({ put_aside: { pan: 'p1', alarm: 'probe-lost', seconds: 600, reason: 'a new one is coming' } });
  const live = boil.run.snapshot();
  const again = boilView(foldedAgain(), live.t);
  expect(live.alarms).toHaveLength(3);
  expect(again.alarms).toEqual(live.alarms);
  expect(again.sound).toEqual(live.sound);
  expect(again.history).toEqual(live.history);
});

test('when the boil is over nothing calls any more, and the look back at it stays', async () => {
  boil = tarnBoil();
  heat(20);
  wait(40);
  await boil.run.answer({ acknowledge: { pan: 'p1', alarm: 'probe-lost' } });
  boil.run.own('no-sound', true, 'no page can sound');
  expect(await boil.run.end()).toEqual({ ok: true });
  boil.run.own('power-low', true, '20 min left');
  const { alarms, sound, unanswered, history } = boil.run.snapshot();
  expect({ alarms, sound, unanswered }).toEqual({
    alarms: [],
    sound: { priority: null, silencedUntil: null },
    unanswered: null,
  });
  expect(history.lookBack).toMatchObject({ raised: 2, answered: 1 });
});

test('a call of the program that stands in a record is shown again and not made again', () => {
  boil = tarnBoil();
  const state = startBoil(TARN_HEADER);
  const called = { pan: null, alarm: 'no-sound', event: 'raised', priority: 'medium', why: 'no device' } as const;
  applyEntry(state, { t: 5, called }, foldTools);
  expect(state.fresh).toEqual([]);
  expect(boilView(state, 5).alarms).toMatchObject([{ alarm: 'no-sound', why: 'no device' }]);
});

test('a word on an alarm is taken for one that was raised, and refused for one that was not', async () => {
  boil = tarnBoil();
  heat(20);
  wait(40);
  const raised = boil.heard.alarms[0]!.t;
  const about = { alarm: 'probe-lost', pan: 'p1', raised };
  const note = { kind: 'note', text: 'this was no use', no_use: true } as const;
  expect(await boil.run.mark({ ...note, about: { ...about, raised: raised + 1 } })).toMatchObject({ ok: false });
  expect(await boil.run.mark({ ...note, about })).toEqual({ ok: true });
  expect(boil.run.snapshot().history.raisings).toMatchObject([{ alarm: 'probe-lost', noUse: true }]);
  expect(boil.run.snapshot().history.lookBack.noUse).toBe(1);
});
