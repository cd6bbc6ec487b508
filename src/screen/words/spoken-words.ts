// What a spoken call says: the pan first, then how long there is, or what is wrong and what to do.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { asSentence, whereWords } from './alarm-words.ts';

const MINUTE_S = 60;

/** "about 10 minutes", "less than a minute". */
function spokenLength(seconds: number): string {
  const minutes = Math.round(seconds / MINUTE_S);
  return say('spoken.length', { minutes });
}

/** One call in words for the ear. */
export function spokenCall(alarm: AlarmView, now: Now): string {
  const where = whereWords(alarm, now.header);
  const finishInS = now.readings.find(({ pan }) => pan === alarm.pan)?.finish_in_s ?? null;
  if (alarm.alarm === 'near-finish' && finishInS !== null)
    return say('spoken.to_go', { where, length: spokenLength(finishInS) });
  const [firstThing = ''] = hostWords(alarm.todo).split(/(?<=[.!?]) /);
  return say('spoken.call', { where, what: asSentence(hostWords(alarm.title)), todo: firstThing }).trim();
}
