// The words and shapes of alarm priorities, and the title that the page's tab carries.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { boardCalled, pansOfBoard } from '../../protocol/boards.ts';
import { uncovered } from '../alarms/one-way.ts';
import { timeOfDay } from './clock.ts';
import { panName } from './pan-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say, setApart } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { AlarmView, Header, Now, Priority } from '../client/types.ts';

const PRIORITY_WORD: Record<Priority, MessageKey> = {
  high: 'alarm.priority.high',
  medium: 'alarm.priority.medium',
  low: 'alarm.priority.low',
};

/** How urgent a call is, in a word. */
export function priorityWord(priority: Priority): string {
  return say(PRIORITY_WORD[priority]);
}

/** The shapes of the priorities as letters, for a title that takes no drawing. */
const SHAPE_LETTER: Record<Priority, string> = { high: '▲', medium: '◆', low: '●' };

const RANK: Record<Priority, number> = { high: 0, medium: 1, low: 2 };

/** Whether somebody put the call aside for a time. */
export function isAside(alarm: AlarmView): boolean {
  return alarm.asideUntil !== null;
}

/** Of two that are for now, what burns goes before what is past its finish, as the first line has it. */
const isBurning = ({ alarm, priority }: AlarmView): boolean => alarm === 'scorch-risk' && priority === 'high';

/**
 * What was put aside last, before it what is over; then unanswered before seen, by priority, what burns first, and among
 * those alike as the host has them. What a worse call of its pan stands for is left out: one thing calls once.
 */
export function inOrder(alarms: readonly AlarmView[]): AlarmView[] {
  return uncovered(alarms).sort(
    (a, b) =>
      Number(isAside(a)) - Number(isAside(b)) ||
      Number(a.condition === 'over') - Number(b.condition === 'over') ||
      Number(a.answered) - Number(b.answered) ||
      RANK[a.priority] - RANK[b.priority] ||
      Number(isBurning(b)) - Number(isBurning(a)),
  );
}

/** The alarm that a press of "I have seen it" answers; null when all are seen or put aside. */
export function firstUnseen(alarms: readonly AlarmView[]): AlarmView | null {
  return inOrder(alarms).find((alarm) => !alarm.answered && !isAside(alarm)) ?? null;
}

/** What stands on the button that says `answers` seen: of many calls it tells whether the press is for all of them or for the first alone. */
export function seenWords(answers: readonly AlarmView[], alarms: readonly AlarmView[]): string {
  if (answers.length > 1) return say('alarms.seen_together', { count: String(answers.length) });
  const unseen = inOrder(alarms).filter((alarm) => !alarm.answered && !isAside(alarm));
  return say(unseen.length > 1 ? 'alarms.seen_first' : 'alarms.seen');
}

/** The foremost unseen call while it stands; null when none does. */
export function callsNow(alarms: readonly AlarmView[]): AlarmView | null {
  const first = firstUnseen(alarms);
  return first?.condition === 'active' ? first : null;
}

/** One for each in a list: of reminders several can stand at once. */
export function alarmKey({ alarm, pan, port, since, why }: AlarmView): string {
  return `${alarm} ${pan ?? ''} ${port ?? ''} ${since} ${alarm === 'reminder' ? why : ''}`;
}

/** Where it is: the pan, the board or the program. */
export function whereWords(alarm: Pick<AlarmView, 'pan' | 'port'>, header: Header | null): string {
  if (alarm.pan !== null) return panName(header, alarm.pan);
  const { port } = alarm;
  if (port === null) return 'Panwarden';
  // By the pans that it watches: they are what somebody has to look after.
  const pans = header === null ? [] : pansOfBoard(header, port);
  if (pans.length > 0)
    return say('alarm.where.board_of', { pans: pans.map(({ id }) => panName(header, id)).join(', ') });
  return say('alarm.where.board', { port: boardCalled(header, port) });
}

