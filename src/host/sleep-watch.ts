// Puts into words what would put this computer to sleep, and says it when it is news.
import type { MachineSleep } from '../protocol/messages.ts';
import type { LidOutcome, SleepFound } from './sleep-settings.ts';

const LOOK = 'look at its power settings';
const LID: Record<Exclude<LidOutcome, 'not-known'>, string> = {
  sleeps: 'Closing the lid puts this computer to sleep: keep it open, or the watch ends.',
  'turns-off': 'Closing the lid turns this computer off: keep it open, or the watch ends.',
  'stays-awake': 'Closing the lid does not put this computer to sleep.',
};
const NOTHING_KNOWN =
  'Whether this computer goes to sleep when its lid is closed, or when nobody touches it, cannot be seen from here: ' +
  `${LOOK}, for a computer that sleeps watches nothing.`;

function idleSentence(seconds: number | null): string {
  if (seconds === null) return `Whether being left alone puts it to sleep is not known here: ${LOOK}.`;
  return `Left alone for ${Math.round(seconds / 60)} min it goes to sleep: switch that off in its power settings.`;
}

/** What a person is told of it; `null` where the system tells nothing. */
export function sleepWords(found: SleepFound | null): MachineSleep {
  const { lid, idleSeconds } = found ?? { lid: 'not-known', idleSeconds: null };
  const isKnownLid = lid !== 'not-known';
  const lidText = isKnownLid ? LID[lid] : `What closing the lid does is not known here: ${LOOK}.`;
  const ends = lid === 'sleeps' || lid === 'turns-off';
  return {
    lid: ends ? 'sleeps' : lid,
    idle: idleSeconds === null ? 'not-known' : 'sleeps',
    warns: ends || idleSeconds !== null,
    sentence: !isKnownLid && idleSeconds === null ? NOTHING_KNOWN : `${lidText} ${idleSentence(idleSeconds)}`,
  };
}

export class SleepWatch {
  #said: MachineSleep | null = null;
  #now: MachineSleep | null = null;

  /** What was found last; null before the first look. */
  get now(): MachineSleep | null {
    return this.#now;
  }

  /** One look; gives the sentence when it is a warning that was not said yet, or the end of one that was. */
  look(found: SleepFound | null): string | null {
    const now = sleepWords(found);
    this.#now = now;
    if (this.#said?.sentence === now.sentence || (!now.warns && this.#said?.warns !== true)) return null;
    this.#said = now;
    return now.sentence;
  }
}
