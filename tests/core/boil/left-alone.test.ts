// What must not be ended by something that says nothing of it: a word on one probe, a finish over what nobody knows, an answer.
import { expect, test } from 'vitest';
import { boilView } from '../../../src/core/boil/view.ts';
import { parseEntry } from '../../../src/protocol/parse-entry.ts';
import { foldAll, inOrder, lines, mark, tarnHollow, told } from './tarn-hollow.ts';

test('a check of one probe ends no word on the check of another', () => {
  const first = mark(1000, { kind: 'water-check', probe: 'A/1', celsius: 80 });
  const other = mark(30_000, { kind: 'water-check', probe: 'A/2', celsius: 99.9 });
  const { state } = foldAll(tarnHollow(), [first, other], 40_000);
  expect(boilView(state, 40_000).notices.join()).toContain('80.0 °C is far from where water boils');
});

test('no count ends the finish of a pan with a ceiling that took in what nobody knows, with a probe in it', () => {
  const header = tarnHollow({
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', finish: { brix: 67, ceiling_c: 94 } }, { id: 'p2' }],
  });
  const noted = [
    mark(1000, { kind: 'top-up', pan: 'p1', litres: 5, brix: 66 }),
    mark(60_000, { kind: 'density', pan: 'p1', brix: 67.2, sure: true }),
    mark(100_000, { kind: 'transfer', from: 'p2', to: 'p1' }),
  ];
  const { transitions } = foldAll(header, inOrder(noted, lines(0, 300_000, { T1: () => 90 })), 300_000);
  expect(told(transitions)).toContain('p1 finish raised');
  expect(told(transitions)).not.toContain('p1 finish cleared');
});

test('another program’s field is no reason to lose an answer', () => {
  const answer = { silence: { seconds: 60 }, by: 5 };
  expect(parseEntry(JSON.stringify({ t: 1, answer }))).toMatchObject({ ok: true });
});
