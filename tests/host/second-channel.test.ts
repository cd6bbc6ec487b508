// Which calls go out another way: what nobody answered for a minute, and what nobody could hear.
import { expect, test } from 'vitest';
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import type { Header } from '../../src/core/boil/entries.ts';
import { languages } from '../../src/host/languages.ts';
import { SecondChannel, callSentence } from '../../src/host/second-channel.ts';
import { hostWords } from '../../src/language/host-words.ts';
import type { AlarmView } from '../../src/protocol/messages.ts';
import { american, metric } from '../screen/moment.ts';
import { TARN_HEADER } from './tarn-boil.ts';

const english = languages().tongue('en');

const scorch: AlarmView = {
  alarm: 'scorch-risk',
  pan: 'p1',
  port: null,
  priority: 'high',
  condition: 'active',
  answered: false,
  since: 1000,
  asideUntil: null,
  asideReason: null,
  why: 'about 2 min until it burns',
  title: 'About to burn',
  means: 'Too strong for live heat.',
  todo: 'Turn the heat off first.',
};

const unsilenced = { priority: null, silencedUntil: null };
/** The boil's own count. */
const waiting = (since: number | null, t: number) =>
  since === null ? null : { since, repeats: Math.floor((t - since) / 60_000) };

/** The seconds, of all up to 900, at which the alarm goes out; `at` says how it stands at each. */
function goesOut(at: (t: number) => Partial<AlarmView>, heard: (t: number) => boolean = () => true): number[] {
  const channel = new SecondChannel();
  const seconds = Array.from({ length: 900 }, (_, i) => i + 1);
  let since: number | null = null;
  return seconds.filter((second) => {
    const t = second * 1000;
    const alarm = { ...scorch, ...at(t) };
    const asks = alarm.condition === 'active' && !alarm.answered && alarm.asideUntil === null;
    since = asks && alarm.priority === 'high' ? (since ?? t) : null;
    return channel.due({ alarms: [alarm], sound: unsilenced, unanswered: waiting(since, t), t }, heard(t)).length > 0;
  });
}

test('a high call that nobody answers goes out after a minute, and again each five minutes', () => {
  expect(goesOut(() => ({}))).toEqual([61, 361, 661]);
});

test.each([
  ['answered in time', (t: number) => ({ answered: t > 50_000 })],
  ['over in time', (t: number) => ({ condition: t > 50_000 ? ('over' as const) : ('active' as const) })],
  ['put aside', () => ({ asideUntil: 10_000_000 })],
  ['of middle priority', () => ({ priority: 'medium' as const })],
])('a call that is %s stays here', (_what, at) => {
  expect(goesOut(at)).toEqual([]);
});

test('what comes back after an answer, or becomes worse, has its own minute', () => {
  const answeredFor = (t: number) => ({ answered: t >= 30_000 && t < 330_000 });
  expect(goesOut(answeredFor)).toEqual([390, 690]);
  const worse = (t: number) => ({ priority: t < 100_000 ? ('medium' as const) : ('high' as const) });
  expect(goesOut(worse)).toEqual([160, 460, 760]);
});

test('while nobody could hear, high and middle calls go out at once, low ones never', () => {
  const deafFrom = (from: number) => (t: number) => t < from;
  expect(goesOut(() => ({}), deafFrom(20_000))).toEqual([20, 320, 620]);
  expect(goesOut(() => ({ priority: 'medium' }), deafFrom(0))).toEqual([1, 301, 601]);
  expect(goesOut(() => ({ priority: 'low' }), deafFrom(0))).toEqual([]);
});

test('a silence holds for this way too; the count goes on, and what fell due goes out when it ends', () => {
  const channel = new SecondChannel();
  const sound = { priority: null, silencedUntil: 200_000 };
  const out = [0, 100_000, 199_000, 200_000].map(
    (t) => channel.due({ alarms: [scorch], sound, unanswered: waiting(0, t), t }, true).length,
  );
  expect(out).toEqual([0, 0, 0, 1]);
});

test('the minute is the one that the boil counts, also where the program was started anew in it', () => {
  const out = (from: number, until: number): number[] => {
    const channel = new SecondChannel();
    const seconds = Array.from({ length: until - from }, (_, i) => from + i);
    return seconds.filter((second) => {
      const t = second * 1000;
      return channel.due({ alarms: [scorch], sound: unsilenced, unanswered: waiting(1000, t), t }, true).length > 0;
    });
  };
  expect(out(45, 70)).toEqual([61]);
  expect(out(100, 140)).toEqual([121]);
});

test('a call that comes while another waits goes out when that one is repeated, each once in five minutes', () => {
  const channel = new SecondChannel();
  const second = { ...scorch, pan: 'p2', since: 90_000 };
  const out = Array.from({ length: 130 }, (_, i) => i * 1000).flatMap((t) => {
    const alarms = t < 90_000 ? [scorch] : [scorch, second];
    const due = channel.due({ alarms, sound: unsilenced, unanswered: waiting(0, t), t }, true);
    return due.map(({ pan }) => `${t / 1000} ${pan}`);
  });
  expect(out).toEqual(['60 p1', '120 p2']);
});

test('a call is one sentence that can stand alone, and is no option of a program', () => {
  expect(callSentence(scorch, TARN_HEADER, english, metric)).toBe(
    'Panwarden: Back pot: About to burn (about 2 min until it burns). Turn the heat off first.',
  );
  const hostile = { ...TARN_HEADER, pans: [{ id: 'p1', name: '--exec rm' }] };
  expect(callSentence(scorch, hostile, english, metric).startsWith('Panwarden: ')).toBe(true);
});

test('a board is called by the pans that it watches, else by its name; where that is a letter, by its port', () => {
  const lost = { ...scorch, alarm: 'port-lost' as const, pan: null, port: 'A', title: 'Board lost' };
  const where = (header: Header) => callSentence(lost, header, english, metric).split(': ')[1];
  expect(where(TARN_HEADER)).toMatch(/^Board of .*Back pot/);
  const bare = { ...TARN_HEADER, probes: [], pans: [] };
  expect(where({ ...bare, ports: [{ id: 'A', path: '/dev/ttyUSB0' }] })).toBe('Board ttyUSB0');
  const named = { ...bare, ports: [{ id: 'Tarn Works 7353', path: '/dev/ttyUSB0' }] };
  expect(callSentence({ ...lost, port: 'Tarn Works 7353' }, named, english, metric)).toMatch(
    /^Panwarden: Board Tarn Works 7353: /,
  );
});

test('a call has the units that the person chose; a reminder stays as it was given', () => {
  const why = 'rise 5.0 °C, 4.0 °C/min';
  expect(callSentence({ ...scorch, why }, TARN_HEADER, english, american)).toContain('(rise 9.0\u00a0°F, +7.2 °F/min)');
  const own = { ...scorch, alarm: 'reminder' as const, why: 'pour 5 L in' };
  expect(callSentence(own, TARN_HEADER, english, american)).toContain('(pour 5 L in)');
});

test('a call is told in another language whole', () => {
  const french = languages().tongue('fr');
  const why = 'about 2 min to 66.9 °Bx';
  expect(callSentence({ ...scorch, ...ALARM_WORDS['near-finish'], why }, TARN_HEADER, french, metric)).toBe(
    'Panwarden\u00a0: Back pot\u00a0: Presque du sirop (environ 2\u00a0min jusqu’à 66,9\u00a0°Bx). ' +
      hostWords(ALARM_WORDS['near-finish'].todo, french),
  );
});
