// What a person answers to an alarm, as commands to the host: seen, put aside, taken up again, and of no use.
import { say } from '../language/say.ts';
import { tell } from '../client/store.ts';
import type { AlarmView, MarkView, Now, RaisingShown } from '../client/types.ts';
import { withCovered } from './one-way.ts';

type Named = Pick<AlarmView, 'alarm' | 'pan' | 'port'>;

const keyOf = ({ alarm, pan, port }: Named): { pan: string | null; alarm: string; port?: string } => ({
  pan,
  alarm,
  ...(port === null ? {} : { port }),
});

/** Says "I have seen this one", and with it what it stands for among all that is listed; `done` is said once the host has taken it. */
export function acknowledge(alarm: AlarmView, listed: readonly AlarmView[], done?: string): void {
  for (const each of withCovered(alarm, listed)) void tell({ answer: { acknowledge: keyOf(each) } }, done);
}

/** Boil time is faster than the person's in a practice boil, and their time is what they choose. */
function ownSeconds(seconds: number, now: Pick<Now, 'mode' | 'speed'>): number {
  return Math.round(seconds * (now.mode === 'practice' ? now.speed : 1));
}

/** How long one press of "quiet" holds, s by the person's own clock. */
const QUIET_S = 120;

/** All sound off for two minutes of the person's own time. */
export function beQuiet(now: Now): void {
  void tell({ answer: { silence: { seconds: ownSeconds(QUIET_S, now) } } });
}

/** The sound is back before that: what calls unseen is heard at once. */
export function endQuiet(): void {
  void tell({ answer: { silence: { seconds: 0 } } });
}

/**
 * Silent until the time is over, whatever it does meanwhile; resolves to whether it was taken. The minutes are those of
 * the clock that is shown, in a practice boil too: so "for 10 min" at 07:40 is until 07:50, as the card then says.
 */
export function putAside(alarm: Named, minutes: number, reason: string): Promise<boolean> {
  return tell({ answer: { put_aside: { ...keyOf(alarm), seconds: minutes * 60, reason } } });
}

/** A put-aside that ends at once: with its cause still there, the alarm calls. */
export function takeUpAgain(alarm: Named): void {
  void tell({ answer: { put_aside: { ...keyOf(alarm), seconds: 0, reason: say('alarms.taken_up') } } });
}

/** The mark by which a person says that this raising was of no use; null where nobody did. */
export function noUseMark(raising: RaisingShown, marks: readonly MarkView[]): string | null {
  const found = marks.find(({ mark, withdrawn }) => {
    if (mark.kind !== 'note' || mark.no_use !== true || mark.about === undefined || withdrawn) return false;
    const { alarm, pan, port, raised } = mark.about;
    return (
      alarm === raising.alarm &&
      pan === raising.pan &&
      raised === raising.raisedAt &&
      (port ?? raising.port) === raising.port
    );
  });
  return found?.mark.id ?? null;
}

/** `what` is the alarm in words, for the log of marks. */
export function sayNoUse(raising: RaisingShown, what: string): void {
  const { raisedAt: raised } = raising;
  const pan = raising.pan === null ? {} : { pan: raising.pan };
  const text = say('alarms.no_use_text', { what });
  const id = `screen-${crypto.randomUUID()}`;
  void tell(
    { mark: { kind: 'note', text, ...pan, about: { ...keyOf(raising), raised }, no_use: true, id } },
    say('alarms.no_use_noted'),
  );
}

/** Takes back the word that a call was of no use; `id` is that of its note. */
export function takeBackNoUse(id: string): void {
  void tell({ mark: { kind: 'withdraw', id } }, say('alarms.no_use_back'));
}
