// The alarms at the foot of every view, with the two buttons that are used in a hurry.
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { firstUnseen, inOrder, priorityWord, soundsNow, whereWords } from '../words/alarm-words.ts';
import { timeOfDay } from '../words/clock.ts';
import { AlarmRow, acknowledge } from './alarm-row.tsx';

/** Two minutes of the person's time: a practice boil that runs faster counts more of its own. */
const silenceSeconds = (now: Now): number => Math.round(120 * (now.mode === 'practice' ? now.speed : 1));

/** Always in the page, so that a reader for the blind hears the text when it comes. */
function Spoken({ alarm, now }: { alarm: AlarmView | null; now: Now }): JSX.Element {
  return (
    <div role="alert" class="unseen">
      {alarm !== null && alarm.condition === 'active'
        ? `${priorityWord(alarm.priority)}. ${whereWords(alarm, now.header)}: ${alarm.title}. ${alarm.todo}`
        : ''}
    </div>
  );
}

function HurryButtons({ now, first }: { now: Now; first: AlarmView | null }): JSX.Element {
  const until = now.sound.silencedUntil;
  const isQuiet = until !== null && until > now.t;
  return (
    <div class="hurry">
      <KeyButton
        letter="S"
        class="hurry-seen"
        disabled={first === null}
        act={() => first !== null && acknowledge(first)}
      >
        I have seen it
      </KeyButton>
      <KeyButton
        letter="Q"
        class="hurry-quiet"
        pressed={isQuiet}
        disabled={soundsNow(now) === null && !isQuiet}
        act={() => void tell({ answer: { silence: { seconds: silenceSeconds(now) } } })}
      >
        {isQuiet ? `Quiet until ${timeOfDay(now, until)}` : 'Quiet for 2 min'}
      </KeyButton>
    </div>
  );
}

/** `aside` says that the view above shows a replay, while these alarms are of the boil that is running. */
export function AlarmDock({ now, aside }: { now: Now; aside: boolean }): JSX.Element {
  const alarms = inOrder(now.alarms);
  const first = firstUnseen(alarms);
  return (
    <>
      <Spoken alarm={first} now={now} />
      {alarms.length > 0 && (
        <section
          class={alarms.some((alarm) => alarm.condition === 'active' && !alarm.answered) ? 'dock' : 'dock dock-calm'}
          aria-label={aside ? 'Alarms of the live boil' : 'Alarms'}
        >
          <ul class="alarms">
            {aside && <li class="dock-aside">Of the live boil:</li>}
            {alarms.map((alarm) => (
              <AlarmRow
                key={`${alarm.alarm} ${alarm.pan ?? ''} ${alarm.port ?? ''}`}
                alarm={alarm}
                now={now}
                full={alarm === first && alarm.condition === 'active'}
                canAnswer={true}
              />
            ))}
          </ul>
          <HurryButtons now={now} first={first} />
        </section>
      )}
    </>
  );
}
