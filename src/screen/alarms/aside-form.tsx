// Puts an alarm aside in two presses: one opened this, and one says for how long; the reason above can be changed before.
import { say, sayDrawn } from '../language/say.ts';
import type { JSX } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { AlarmView, Now } from '../client/types.ts';
import { useKey } from '../shell/keys.ts';
import { calledWords } from '../words/alarm-words.ts';
import { AlarmShape } from './alarm-shape.tsx';
import { putAside } from './answers.ts';
import { reasonsFor } from './aside-reasons.ts';

const MINUTES = [5, 10, 30];

interface ReasonsProps {
  ready: readonly string[];
  reason: string;
  choose: (reason: string) => void;
}

function Reasons({ ready, reason, choose }: ReasonsProps): JSX.Element {
  return (
    <div class="aside-reasons" role="group" aria-label={say('aside.why')}>
      {ready.map((each) => (
        <button key={each} type="button" aria-pressed={each === reason} onClick={() => choose(each)}>
          {each}
        </button>
      ))}
      <input
        type="text"
        maxLength={200}
        aria-label={say('aside.other')}
        placeholder={say('aside.other_hint')}
        value={ready.includes(reason) ? '' : reason}
        onInput={(event) => choose(event.currentTarget.value)}
      />
    </div>
  );
}

interface AsideFormProps {
  alarm: AlarmView;
  now: Now;
  close: () => void;
}

/** In place of the list; Escape goes back to it. */
export function AsideForm({ alarm, now, close }: AsideFormProps): JSX.Element {
  const ready = reasonsFor(alarm.alarm, now.probes.length > 0);
  const [reason, setReason] = useState(ready[0] ?? '');
  const first = useRef<HTMLButtonElement>(null);
  useKey('Escape', close);
  useLayoutEffect(() => first.current?.focus({ preventScroll: true }), []);
  const put = async (minutes: number): Promise<void> => {
    const why = reason.trim() === '' ? (ready[0] ?? '') : reason.trim();
    if (await putAside(alarm, minutes, why)) close();
  };
  return (
    <div class="aside-form" role="group" aria-label={say('alarms.put_aside')}>
      <p>
        <AlarmShape priority={alarm.priority} flashes={false} />{' '}
        {sayDrawn('aside.text', { what: calledWords(alarm, now.header), b: (words) => <b>{words}</b> })}
      </p>
      {/* Above the lengths: a press of one of those is the end of it. */}
      <Reasons ready={ready} reason={reason} choose={setReason} />
      <div class="row aside-lengths">
        <span>{say('aside.for')}</span>
        {MINUTES.map((minutes, place) => (
          <button key={minutes} type="button" ref={place === 0 ? first : undefined} onClick={() => void put(minutes)}>
            {say('aside.minutes', { minutes: String(minutes) })}
          </button>
        ))}
        <button type="button" onClick={close}>
          {say('aside.back')} <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
    </div>
  );
}
