// One alarm in the list: what is wrong, what it means, what to do, since when, and the numbers behind it.
import type { ComponentChildren, JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { alarmKey, asSentence, calledWords, isAside, priorityWord } from '../words/alarm-words.ts';
import { lengthOfTime, timeOfDay } from '../words/clock.ts';
import { whyWords } from '../words/why-words.ts';
import { AlarmShape } from './alarm-shape.tsx';
import { acknowledge, takeUpAgain } from './answers.ts';
import { puttingAside } from './dock-state.ts';
import { isNarrow } from './narrow.ts';

function stateWords(alarm: AlarmView, now: Now): string {
  const since = `since ${timeOfDay(now, alarm.since)}, ${lengthOfTime((now.t - alarm.since) / 1000)}`;
  if (alarm.asideUntil !== null) {
    const reason = (alarm.asideReason ?? '') === '' ? '' : `, “${alarm.asideReason}”`;
    return `comes back ${timeOfDay(now, alarm.asideUntil)}${reason}`;
  }
  if (alarm.condition === 'over') return `over, not yet seen, ${since}`;
  return alarm.answered ? `seen, ${since}` : since;
}

function stateWord(alarm: AlarmView): string {
  if (isAside(alarm)) return 'Put aside';
  return alarm.condition === 'over' ? 'Over' : priorityWord(alarm.priority);
}

function Head({ alarm, now }: { alarm: AlarmView; now: Now }): JSX.Element {
  const calls = !alarm.answered && alarm.condition === 'active' && !isAside(alarm);
  return (
    <>
      <AlarmShape priority={alarm.priority} flashes={calls} isOver={alarm.condition === 'over' || isAside(alarm)} />
      <span class={`alarm-word alarm-word-${calls ? alarm.priority : 'quiet'}`}>{stateWord(alarm)}</span>
      <b class="alarm-title">{calledWords(alarm, now.header)}</b>
      <span class="alarm-state">{stateWords(alarm, now)}</span>
    </>
  );
}

function Body({ alarm, children }: { alarm: AlarmView; children?: ComponentChildren }): JSX.Element {
  return (
    <div class="alarm-body">
      {alarm.alarm !== 'reminder' && <p>{asSentence(whyWords(alarm.why, settings.value))}</p>} <p>{alarm.means}</p>
      <p class="alarm-todo">{alarm.todo}</p>
      {children}
    </div>
  );
}

function Answers({ alarm }: { alarm: AlarmView }): JSX.Element {
  if (isAside(alarm)) {
    return (
      <button type="button" onClick={() => takeUpAgain(alarm)}>
        Take it up again
      </button>
    );
  }
  return (
    <span class="alarm-answers">
      {!alarm.answered && (
        <button type="button" onClick={() => acknowledge(alarm)}>
          Seen
        </button>
      )}
      {alarm.condition === 'active' && (
        <button type="button" onClick={() => (puttingAside.value = alarmKey(alarm))}>
          Put aside
        </button>
      )}
    </span>
  );
}

interface AlarmRowProps {
  alarm: AlarmView;
  now: Now;
  full: boolean;
  canAnswer: boolean;
}

export function AlarmRow({ alarm, now, full, canAnswer }: AlarmRowProps): JSX.Element {
  const classes = `alarm${alarm.answered ? ' alarm-seen' : ''}`;
  if (full) {
    return (
      <li class={`${classes} alarm-full`}>
        <div class="alarm-head">
          <Head alarm={alarm} now={now} />
          {canAnswer && !isNarrow.value && (
            <KeyButton letter="A" class="aside-button" act={() => (puttingAside.value = alarmKey(alarm))}>
              Put aside
            </KeyButton>
          )}
        </div>
        <Body alarm={alarm} />
      </li>
    );
  }
  return (
    <li class={classes}>
      <details>
        <summary class="alarm-head">
          <Head alarm={alarm} now={now} />
        </summary>
        <Body alarm={alarm} />
      </details>
      {canAnswer && <Answers alarm={alarm} />}
    </li>
  );
}
