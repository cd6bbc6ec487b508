// One alarm in the list: what is wrong, what it means, what to do, since when, and the numbers behind it.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { ComponentChildren, JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { alarmKey, asSentence, calledWords, isAside, isUnheard, priorityWord } from '../words/alarm-words.ts';
import { timeOfDay } from '../words/clock.ts';
import { whyWords } from '../words/why-words.ts';
import { AlarmShape } from './alarm-shape.tsx';
import { acknowledge, takeUpAgain } from './answers.ts';
import { puttingAside } from './dock-state.ts';
import { isNarrow } from './narrow.ts';
import { chooseCalled, showCalled } from '../pans/called-pan.ts';

function stateWords(alarm: AlarmView, now: Now): string {
  // What burns is said since it burns, not since it was about to.
  const from = alarm.cameAt ?? alarm.since;
  const since = say('alarms.since', { time: timeOfDay(now, from), length: lengthOfTime((now.t - from) / 1000) });
  if (alarm.asideUntil !== null) {
    const time = timeOfDay(now, alarm.asideUntil);
    const reason = alarm.asideReason ?? '';
    return reason === '' ? say('alarms.comes_back', { time }) : say('alarms.comes_back_why', { time, reason });
  }
  if (alarm.condition === 'over') return say('alarms.over_unseen', { since });
  if (!alarm.answered) return isUnheard(alarm, now) ? say('alarms.came_in_quiet', { since }) : since;
  const { answeredBy: who } = alarm;
  return who === undefined ? say('alarms.seen_since', { since }) : say('alarms.seen_by', { who, since });
}

function stateWord(alarm: AlarmView): string {
  if (isAside(alarm)) return say('alarms.is_aside');
  return alarm.condition === 'over' ? say('alarms.over') : priorityWord(alarm.priority);
}

function Head({ alarm, now }: { alarm: AlarmView; now: Now }): JSX.Element {
  const calls = !alarm.answered && alarm.condition === 'active' && !isAside(alarm);
  return (
    <>
      <AlarmShape priority={alarm.priority} flashes={calls} isOver={alarm.condition === 'over' || isAside(alarm)} />
      <span class={`alarm-word alarm-word-${calls ? alarm.priority : 'quiet'}`}>{stateWord(alarm)}</span>
      {/* By keys a pan is chosen by its own number. */}
      <b class="alarm-title" onClick={() => chooseCalled(alarm)}>
        {calledWords(alarm, now.header)}
      </b>
      <span class="alarm-state">{stateWords(alarm, now)}</span>
    </>
  );
}

function Body({ alarm, children }: { alarm: AlarmView; children?: ComponentChildren }): JSX.Element {
  return (
    <div class="alarm-body">
      {alarm.alarm !== 'reminder' && <p>{asSentence(hostWords(whyWords(alarm.why, settings.value)))}</p>}{' '}
      <p class="alarm-means">{hostWords(alarm.means)}</p>
      <p class="alarm-todo">{hostWords(alarm.todo)}</p>
      {children}
    </div>
  );
}

function Answers({ alarm, now }: { alarm: AlarmView; now: Now }): JSX.Element {
  const answer = (): void => {
    acknowledge(alarm, now.alarms);
    showCalled(alarm);
  };
  if (isAside(alarm)) {
    return (
      <button type="button" onClick={() => takeUpAgain(alarm)}>
        {say('alarms.take_up')}
      </button>
    );
  }
  return (
    <span class="alarm-answers">
      {!alarm.answered && (
        <button type="button" onClick={answer}>
          {say('alarms.seen_short')}
        </button>
      )}
      {alarm.condition === 'active' && (
        <button type="button" onClick={() => (puttingAside.value = alarmKey(alarm))}>
          {say('alarms.put_aside')}
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
  /** Calls of the same pan for the same hand, which it names in one line: they have no row of their own. */
  also?: readonly AlarmView[];
}

export function AlarmRow({ alarm, now, full, canAnswer, also = [] }: AlarmRowProps): JSX.Element {
  const classes = `alarm${alarm.answered ? ' alarm-seen' : ''}`;
  if (full) {
    return (
      <li class={`${classes} alarm-full`}>
        <div class="alarm-head">
          <Head alarm={alarm} now={now} />
          {canAnswer && !isNarrow.value && (
            <KeyButton
              letter="A"
              class="aside-button"
              hint={say('alarms.put_aside.hint')}
              act={() => (puttingAside.value = alarmKey(alarm))}
            >
              {say('alarms.put_aside')}
            </KeyButton>
          )}
        </div>
        <Body alarm={alarm}>
          {also.length > 0 && (
            <p class="alarm-also">
              {say('alarms.also', { what: also.map(({ title }) => hostWords(title)).join(', ') })}
            </p>
          )}
        </Body>
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
      {canAnswer && <Answers alarm={alarm} now={now} />}
    </li>
  );
}
