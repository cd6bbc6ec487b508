// Why a call stands is told by the look that raised it, or by one that says its numbers are those no more: for as long as such looks come. Invented.
import { expect, test } from 'vitest';
import { observe, startAlarms } from '../../../src/core/alarms/engine.ts';
import type { Finding } from '../../../src/core/alarms/rules.ts';

const look = (why: string, over: Partial<Finding>): Finding => ({
  over: false,
  inside: false,
  priority: 'high',
  why: () => why,
  ...over,
});

test('once it is over its limit again, a look between its limits says no more than before', () => {
  const book = startAlarms();
  const saidBy = (t: number, finding: Finding): string => {
    observe(book, { alarm: 'near-finish', pan: 'p1' }, { onDelayMs: 0, offDelayMs: 0 }, finding, t);
    return book.alarms[0]!.why;
  };
  expect(saidBy(0, look('raised', { over: true }))).toBe('raised');
  expect(saidBy(1, look('between', {}))).toBe('raised');
  expect(saidBy(2, look('fell', { rewords: true }))).toBe('fell');
  expect(saidBy(3, look('', { rewords: true }))).toBe('fell');
  expect(saidBy(4, look('between', {}))).toBe('between');
  expect(saidBy(5, look('fell', { rewords: true }))).toBe('fell');
  expect(saidBy(6, look('over', { over: true }))).toBe('over');
  expect(saidBy(7, look('between', {}))).toBe('over');
});
