// The alarms at the foot of every view, with the two buttons that are used in a hurry.
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { firstUnseen, inOrder, priorityWord, quietWords, soundsNow, whereWords } from '../words/alarm-words.ts';
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
        hint="stops this call"
        disabled={first === null}
        act={() => first !== null && acknowledge(first)}
      >
        I have seen it
      </KeyButton>
      <KeyButton
        letter="Q"
        class="hurry-quiet"
        hint="all sound off, calls come back"
        pressed={isQuiet}
        disabled={soundsNow(now) === null && !isQuiet}
        act={() => void tell({ answer: { silence: { seconds: silenceSeconds(now) } } })}
      >
        {isQuiet ? quietWords(now, until) : 'Quiet for 2 min'}
      </KeyButton>
    </div>
  );
}

interface DockProps {
  now: Now;
  /** The view above shows a replay, while these alarms are of the boil that is running. */
  aside: boolean;
}

function AlarmList({ now, aside, alarms }: DockProps & { alarms: AlarmView[] }): JSX.Element {
  const first = firstUnseen(alarms);
  return (
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
  );
}

/** What stands though it was seen, in one row that opens, so that the pans and the notes have the room. */
function CalmDock({ now, aside, alarms }: DockProps & { alarms: AlarmView[] }): JSX.Element {
  const [worst] = alarms;
  if (worst === undefined) return <></>;
  const more = alarms.length === 1 ? '' : `, and ${alarms.length - 1} more`;
  return (
    <details>
      <summary>
        {aside && 'Of the live boil: '}
        Seen: <b>{whereWords(worst, now.header)}</b>: {worst.title}
        {more}
      </summary>
      <AlarmList now={now} aside={false} alarms={alarms} />
    </details>
  );
}

/** Large while a call is unanswered, one row while all that stands was seen, away when there is nothing. */
export function AlarmDock({ now, aside }: DockProps): JSX.Element {
  const alarms = inOrder(now.alarms);
  const first = firstUnseen(alarms);
  const isCalm = first === null && soundsNow(now) === null;
  return (
    <>
      <Spoken alarm={first} now={now} />
      {alarms.length > 0 && (
        <section class={isCalm ? 'dock dock-calm' : 'dock'} aria-label={aside ? 'Alarms of the live boil' : 'Alarms'}>
          {isCalm ? (
            <CalmDock now={now} aside={aside} alarms={alarms} />
          ) : (
            <>
              <AlarmList now={now} aside={aside} alarms={alarms} />
              <HurryButtons now={now} first={first} />
            </>
          )}
        </section>
      )}
    </>
  );
}
