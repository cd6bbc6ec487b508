// The stories see a broken engine: each deliberate break of its source makes at least one of them fail.
import { readFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { expect, test } from 'vitest';
import * as engine from '../../../src/core/alarms/engine.ts';
import type { Engine } from './picture.ts';
import { playPair } from './play-pair.ts';
import { storiesOf } from './read-stories.ts';

const source = readFileSync(new URL('../../../src/core/alarms/engine.ts', import.meta.url), 'utf8');
const stories = storiesOf('pair').map(({ story }) => story);

/** The engine imports only types, so its bare text is a module of its own. */
async function engineOf(text: string): Promise<Engine> {
  const bare = stripTypeScriptTypes(text);
  return (await import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(bare)}`)) as Engine;
}

/** Titles of the stories that do not end as they are written; an engine that throws fails them, too. */
function failing(broken: Engine): string[] {
  return stories.flatMap((story) => {
    try {
      const seen = JSON.stringify(playPair(story, broken));
      return seen === JSON.stringify(story.steps.map(({ picture }) => picture)) ? [] : [story.title];
    } catch {
      return [story.title];
    }
  });
}

const breaks: [string, string, string][] = [
  [
    'unknown counts as inside',
    'if (finding === null) return [];',
    'finding ??= { over: false, inside: true, priority: "low", why: () => "" };',
  ],
  ['no on-delay', 'if (t - state.since < onDelayMs) return [];', ''],
  [
    'on-delay counts from the first touch ever',
    "state.condition = 'pending';\n    state.since = t;",
    "state.condition = 'pending';",
  ],
  ['no off-delay', 'if (finding.atOnce !== true && t - state.since < offDelayMs) return [];', ''],
  ['off-delay for what is taken off, too', 'finding.atOnce !== true && ', ''],
  ['the deadband ends an alarm', 'if (!finding.inside) {', 'if (finding.over) {'],
  ['clearing is not taken back', "state.condition = 'active';\n    // The numbers", '// The numbers'],
  [
    'raised anew it stays acknowledged',
    "Object.assign(state, { condition: 'active', raisedAt: t, since: t, overUnseen: false, seenOnce: false });\n  callAgain(state, t);",
    "Object.assign(state, { condition: 'active', raisedAt: t, since: t, overUnseen: false, seenOnce: false });",
  ],
  [
    'a higher priority stays acknowledged',
    "state.why = finding.why();\n  callAgain(state, t);\n  return transition(state, 'escalated', t);",
    "state.why = finding.why();\n  return transition(state, 'escalated', t);",
  ],
  [
    'a lower priority escalates as well',
    'RANK[finding.priority] > RANK[state.priority]',
    'RANK[finding.priority] !== RANK[state.priority]',
  ],
  [
    'acknowledging ends the condition',
    '  state.answeredAt = t;\n',
    "  state.answeredAt = t;\n  state.condition = 'ok';\n",
  ],
  ['over and unseen leaves the list', 'state.overUnseen = !state.seenOnce;', 'state.overUnseen = false;'],
  [
    'over and seen before it got worse stays listed',
    'state.overUnseen = !state.seenOnce;',
    'state.overUnseen = !state.answered;',
  ],
  ['over and seen stays listed', 'state.overUnseen = !state.seenOnce;', 'state.overUnseen = true;'],
  ['aside never ends', 'state.asideUntil !== null && t >= state.asideUntil;', 'false;'],
  ['aside ends in silence', 'if (isOn(state) && (asideIsOver || ', 'if (isOn(state) && ('],
  [
    'aside that ends keeps the acknowledgement',
    "callAgain(state, t);\n      fresh.push(transition(state, 'returned', t));",
    "fresh.push(transition(state, 'returned', t));",
  ],
  [
    'aside does not stop the sound',
    'return isOn(state) && !state.answered && state.asideUntil === null;',
    'return isOn(state) && !state.answered;',
  ],
  ['an acknowledged high alarm never comes back', 't - state.answeredAt >= REPEAT_ACKNOWLEDGED_MS;', 'false;'],
  ['an acknowledged medium alarm comes back', "if (state.priority !== 'high' || ", 'if ('],
  ['time away counts for the repeat', 'state.answeredAt = t;\n}', '{}\n}'],
  [
    'a silence never ends',
    'if (book.silencedUntil !== null && t >= book.silencedUntil) book.silencedUntil = null;',
    '',
  ],
  [
    'a silence answers',
    'book.silencedUntil = t + answer.silence.seconds * 1000;',
    'book.silencedUntil = t + answer.silence.seconds * 1000;\n    for (const one of book.alarms) one.answered = true;',
  ],
  [
    'the first sound stays, not the worst',
    'loudest === null || RANK[state.priority] > RANK[loudest]',
    'loudest === null',
  ],
  ['the list is not sorted', '.sort(byUrgency)', ''],
  ['the last one raised stands first', 'a.since - b.since', 'b.since - a.since'],
  ['an answer is for every port', 'return key.port === undefined || state.port === key.port;', 'return true;'],
  ['an answer is for every pan', ' || state.pan !== key.pan) return false;', ') return false;'],
  ['what is pending can be answered', 'if (!isListed(state) || ', 'if ('],
  ['the repeat of an unanswered one is not counted', 'Math.floor((t - since) / REPEAT_UNANSWERED_MS)', '0'],
  [
    'the repeat counts from the first raising',
    "if (asks(state) && state.priority === 'high' && (since === null || state.calledAt < since)) since = state.calledAt;",
    "if (asks(state) && state.priority === 'high') since = state.raisedAt;",
  ],
  ['acknowledged twice is told twice', 'if (state.answered || ', 'if ('],
];

test('the engine itself, loaded in the same way, fails no story', async () => {
  expect(failing(await engineOf(source))).toEqual([]);
  expect(failing(engine)).toEqual([]);
});

test.each(breaks)('%s: a story fails', async (_, sound, broken) => {
  expect(source.split(sound), 'the text that is broken stands in the engine once').toHaveLength(2);
  expect(failing(await engineOf(source.replace(sound, () => broken)))).not.toEqual([]);
});
