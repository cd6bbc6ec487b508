// Decides which calls also go another way: what nobody answered for a minute, and what nobody could hear.
import type { Header } from '../core/boil/entries.ts';
import { amountsInUnits, type ChosenUnits } from '../core/quantities/written-amounts.ts';
import { hostWords } from '../language/host-words.ts';
import type { Tongue } from '../language/tongue.ts';
import { boardCalled, pansOfBoard } from '../protocol/boards.ts';
import type { AlarmView, Now } from '../protocol/messages.ts';

/** What nobody answered goes out again after so long, ms; a person who drives home wants no more. */
const AGAIN_MS = 5 * 60_000;

/** What became worse, or came back after an answer, is a call of its own. */
const nameOf = ({ alarm, pan, port, since, priority }: AlarmView): string =>
  JSON.stringify([alarm, pan, port, since, priority]);

/** One call as a sentence that can stand alone in a message, in the units that the person chose. It never begins with what a program takes for an option. */
export function callSentence(
  { pan, port, ...alarm }: AlarmView,
  header: Header | null,
  tongue: Tongue,
  units: ChosenUnits,
): string {
  const where = pan === null ? boardWords(port, header, tongue) : panName(pan, header, tongue);
  // A reminder is told in the words that it was given.
  const why =
    alarm.alarm === 'reminder'
      ? alarm.why
      : hostWords(
          amountsInUnits(alarm.why, units, (amount) => tongue.amount(amount)),
          tongue,
        );
  const values = {
    title: hostWords(alarm.title, tongue),
    why: why.replace(/\.$/, ''),
    todo: hostWords(alarm.todo, tongue),
  };
  return where === null ? tongue.say('call.sentence_bare', values) : tongue.say('call.sentence', { ...values, where });
}

/** What the person calls the pan; by its place in the list when it has no name. */
function panName(pan: string, header: Header | null, tongue: Tongue): string {
  const pans = header?.pans ?? [];
  const place = pans.findIndex(({ id }) => id === pan);
  return pans[place]?.name ?? (place < 0 ? tongue.say('pan.any') : tongue.say('pan.numbered', { number: place + 1 }));
}

/** A board by the pans that somebody has to watch now, else by what it is called. */
function boardWords(port: string | null, header: Header | null, tongue: Tongue): string | null {
  if (port === null) return null;
  const pans = header === null ? [] : pansOfBoard(header, port);
  return pans.length === 0
    ? tongue.say('alarm.where.board', { port: boardCalled(header, port) })
    : tongue.say('alarm.where.board_of', { pans: pans.map(({ id }) => panName(id, header, tongue)).join(', ') });
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
