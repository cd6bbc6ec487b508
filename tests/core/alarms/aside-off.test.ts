// A call that was put aside ends with its pan's fire, where its cause is over; else its time goes on.
import { expect, test } from 'vitest';
import { panIsOff } from '../../../src/core/alarms/engine.ts';
import { inside, over, Watched } from './watched.ts';

const aside = (): Watched => new Watched().find(over('medium')).seconds(4).acknowledge().putAside(600);

test('what was put aside and is over goes when the pan is off the fire', () => {
  const one = aside().find({ ...inside, atOnce: true });
  expect(one.list).toHaveLength(1);
  panIsOff(one.book, 'p2');
  expect(one.list).toHaveLength(1);
  panIsOff(one.book, 'p1');
  expect(one.list).toEqual([]);
});

test('what nobody had answered before it was put aside stays listed as over', () => {
  const one = new Watched()
    .find(over('medium'))
    .seconds(4)
    .putAside(600)
    .find({ ...inside, atOnce: true });
  panIsOff(one.book, 'p1');
  expect(one.list).toMatchObject([{ condition: 'over', answered: false, asideUntil: null }]);
  expect(one.sound).toBe(null);
});

test('a cause that goes on stays aside', () => {
  const one = aside();
  panIsOff(one.book, 'p1');
  expect(one.list).toMatchObject([{ condition: 'active', asideUntil: 604_000 }]);
});
