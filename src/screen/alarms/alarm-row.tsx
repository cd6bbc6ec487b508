// One alarm in the list: what is wrong, what it means, what to do, since when, and the numbers behind it.
import type { JSX } from 'preact';
import { tell } from '../client/store.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { asSentence, priorityWord, whereWords } from '../words/alarm-words.ts';
import { timeOfDay } from '../words/clock.ts';
import { AlarmShape } from './alarm-shape.tsx';

/** Says "I have seen this one". */
export function acknowledge(alarm: AlarmView): void {
  const port = alarm.port === null ? {} : { port: alarm.port };
  void tell({ answer: { acknowledge: { pan: alarm.pan, alarm: alarm.alarm, ...port } } });
}

function stateWords(alarm: AlarmView, now: Now): string {
  const since = `since ${timeOfDay(now, alarm.since)}`;
  if (alarm.condition === 'over') return `over, not yet seen, ${since}`;
  if (alarm.asideUntil !== null) return `put aside until ${timeOfDay(now, alarm.asideUntil)}, ${since}`;
  return alarm.answered ? `seen, ${since}` : since;
}

interface AlarmRowProps {
  alarm: AlarmView;
  now: Now;
  full: boolean;
  canAnswer: boolean;
}

export function AlarmRow({ alarm, now, full, canAnswer }: AlarmRowProps): JSX.Element {
  const unseen = !alarm.answered && alarm.condition === 'active';
  const body = (
    <>
      <p>{asSentence(alarm.why)}</p> <p>{alarm.means}</p>
      <p class="alarm-todo">{alarm.todo}</p>
    </>
  );
  const head = (
    <>
      <AlarmShape priority={alarm.priority} flashes={unseen} isOver={alarm.condition === 'over'} />
      <span class={`alarm-word alarm-word-${unseen ? alarm.priority : 'quiet'}`}>
        {alarm.condition === 'over' ? 'Over' : priorityWord(alarm.priority)}
      </span>
      <b class="alarm-title">
        {whereWords(alarm, now.header)}: {alarm.title}
      </b>
      <span class="alarm-state">{stateWords(alarm, now)}</span>
    </>
  );
  const classes = `alarm${alarm.answered ? ' alarm-seen' : ''}`;
  if (full) {
    return (
      <li class={`${classes} alarm-full`}>
        <div class="alarm-head">{head}</div>
        <div class="alarm-body">{body}</div>
      </li>
    );
  }
  return (
    <li class={classes}>
      <details>
        <summary class="alarm-head">{head}</summary>
        <div class="alarm-body">{body}</div>
      </details>
      {canAnswer && !alarm.answered && (
        <button type="button" onClick={() => acknowledge(alarm)}>
          Seen
        </button>
      )}
    </li>
  );
}
