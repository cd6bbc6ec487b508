// The alarms at the foot of every view, with the two buttons that are used in a hurry.
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import {
  alarmKey,
  byPlaceWords,
  calledWords,
  callsNow,
  firstUnseen,
  inOrder,
  isAside,
  priorityWord,
  quietHint,
  quietUntil,
  quietWords,
  seenWords,
  soundsNow,
} from '../words/alarm-words.ts';
import { AlarmRow } from './alarm-row.tsx';
import { acknowledge, beQuiet, endQuiet } from './answers.ts';
import { AsideForm } from './aside-form.tsx';
import { openForm } from '../marks/open-form.ts';
import { isBig } from '../pans/big-view.tsx';
import { showCalled } from '../pans/called-pan.ts';
import { openList, puttingAside } from './dock-state.ts';
import { isNarrow } from './narrow.ts';
import { sameHand } from './seen-press.ts';
import { useCut } from './use-cut.ts';
import { useSeenPress } from './use-seen-press.ts';
import type { SeenPress } from './use-seen-press.ts';

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

/** What the press does; nothing yet where another call has only just come on top of the one that it was meant for. */
function seenHint({ front, answers }: SeenPress): string {
  if (front !== null && answers.length === 0) return say('alarms.seen.hint_new');
  if (front?.condition === 'over') return say('alarms.seen.hint_over');
  return say(answers.length > 1 ? 'alarms.seen.hint_calls' : 'alarms.seen.hint');
}

function answerAll(answers: readonly AlarmView[], now: Now): void {
  for (const each of answers) acknowledge(each, now.alarms);
  showCalled(answers[0]);
}

function HurryButtons({ now, press }: { now: Now; press: SeenPress }): JSX.Element {
  const { answers } = press;
  const until = quietUntil(now);
  return (
    <div class="hurry">
      <KeyButton
        letter="S"
        class="hurry-seen"
        hint={seenHint(press)}
        disabled={answers.length === 0}
        act={() => answerAll(answers, now)}
      >
        {seenWords(answers, now.alarms)}
      </KeyButton>
      <KeyButton
        letter="Q"
        class="hurry-quiet"
        hint={until === null ? quietHint(now) : quietWords(now, until)}
        disabled={soundsNow(now) === null && until === null}
        act={until === null ? () => beQuiet(now) : endQuiet}
      >
        {until === null ? say('alarms.quiet') : say('alarms.quiet_end')}
      </KeyButton>
    </div>
  );
}

/** The first in full and two more rows leave the pans their room; the first alone on a phone, over a note, and where it is looked at from afar. */
const FEW = { wide: 3, narrow: 1 };

const fewest = (): number => (isNarrow.value || isBig.value || openForm.value !== null ? FEW.narrow : FEW.wide);

/** The rows that the open list has room for; the foremost call is whole and on top in each; what is over waits behind its door while something still calls. */
function rowsShown(alarms: readonly AlarmView[]): AlarmView[] {
  const first = callsNow(alarms);
  if (openList.value === 'aside') return [...(first === null ? [] : [first]), ...alarms.filter(isAside)];
  const standing = alarms.filter((alarm) => !isAside(alarm));
  return openList.value === 'all' ? standing : few(standing);
}

/** What the foremost row names beside its own call is no row of its own. */
function few(standing: readonly AlarmView[]): AlarmView[] {
  const first = callsNow(standing);
  const named = first === null ? [] : sameHand(first, standing);
  return standing.filter((alarm) => alarm.condition === 'active' && !named.includes(alarm)).slice(0, fewest());
}

/** What a person has before their eyes: the rows, and what the foremost row names beside its own call. */
function inSight(alarms: readonly AlarmView[]): AlarmView[] {
  const first = callsNow(alarms);
  if (first === null) return [...alarms];
  const rows = rowsShown(alarms);
  return [...rows, ...sameHand(first, alarms).filter((alarm) => !rows.includes(alarm))];
}

interface ListsProps {
  now: Now;
  /** The view above shows a replay, while these alarms are of the boil that is running. */
  aside: boolean;
  alarms: AlarmView[];
}

interface DoorsProps {
  /** Rows that end under the foot of the list. */
  cut: number;
  scroll: () => void;
  hidden: number;
  putAside: number;
  /** The alarm in full, where its row has no room for the press that puts it aside. */
  calling: AlarmView | null;
}

