// Puts an alarm aside in two presses: one opened this, and one says for how long; the reason can be changed before.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { AlarmView, Now } from '../client/types.ts';
import { useKey } from '../shell/keys.ts';
import { calledWords } from '../words/alarm-words.ts';
import { putAside } from './answers.ts';

const MINUTES = [5, 10, 30];
const STAND_BESIDE = 'I stand beside it';
const REASONS = [STAND_BESIDE, 'The probe is being changed', 'Somebody is on the way', 'Known, and it can wait'];

/** The reason that is likeliest for an alarm stands first and is chosen. */
function reasonsFor(alarm: AlarmView['alarm']): string[] {
  const likeliest: Partial<Record<AlarmView['alarm'], string>> = {
    'probe-lost': 'The probe is being changed',
    'probe-suspect': 'The probe is being changed',
    'port-lost': 'The board is being seen to',
    'no-sound': 'I stay in sight of the screen',
    'power-low': 'It will be plugged in',
    'not-recording': 'Room is being made on the disk',
    reminder: 'Not just now',
  };
  const first = likeliest[alarm] ?? STAND_BESIDE;
  return [first, ...REASONS.filter((reason) => reason !== first)];
}

interface ReasonsProps {
  ready: readonly string[];
  reason: string;
  choose: (reason: string) => void;
}

function Reasons({ ready, reason, choose }: ReasonsProps): JSX.Element {
  return (
    <div class="aside-reasons" role="group" aria-label="Why">
      {ready.map((each) => (
        <button key={each} type="button" aria-pressed={each === reason} onClick={() => choose(each)}>
          {each}
        </button>
      ))}
      <input
        type="text"
        maxLength={200}
        aria-label="Or another reason"
        placeholder="or another reason"
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
  const ready = reasonsFor(alarm.alarm);
  const [reason, setReason] = useState(ready[0] ?? '');
  const first = useRef<HTMLButtonElement>(null);
  useKey('Escape', close);
  useEffect(() => first.current?.focus({ preventScroll: true }), []);
  const put = async (minutes: number): Promise<void> => {
    const why = reason.trim() === '' ? (ready[0] ?? '') : reason.trim();
    if (await putAside(alarm, minutes, why, now)) close();
  };
  return (
    <div class="aside-form" role="group" aria-label="Put aside">
      <p>
        Put aside <b>{calledWords(alarm, now.header)}</b>: no call from it until the time is over, even if it gets
        worse. Then it calls again by itself.
      </p>
      <div class="row aside-lengths">
        <span>For</span>
        {MINUTES.map((minutes, place) => (
          <button key={minutes} type="button" ref={place === 0 ? first : undefined} onClick={() => void put(minutes)}>
            {minutes} min
          </button>
        ))}
        <button type="button" onClick={close}>
          Back <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
      <Reasons ready={ready} reason={reason} choose={setReason} />
    </div>
  );
}
