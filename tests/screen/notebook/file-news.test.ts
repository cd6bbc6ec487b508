// A wrong file is called wrong before the cause is given, and a boil that is there already is said to be.
import { expect, test } from 'vitest';
import { importNews, isRecording, refusal } from '../../../src/screen/notebook/file-news.ts';

test('a recording is told by its first line', () => {
  expect(isRecording('{"recording":"panwarden","version":1}\n{"t":0}')).toBe(true);
  expect(isRecording('\uFEFF{ "version": 1, "recording": "panwarden" }')).toBe(true);
  expect(isRecording('no boil\n{"recording":"panwarden"}')).toBe(false);
  expect(isRecording('')).toBe(false);
});

test('a file that is none says so first', () => {
  expect(refusal('shopping.txt', 'Line 1 is no JSON.', false)).toBe(
    'This is no recording of a boil: shopping.txt. Line 1 is no JSON.',
  );
  expect(refusal('a.boil.jsonl', 'The disk is full.', true)).toBe('a.boil.jsonl: The disk is full.');
});

test('the same boil again is not new', () => {
  const answer = { ok: true, boil: 'tarn-hollow' } as const;
  expect(importNews('a.jsonl', answer, true, []).sentence).toBe('a.jsonl is in the notebook.');
  expect(importNews('a.jsonl', answer, true, ['tarn-hollow']).sentence).toContain('already');
});
