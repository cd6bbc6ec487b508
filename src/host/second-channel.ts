// Decides which calls also go another way: what nobody answered for a minute, and what nobody could hear.
import type { Header } from '../core/boil/entries.ts';
import { hostWords } from '../language/host-words.ts';
import type { Tongue } from '../language/tongue.ts';
import type { AlarmView, Now } from '../protocol/messages.ts';

/** What nobody answered goes out again after so long, ms; a person who drives home wants no more. */
const AGAIN_MS = 5 * 60_000;

/** What became worse, or came back after an answer, is a call of its own. */
const nameOf = ({ alarm, pan, port, since, priority }: AlarmView): string =>
  JSON.stringify([alarm, pan, port, since, priority]);

/** One call as a sentence that can stand alone in a message. It never begins with what a program takes for an option. */
export function callSentence({ pan, port, ...alarm }: AlarmView, header: Header | null, tongue: Tongue): string {
  const name = header?.pans?.find(({ id }) => id === pan)?.name ?? pan;
  const where = name ?? (port === null ? null : tongue.say('call.board', { port }));
  const values = {
    title: hostWords(alarm.title, tongue),
    why: hostWords(alarm.why, tongue).replace(/\.$/, ''),
    todo: hostWords(alarm.todo, tongue),
  };
  return where === null ? tongue.say('call.sentence_bare', values) : tongue.say('call.sentence', { ...values, where });
}

/** How often calls had been repeated when this one was first seen to wait, and when it went out last, ms of boil time. */
interface Waiting {
  repeats: number;
  toldAt: number | null;
}

type Calls = Pick<Now, 'alarms' | 'sound' | 'unanswered' | 't'>;

export class SecondChannel {
  #waiting = new Map<string, Waiting>();

  /**
   * The calls that are due now. The minutes that a high call waited are the boil's own count (`unanswered`), which a
   * restart keeps; whenever it grows, the high calls that wait go out. While nobody could hear (`heard` false), calls of
   * middle priority go out too, and at once. A silence holds for this way also, for somebody is there; it answers
   * nothing, so the count goes on, and what fell due meanwhile goes out when it ends.
   */
  due({ alarms, sound, unanswered, t }: Calls, heard: boolean): AlarmView[] {
    const isFor = ({ priority }: AlarmView) => priority === 'high' || (!heard && priority === 'medium');
    const calling = alarms.filter((one) => one.condition === 'active' && !one.answered && one.asideUntil === null);
    const repeats = unanswered?.repeats ?? 0;
    const before = this.#waiting;
    this.#waiting = new Map(
      calling.map(nameOf).map((name) => {
        const was = before.get(name) ?? { repeats, toldAt: null };
        return [name, { ...was, repeats: Math.min(was.repeats, repeats) }] as const;
      }),
    );
    if (sound.silencedUntil !== null && sound.silencedUntil > t) return [];
    return calling.filter((alarm) => isFor(alarm) && this.#goesOut(nameOf(alarm), repeats, t, heard));
  }

  #goesOut(name: string, repeats: number, t: number, heard: boolean): boolean {
    const waiting = this.#waiting.get(name);
    if (waiting === undefined) return false;
    const { toldAt } = waiting;
    const isDue = toldAt === null ? !heard || repeats > waiting.repeats : t - toldAt >= AGAIN_MS;
    if (isDue) waiting.toldAt = t;
    return isDue;
  }
}
