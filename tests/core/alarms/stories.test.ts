// Every alarm story: after each input the whole picture, so that nothing changes that nobody expected.
import { expect, test } from 'vitest';
import * as engine from '../../../src/core/alarms/engine.ts';
import { ALARM_WORDS } from '../../../src/core/alarms/words.ts';
import { playBoil } from './play-boil.ts';
import { playPair } from './play-pair.ts';
import { storiesOf, type Story } from './read-stories.ts';

const pairs = storiesOf('pair');
const boils = storiesOf('boil');

/** Input and picture side by side, so that a difference says where it is. */
function told(story: Story, pictures: string[][]): unknown {
  return story.steps.map(({ second, input }, index) => ({ at: `${second} ${input}`.trim(), seen: pictures[index] }));
}

const written = (story: Story): unknown =>
  told(
    story,
    story.steps.map(({ picture }) => picture),
  );

test.each(pairs.map(({ file, story }) => [file, story.title, story] as const))('%s: %s', (_, __, story) => {
  expect(told(story, playPair(story, engine))).toEqual(written(story));
});

test.each(boils.map(({ file, story }) => [file, story.title, story] as const))('%s: %s', (_, __, story) => {
  expect(told(story, playBoil(story))).toEqual(written(story));
});

test('there are sixty stories at the least, no two of one title', () => {
  const titles = [...pairs, ...boils].map(({ story }) => story.title);
  expect(new Set(titles).size).toBe(titles.length);
  expect(titles.length).toBeGreaterThanOrEqual(60);
});

test('every alarm that can be raised stands in a story, each with its own delays', () => {
  const inputs = [...pairs, ...boils].flatMap(({ story }) => story.steps.flatMap(({ picture }) => picture)).join('\n');
  expect(
    Object.keys(ALARM_WORDS).filter((name) => !new RegExp(`told: raised \\S+ ${name} `, 'u').test(inputs)),
  ).toEqual([]);
});
