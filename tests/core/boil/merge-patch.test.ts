// Checks the merge patch against the table of examples that its standard gives.
import { expect, test } from 'vitest';
import { mergePatch } from '../../../src/core/boil/merge-patch.ts';

const rfc7396AppendixA: [target: unknown, patch: unknown, result: unknown][] = [
  [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
  [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
  [{ a: 'b' }, { a: null }, {}],
  [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
  [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
  [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
  [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
  [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
  [
    ['a', 'b'],
    ['c', 'd'],
    ['c', 'd'],
  ],
  [{ a: 'b' }, ['c'], ['c']],
  [{ a: 'foo' }, null, null],
  [{ a: 'foo' }, 'bar', 'bar'],
  [{ e: null }, { a: 1 }, { e: null, a: 1 }],
  [[1, 2], { a: 'b', c: null }, { a: 'b' }],
  [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
];

test.each(rfc7396AppendixA)('RFC 7396 appendix A: %j patched with %j', (target, patch, result) => {
  const before = structuredClone({ target, patch });
  expect(mergePatch(target, patch)).toEqual(result);
  expect({ target, patch }, 'neither argument is changed').toEqual(before);
});

test('a patch cannot reach the prototype of anything', () => {
  const patched = mergePatch({}, JSON.parse('{"__proto__":{"poured":true},"constructor":{"poured":true}}'));
  expect(({} as { poured?: boolean }).poured).toBeUndefined();
  expect(Object.getPrototypeOf(patched)).toBe(Object.prototype);
});
