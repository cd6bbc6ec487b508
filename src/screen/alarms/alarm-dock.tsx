// The alarms at the foot of every view, with the two buttons that are used in a hurry.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import {
  alarmKey,
  calledWords,
  firstUnseen,
  inOrder,
  isAside,
  priorityWord,
  quietWords,
  soundsNow,
} from '../words/alarm-words.ts';
import { AlarmRow } from './alarm-row.tsx';
import { acknowledge, ownSeconds } from './answers.ts';
import { AsideForm } from './aside-form.tsx';
import { openList, puttingAside } from './dock-state.ts';
import { isNarrow } from './narrow.ts';

/** Always in the page, so that a reader for the blind hears the text when it comes. */
function Spoken({ alarm, now }: { alarm: AlarmView | null; now: Now }): JSX.Element {
  return (
    <div role="alert" class="unseen">
      {alarm !== null && alarm.condition === 'active'
        ? `${priorityWord(alarm.priority)}. ${calledWords(alarm, now.header)}. ${hostWords(alarm.todo)}`
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
        hint={say('alarms.seen.hint')}
        disabled={first === null}
        act={() => first !== null && acknowledge(first)}
      >
        {say('alarms.seen')}
      </KeyButton>
      <KeyButton
        letter="Q"
        class="hurry-quiet"
        hint={say('alarms.quiet.hint')}
        pressed={isQuiet}
        disabled={soundsNow(now) === null && !isQuiet}
        act={() => void tell({ answer: { silence: { seconds: ownSeconds(120, now) } } })}
      >
        {isQuiet ? quietWords(now, until) : say('alarms.quiet')}
      </KeyButton>
    </div>
  );
}

/** The first in full and two more rows leave the pans their room; on a phone the first alone. */
const FEW = { wide: 3, narrow: 1 };

interface ListsProps {
  now: Now;
  /** The view above shows a replay, while these alarms are of the boil that is running. */
  aside: boolean;
  alarms: AlarmView[];
}

interface DoorsProps {
  hidden: number;
  putAside: number;
  /** The alarm in full, where its row has no room for the press that puts it aside. */
  calling: AlarmView | null;
}

/** How many more there are, and how many were put aside: each opens its list, and closes it again. */
function Doors({ hidden, putAside, calling }: DoorsProps): JSX.Element | null {
  const open = openList.value;
  const toggle = (list: 'all' | 'aside'): void => void (openList.value = open === list ? 'few' : list);
  if (hidden === 0 && putAside === 0 && calling === null) return null;
  return (
    <p class="dock-doors">
      {calling !== null && (
        <KeyButton letter="A" act={() => (puttingAside.value = alarmKey(calling))}>
          {say('alarms.put_it_aside')}
        </KeyButton>
      )}
      {hidden > 0 && (
        <KeyButton letter="L" pressed={open === 'all'} act={() => toggle('all')}>
          {open === 'all' ? say('alarms.fewer') : say('alarms.more', { count: String(hidden) })}
        </KeyButton>
      )}
      {putAside > 0 && (
        <KeyButton letter="K" pressed={open === 'aside'} act={() => toggle('aside')}>
          {say('alarms.aside_count', { count: String(putAside) })}
        </KeyButton>
      )}
    </p>
  );
}

function Rows({ now, alarms, full }: { now: Now; alarms: AlarmView[]; full: AlarmView | null }): JSX.Element {
  return (
    <>
      {alarms.map((alarm) => (
        <AlarmRow key={alarmKey(alarm)} alarm={alarm} now={now} full={alarm === full} canAnswer={true} />
      ))}
    </>
  );
}

function Lists({ now, aside, alarms }: ListsProps): JSX.Element {
  const standing = alarms.filter((alarm) => !isAside(alarm));
  const away = alarms.filter(isAside);
  const few = isNarrow.value ? FEW.narrow : FEW.wide;
  const shown = { few: standing.slice(0, few), all: standing, aside: away }[openList.value];
  const first = openList.value === 'aside' ? null : firstUnseen(alarms);
  const full = first?.condition === 'active' ? first : null;
  return (
    <div class={openList.value === 'few' ? 'dock-lists' : 'dock-lists dock-lists-open'}>
      <ul class="alarms">
        {aside && <li class="dock-aside">{say('alarms.of_live')}</li>}
        <Rows now={now} alarms={shown} full={full} />
      </ul>
      <Doors
        hidden={Math.max(0, standing.length - few)}
        putAside={away.length}
        calling={isNarrow.value ? full : null}
      />
    </div>
  );
}

/** What stands though it was seen or put aside, in one row that opens, so that the pans and the notes have the room. */
function CalmDock({ now, aside, alarms }: ListsProps): JSX.Element {
  const standing = alarms.filter((alarm) => !isAside(alarm));
  const away = alarms.length - standing.length;
  const [worst] = standing;
  const more = standing.length < 2 ? '' : say('alarms.and_more', { count: String(standing.length - 1) });
  return (
    <details>
      <summary>
        {aside && `${say('alarms.of_live')} `}
        {away > 0 && <b>{say('alarms.aside_count', { count: String(away) })}</b>}
        {away > 0 && worst !== undefined && ' · '}
        {worst !== undefined && (
          <>
            {say('alarms.seen_which')} <b>{calledWords(worst, now.header)}</b>
            {more}
          </>
        )}
      </summary>
      <ul class="alarms">
        <Rows now={now} alarms={alarms} full={null} />
      </ul>
    </details>
  );
}

/** Large while a call is unanswered, one row while all that stands was seen, away when there is nothing. */
export function AlarmDock({ now, aside }: { now: Now; aside: boolean }): JSX.Element {
  const alarms = inOrder(now.alarms);
  const first = firstUnseen(alarms);
  const isCalm = first === null && soundsNow(now) === null;
  const chosen = alarms.find((alarm) => alarmKey(alarm) === puttingAside.value);
  const body =
    chosen === undefined ? (
      <Lists now={now} aside={aside} alarms={alarms} />
    ) : (
      <AsideForm key={alarmKey(chosen)} alarm={chosen} now={now} close={() => (puttingAside.value = null)} />
    );
  return (
    <>
      <Spoken alarm={first} now={now} />
      {alarms.length > 0 && (
        <section
          class={isCalm && chosen === undefined ? 'dock dock-calm' : 'dock'}
          aria-label={aside ? say('alarms.of_live_label') : say('alarms.title')}
        >
          {isCalm && chosen === undefined ? <CalmDock now={now} aside={aside} alarms={alarms} /> : body}
          {!isCalm && <HurryButtons now={now} first={first} />}
        </section>
      )}
    </>
  );
}
