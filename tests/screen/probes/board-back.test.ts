// A board of the boil that was lost and is there again is told, once, by the pans that it watches.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { live, said } from '../../../src/screen/client/store.ts';
import type { Now } from '../../../src/screen/client/types.ts';
import { tellBoardsBack } from '../../../src/screen/probes/board-back.ts';
import { moment } from '../moment.ts';

const boardIs = (state: 'open' | 'lost', change: Partial<Now> = {}): Now => ({
  ...moment,
  mode: 'live',
  ended: false,
  ports: [{ id: 'A', path: '/dev/invented-0', state, why: null, lines: 9, unreadable: 0 }],
  ...change,
});

let stop = (): void => undefined;
beforeEach(() => {
  live.value = null;
  said.value = null;
});
afterEach(() => {
  stop();
  live.value = null;
  said.value = null;
});

test('back again it is said, and not while it stays there', () => {
  live.value = boardIs('open');
  stop = tellBoardsBack();
  live.value = boardIs('lost');
  live.value = null;
  expect(said.value).toBeNull();
  live.value = boardIs('open');
  expect(said.value).toMatchObject({
    good: true,
    sentence: expect.stringMatching(/^Board .*: connected again\.$/) as string,
  });
  said.value = null;
  live.value = boardIs('open', { t: moment.t + 1000 });
  expect(said.value).toBeNull();
});

test('a board of another boil, or of one that is over, is nobody’s news', () => {
  live.value = boardIs('lost');
  stop = tellBoardsBack();
  live.value = boardIs('open', { boil: 'another' });
  live.value = boardIs('lost', { boil: 'another' });
  live.value = boardIs('open', { boil: 'another', ended: true });
  expect(said.value).toBeNull();
});

test('boards that come back together are told together', () => {
  const both = (state: 'open' | 'lost'): Now => {
    const [first] = boardIs(state).ports;
    return boardIs(state, { ports: [first!, { ...first!, id: 'B', path: '/dev/invented-1' }] });
  };
  live.value = both('lost');
  stop = tellBoardsBack();
  live.value = both('open');
  expect(said.value?.sentence.match(/connected again\./gu)).toHaveLength(2);
});

test('boards that come back one after another are both said, as long as the first word stands and its board is there', () => {
  const boards = (a: 'open' | 'lost', b: 'open' | 'lost'): Now => {
    const [first] = boardIs(a).ports;
    return boardIs(a, { ports: [first!, { ...first!, id: 'B', path: '/dev/invented-1', state: b }] });
  };
  const times = (): number => said.value?.sentence.match(/connected again\./gu)?.length ?? 0;
  live.value = boards('lost', 'lost');
  stop = tellBoardsBack();
  live.value = boards('open', 'lost');
  expect(times()).toBe(1);
  live.value = boards('open', 'open');
  expect(times()).toBe(2);
  // One that is lost once more is no longer said to be back, and none is said twice.
  live.value = boards('lost', 'open');
  live.value = boards('lost', 'lost');
  live.value = boards('lost', 'open');
  expect(times()).toBe(1);
  said.value = null;
  live.value = boards('open', 'open');
  expect(times()).toBe(1);
});