/** "Back pot: Running low"; a reminder is told in the words that it was given. */
export function calledWords(
  alarm: Pick<AlarmView, 'alarm' | 'pan' | 'port' | 'title' | 'why'>,
  header: Header | null,
): string {
  return alarm.alarm === 'reminder'
    ? say('alarm.called.reminder', { what: alarm.why })
    : say('alarm.called', { where: whereWords(alarm, header), what: hostWords(alarm.title) });
}

/** A sentence of the host with its capital and its full stop, so that two can stand in one line. */
export function asSentence(text: string): string {
  // A name such as "ttyACM0" or "b1:" is left as it is written.
  const begun = /^\p{Ll}+[\s,]/u.test(text) ? `${text.slice(0, 1).toUpperCase()}${text.slice(1)}` : text;
  return /[.!?]$/.test(begun) ? begun : `${begun}.`;
}

/** The title of the page: the foremost unseen alarm first, so that a tab in the background shows it. */
export function pageTitle(now: Now | null): string {
  const alarm = now === null ? null : firstUnseen(now.alarms);
  if (now === null || alarm === null) return now?.mode === 'practice' ? say('page.practice') : 'Panwarden';
  const what = calledWords(alarm, now.header);
  return alarm.condition === 'over'
    ? say('page.alarm_over', { what })
    : say('page.alarm', { what, shape: SHAPE_LETTER[alarm.priority] });
}

/** Until when all sound is off, ms of boil time; null while it is not. */
export function quietUntil({ sound, t }: Now): number | null {
  return sound.silencedUntil !== null && sound.silencedUntil > t ? sound.silencedUntil : null;
}

/**
 * What a press of "quiet" does: in a practice that goes faster, whose minutes are meant. How much of the practice they are
 * hangs on how fast it goes by then, and a call slows it.
 */
export const quietHint = ({ mode, speed }: Now): string =>
  say(mode === 'practice' && speed > 1 ? 'alarms.quiet.hint_practice' : 'alarms.quiet.hint');

/** Whether the call came while all sound was off, as it still is: nobody heard it. */
export const isUnheard = (alarm: AlarmView, now: Now): boolean =>
  alarm.inQuiet === true &&
  alarm.condition === 'active' &&
  !alarm.answered &&
  !isAside(alarm) &&
  quietUntil(now) !== null;

/** Until when it is quiet, and on which phone that was asked for. */
export function quietWords(now: Now, until: number): string {
  const { silencedBy: who } = now.sound;
  const quiet = quietLength(now, until);
  return who === undefined ? quiet : say('alarm.quiet_by', { quiet, who });
}

/** A practice boil's clock is not the person's: how long its quiet still lasts is told in their own time. */
function quietLength(now: Now, until: number): string {
  return now.mode === 'practice'
    ? say(now.speed > 1 ? 'alarm.quiet_for_yours' : 'alarm.quiet_for', {
        length: lengthOfTime((until - now.t) / 1000 / now.speed),
      })
    : say('alarm.quiet_until', { time: timeOfDay(now, until) });
}

/** True while the call should be heard on this machine. */
export function soundsNow(now: Now | null): Priority | null {
  if (now === null) return null;
  return quietUntil(now) === null ? now.sound.priority : null;
}

const inTime = (calls: readonly AlarmView[]): string[] =>
  calls.toSorted((one, other) => one.since - other.since).map(({ title }) => hostWords(title));

/** Pan by pan, so that a pan's name is said once, its calls by time: "Birch pot: At its finish, About to burn". */
export function byPlaceWords(alarms: readonly AlarmView[], now: Now): string {
  const byPlace = Map.groupBy(alarms, (alarm) => (alarm.alarm === 'reminder' ? null : whereWords(alarm, now.header)));
  return setApart(
    [...byPlace].map(([where, calls]) =>
      where === null
        ? setApart(calls.map((alarm) => calledWords(alarm, now.header)))
        : say('alarm.called', { where, what: inTime(calls).join(', ') }),
    ),
  );
}
