// Says on a pan's card that the last measurement was left out, why, and lets a person say that it is so.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { insist, lastLeftOut } from '../marks/left-out.ts';
import { timeOfDay } from '../words/clock.ts';

export function LeftOutLine({ now, pan, canMark }: { now: Now; pan: string; canMark: boolean }): JSX.Element | null {
  const each = lastLeftOut(now, pan);
  if (each === null) return null;
  return (
    <ul class="not-known">
      <li>
        <span>▲ {say('pans.left_out', { time: timeOfDay(now, each.at), why: hostWords(each.doubt ?? '') })}</span>
        {canMark && (
          <button type="button" onClick={() => insist(each, now, settings.value)}>
            {say('marks.it_is_so')}
          </button>
        )}
      </li>
    </ul>
  );
}