/** How many more there are, below the foot of the list, behind it, and put aside: a press shows them, and puts them away again. */
function Doors({ cut, scroll, hidden, putAside, calling }: DoorsProps): JSX.Element | null {
  const open = openList.value;
  const toggle = (list: 'all' | 'aside'): void => void (openList.value = open === list ? 'few' : list);
  if (cut === 0 && hidden === 0 && putAside === 0 && calling === null) return null;
  return (
    <p class="dock-doors">
      {cut > 0 && (
        <button type="button" class="more-below" onClick={scroll}>
          ▼ {say('alarms.more_below', { count: String(cut) })}
        </button>
      )}
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

interface RowsProps {
  now: Now;
  alarms: AlarmView[];
  full: AlarmView | null;
  /** What the full row names beside its own call. */
  also?: AlarmView[];
}

function Rows({ now, alarms, full, also = [] }: RowsProps): JSX.Element {
  return (
    <>
      {alarms.map((alarm) => (
        <AlarmRow
          key={alarmKey(alarm)}
          alarm={alarm}
          now={now}
          full={alarm === full}
          canAnswer={true}
          also={alarm === full ? also : []}
        />
      ))}
    </>
  );
}

function Lists({ now, aside, alarms }: ListsProps): JSX.Element {
  const standing = alarms.filter((alarm) => !isAside(alarm));
  const away = alarms.filter(isAside);
  const shown = rowsShown(alarms);
  const full = callsNow(alarms);
  const also = full === null ? [] : sameHand(full, alarms).filter((alarm) => !shown.includes(alarm));
  const fullKey = full === null ? null : alarmKey(full);
  const list = useRef<HTMLUListElement>(null);
  // Who had scrolled down through a long list sees at once what came on top of it.
  useEffect(() => void list.current?.scrollTo({ top: 0 }), [fullKey]);
  const cut = useCut(list);
  return (
    <div class={openList.value === 'few' ? 'dock-lists' : 'dock-lists dock-lists-open'}>
      <ul class="alarms" ref={list}>
        {aside && <li class="dock-aside">{say('alarms.of_live')}</li>}
        <Rows now={now} alarms={shown} full={full} also={also} />
      </ul>
      <Doors
        cut={cut}
        scroll={() => list.current?.scrollBy({ top: list.current.clientHeight / 2 })}
        hidden={standing.length - few(standing).length - (full === null ? 0 : sameHand(full, standing).length)}
        putAside={away.length}
        calling={isNarrow.value ? full : null}
      />
    </div>
  );
}

/** Each is named, so that who presses "seen" has seen it. */
function OverLine({ over, now }: { over: readonly AlarmView[]; now: Now }): JSX.Element {
  return (
    <>
      {over.length === 1 ? say('alarms.over_one') : say('alarms.over_count', { count: String(over.length) })}{' '}
      <b>{byPlaceWords(over, now)}</b>
    </>
  );
}

/** So many that were seen and still stand are named: a bare count would read as if the last press had seen them all. */
const NAMED_SEEN = 3;

/** What needs nobody now, in one row that opens, so that the pans and the notes have the room; what is over asks to be seen. */
function CalmDock({ now, aside, alarms, press }: ListsProps & { press: SeenPress }): JSX.Element {
  const over = alarms.filter((alarm) => alarm.condition === 'over' && !isAside(alarm));
  const standing = alarms.filter((alarm) => alarm.condition === 'active' && !isAside(alarm));
  const away = alarms.filter(isAside).length;
  const [worst] = standing;
  const named = standing.slice(0, NAMED_SEEN);
  const more = standing.length - named.length;
  return (
    <>
      <details>
        <summary>
          <span class="calm-words">
            {aside && `${say('alarms.of_live')} `}
            {over.length > 0 && <OverLine over={over} now={now} />}
            {over.length > 0 && (away > 0 || worst !== undefined) && ' · '}
            {away > 0 && <b>{say('alarms.aside_count', { count: String(away) })}</b>}
            {away > 0 && worst !== undefined && ' · '}
            {worst !== undefined && (
              <>
                {say('alarms.seen_which')} <b>{byPlaceWords(named, now)}</b>
                {more > 0 && say('alarms.and_more', { count: String(more) })}
              </>
            )}
          </span>
        </summary>
        <ul class="alarms">
          <Rows now={now} alarms={alarms} full={null} />
        </ul>
      </details>
      {over.length > 0 && (
        <KeyButton
          letter="S"
          class="hurry-seen"
          disabled={press.answers.length === 0}
          act={() => answerAll(press.answers, now)}
        >
          {seenWords(press.answers, now.alarms)}
        </KeyButton>
      )}
    </>
  );
}

interface AsideProps {
  now: Now;
  chosen: AlarmView;
  /** What calls foremost, which is seen at once though another is being put aside. */
  first: AlarmView | null;
}

/** The choice of how long, under the call that came meanwhile or goes before it. */
function PuttingAside({ now, chosen, first }: AsideProps): JSX.Element {
  const other = first === null || alarmKey(first) === alarmKey(chosen) ? null : first;
  return (
    <div class="dock-lists dock-lists-open">
      {other !== null && (
        <ul class="alarms">
          <Rows now={now} alarms={[other]} full={other} />
        </ul>
      )}
      <AsideForm key={alarmKey(chosen)} alarm={chosen} now={now} close={() => (puttingAside.value = null)} />
    </div>
  );
}

/** Large while a call is unanswered, one row while all that stands was seen or is over, away when there is nothing. */
export function AlarmDock({ now, aside }: { now: Now; aside: boolean }): JSX.Element {
  const alarms = inOrder(now.alarms);
  const first = firstUnseen(alarms);
  const press = useSeenPress(now, inSight(alarms));
  const isCalm = callsNow(alarms) === null && soundsNow(now) === null;
  // The next call is shown in few rows again, whatever list was open over the last; so it is over a note.
  const leavesRoom = isCalm || openForm.value !== null;
  useEffect(() => void (leavesRoom && (openList.value = 'few')), [leavesRoom]);
  // What is over needs no putting aside any more: its form goes, and the list is there again.
  const chosen = alarms.find((alarm) => alarm.condition === 'active' && alarmKey(alarm) === puttingAside.value);
  const body =
    chosen === undefined ? (
      <Lists now={now} aside={aside} alarms={alarms} />
    ) : (
      <PuttingAside now={now} chosen={chosen} first={callsNow(alarms)} />
    );
  return (
    <>
      <Spoken alarm={first} now={now} />
      {alarms.length > 0 && (
        <section
          class={isCalm && chosen === undefined ? 'dock dock-calm' : 'dock'}
          aria-label={aside ? say('alarms.of_live_label') : say('alarms.title')}
        >
          {isCalm && chosen === undefined ? <CalmDock now={now} aside={aside} alarms={alarms} press={press} /> : body}
          {!isCalm && <HurryButtons now={now} press={press} />}
        </section>
      )}
    </>
  );
}
