// The bands that cannot be missed: practice, replay, connection lost, and what the host has to say.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { hostWords } from '../language/host-words.ts';
import { KeyButton } from './key-button.tsx';
import { say, sayDrawn } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { isLost, linkState, live, said, silentSeconds, tell } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { saidOf } from '../marks/left-out.ts';
import { unsaidNotices } from './unsaid-notices.ts';
import { knowsOfLoss, quietLoss } from '../sound/sounding.ts';

const SPEEDS = [1, 10, 60, 600];
/** As slow as a practice goes, boil seconds a second: beside the others it stands still. */
const STANDING = 1;

interface SpeedsProps {
  speed: number;
  /** It was chosen, and does not hold while a call waits. */
  slowed?: boolean;
  choose: (speed: number) => void;
}

function Speeds({ speed, slowed = false, choose }: SpeedsProps): JSX.Element {
  return (
    <span class={slowed ? 'speeds speeds-slowed' : 'speeds'} role="group" aria-label={say('shell.speed')}>
      {SPEEDS.map((each) => (
        <button key={each} type="button" aria-pressed={speed === each} onClick={() => choose(each)}>
          {each}×
        </button>
      ))}
    </span>
  );
}

/** One command ends it and, once it is over, puts it away. */
async function endPractice(done: MessageKey): Promise<void> {
  if (await tell({ end: true }, say(done))) scrollTo(0, 0);
}

/** What it shows is looked back on until it is put away. */
function OverBand(): JSX.Element {
  return (
    <div class="band band-practice">
      <strong class="band-word">{say('shell.practice')}</strong>
      <span class="band-note">{say('shell.practice_is_over')}</span>
      <button type="button" onClick={() => void endPractice('shell.practice_put_away')}>
        {say('shell.put_practice_away')}
      </button>
    </div>
  );
}

export function PracticeBand({ now }: { now: Now }): JSX.Element {
  // Asked of one practice, it is no question to the next.
  const [askedOf, askOf] = useState<string | null>(null);
  const [speedBefore, keepSpeed] = useState(1);
  const asking = askedOf !== null && askedOf === now.boil;
  // While somebody makes up their mind no afternoon goes by, and no call comes behind the question.
  const ask = (): void => {
    const chosen = now.chosenSpeed ?? now.speed;
    keepSpeed(chosen);
    askOf(now.boil);
    if (chosen > STANDING) void tell({ practice_speed: STANDING });
  };
  const goOn = (): void => {
    askOf(null);
    if (speedBefore > STANDING) void tell({ practice_speed: speedBefore });
  };
  if (now.ended) return <OverBand />;
  return (
    <div class="band band-practice">
      <strong class="band-word">{say('shell.practice')}</strong>
      <span class="band-note">
        {say('shell.made_up')}
        <span class="wide-only">
          {say('shell.made_up_more')}
          {say(now.chosenSpeed === undefined ? 'shell.made_up_clock' : 'shell.made_up_slowed', { speed: now.speed })}
        </span>
      </span>
      {!asking && (
        <Speeds
          speed={now.chosenSpeed ?? now.speed}
          slowed={now.chosenSpeed !== undefined}
          choose={(speed) => void tell({ practice_speed: speed })}
        />
      )}
      {asking ? (
        <span class="confirm" role="group" aria-label={say('shell.end_practice_asked')}>
          <b>{say('shell.end_practice_asked')}</b>{' '}
          <button type="button" class="main-button" onClick={() => void endPractice('shell.practice_over')}>
            {say('end.yes')}
          </button>{' '}
          <button type="button" onClick={goOn}>
            {say('end.no')}
          </button>
        </span>
      ) : (
        <button type="button" aria-label={say('shell.end_practice')} onClick={ask}>
          <span>
            {say('shell.end')}
            <span class="wide-only">{say('shell.end_more')}</span>
          </span>
        </button>
      )}
    </div>
  );
}

/** Ends the sound that says that nothing comes any more. */
function QuietLoss(): JSX.Element | null {
  if (knowsOfLoss.value) return null;
  return (
    <button type="button" onClick={quietLoss}>
      {say('shell.seen')}
    </button>
  );
}

/** Said in large letters when the numbers can no longer be trusted to be of now. */
export function LostBand(): JSX.Element | null {
  const state = linkState.value;
  if (state.state === 'refused') {
    return (
      <div class="band-lost">
        <div role="alert">
          <strong>{say('shell.not_let_in')}</strong> <span>{state.why}</span>
        </div>
        {live.value !== null && <QuietLoss />}
      </div>
    );
  }
  if (!isLost.value) return null;
  return (
    <div class="band-lost">
      <div>
        {/* Its words alone: the seconds beside them would be read out again and again. */}
        <strong role="alert">{say('shell.connection_lost')}</strong>
        <span>
          {sayDrawn('shell.numbers_old', {
            time: lengthOfTime(silentSeconds.value),
            b: (words) => <b>{words}</b>,
          })}
        </span>
      </div>
      <QuietLoss />
    </div>
  );
}

/** What the last command did, or why it did nothing. */
export function SaidLine(): JSX.Element {
  const last = said.value;
  const told = saidOf(last, live.value);
  const putAway = (): void => {
    if (told?.notice !== undefined && live.value !== null) readOnce(keyOf(live.value, told.notice));
    said.value = null;
  };
  return (
    <div class="said" role="status">
      {last !== null && told !== null && (
        <p class={told.good ? 'said-good' : 'said-bad'}>
          <span>
            {told.good ? '✓ ' : '✕ '}
            {hostWords(told.sentence)}
          </span>
          {last.takeBack !== undefined && (
            <KeyButton letter="U" act={last.takeBack}>
              {say('marks.take_back')}
            </KeyButton>
          )}
          <button type="button" aria-label={say('shell.put_message_away')} onClick={putAway}>
            {say('shell.ok')}
          </button>
        </p>
      )}
    </div>
  );
}

/** What somebody put away, for as long as the host says it of that boil; said anew later, it is there again. */
const readNotices = signal<readonly string[]>([]);

/** Of the boil that runs and of a replay apart: what was read stays so while the other is looked at. */
const keyOf = (now: Now, sentence: string): string => `${now.view} ${now.boil ?? ''} ${sentence}`;

const readOnce = (key: string): void => void (readNotices.value = [...readNotices.value, key]);

export function Notices({ now }: { now: Now }): JSX.Element | null {
  useEffect(() => {
    const told = now.notices.map((sentence) => keyOf(now, sentence));
    const still = readNotices.value.filter((key) => !key.startsWith(`${now.view} `) || told.includes(key));
    if (still.length < readNotices.value.length) readNotices.value = still;
  }, [now.notices]);
  const told = now.view === 'live' ? saidOf(said.value, now)?.notice : undefined;
  const isUnread = (sentence: string): boolean => !readNotices.value.includes(keyOf(now, sentence));
  const unread = unsaidNotices(now, told).filter(isUnread);
  if (unread.length === 0) return null;
  return (
    <ul class="notices" role="status">
      {unread.map((sentence) => (
        <li key={sentence}>
          <span>{hostWords(sentence)}</span>
          <button
            type="button"
            aria-label={say('shell.put_message_away')}
            onClick={() => readOnce(keyOf(now, sentence))}
          >
            {say('shell.ok')}
          </button>
        </li>
      ))}
    </ul>
  );
}
