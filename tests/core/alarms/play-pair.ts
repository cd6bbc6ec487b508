// Plays a story of the engine alone: findings and answers by the second, looked at once a second as the fold does.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type { AlarmBook, AlarmKey } from '../../../src/core/alarms/engine.ts';
import { type Finding, PAN_RULES } from '../../../src/core/alarms/rules.ts';
import type { AlarmName, Answer, Priority } from '../../../src/core/boil/entries.ts';
import { type Engine, picture } from './picture.ts';
import type { Story } from './read-stories.ts';

interface Watch {
  key: AlarmKey;
  finding: Finding | null;
}

/** The picture after each step, by this engine; a deliberately broken one can be handed in. */
export function playPair(story: Story, engine: Engine): string[][] {
  let book = engine.startAlarms();
  const watches = new Map<string, Watch>();
  let second = -1;
  return story.steps.map((step) => {
    const told: AlarmTransition[] = [];
    while (second < step.second - 1) told.push(...look(engine, book, watches, (second += 1)));
    second = step.second;
    if (step.input === 'restart') book = JSON.parse(JSON.stringify(book)) as AlarmBook;
    else told.push(...take(engine, book, watches, step.input, second * 1000));
    told.push(...look(engine, book, watches, second));
    return picture(engine, book, second * 1000, told);
  });
}

function look(engine: Engine, book: AlarmBook, watches: Map<string, Watch>, second: number): AlarmTransition[] {
  const t = second * 1000;
  const made = engine.timePassed(book, t);
  for (const { key, finding } of watches.values()) {
    made.push(...engine.observe(book, key, delaysOf(key.alarm), finding, t));
  }
  return made;
}

/** Those of the rule; what has no rule of a pan is called and ended at once, as `judge.ts` does. */
function delaysOf(alarm: AlarmName): { onDelayMs: number; offDelayMs: number } {
  return PAN_RULES.find((rule) => rule.alarm === alarm) ?? { onDelayMs: 0, offDelayMs: 0 };
}

function take(
  engine: Engine,
  book: AlarmBook,
  watches: Map<string, Watch>,
  input: string,
  t: number,
): AlarmTransition[] {
  if (input === '') return [];
  if (input === 'gap') {
    engine.alarmsAfterGap(book, t);
    return [];
  }
  const answer = answerOf(input);
  if (answer !== null) return engine.answerAlarms(book, answer, t);
  const [place, alarm, ...rest] = input.split(' ');
  watches.set(`${place} ${alarm}`, { key: keyOf(place!, alarm!), finding: findingOf(rest.join(' ')) });
  return [];
}

function keyOf(place: string, alarm: string): AlarmKey {
  const { pan, port } = placeOf(place);
  return { alarm: alarm as AlarmName, pan, port, about: place.startsWith('no:') ? place.slice(3) : null };
}

function placeOf(place: string): { pan: string | null; port?: string } {
  if (place.startsWith('port:')) return { pan: null, port: place.slice(5) };
  return { pan: place === '-' || place.startsWith('no:') ? null : place };
}

/** `acknowledge PLACE ALARM`, `silence SECONDS`, `aside PLACE ALARM SECONDS REASON`; null for any other input. */
export function answerOf(input: string): Answer | null {
  const [verb, place, alarm, seconds, ...reason] = input.split(' ');
  if (verb === 'silence') return { silence: { seconds: Number(place) } };
  if (verb === 'acknowledge') return { acknowledge: { ...placeOf(place!), alarm: alarm! } };
  if (verb !== 'aside') return null;
  return { put_aside: { ...placeOf(place!), alarm: alarm!, seconds: Number(seconds), reason: reason.join(' ') } };
}

/** `over PRIORITY`, `inside`, `ended` (inside, without the off-delay), `between` (in the deadband), `unknown`. */
function findingOf(words: string): Finding | null {
  const [kind, priority] = words.split(' ');
  if (kind === 'unknown') return null;
  if (!['over', 'inside', 'ended', 'between'].includes(kind ?? '')) throw new Error(`not an input: ${words}`);
  return {
    over: kind === 'over',
    inside: kind === 'inside' || kind === 'ended',
    priority: (priority ?? 'low') as Priority,
    why: () => words,
    atOnce: kind === 'ended',
  };
}
