// The page for a phone, and for a tablet on the shelf: the next thing, the calls, the pans, and how old all of it is.
import { signal } from '@preact/signals';
import type { JSX } from 'preact';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { acknowledge, beQuiet, endQuiet } from '../alarms/answers.ts';
import { sameHand } from '../alarms/seen-press.ts';
import { useSeenPress } from '../alarms/use-seen-press.ts';
import { isLost, linkState, live, said, settings, silentSeconds } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { AlarmView, Now } from '../client/types.ts';
import { LostBand } from '../shell/bands.tsx';
import { allowSound, playBurst, soundState } from '../sound/player.ts';
import {
  alarmKey,
  asSentence,
  calledWords,
  inOrder,
  isAside,
  isUnheard,
  priorityWord,
  quietHint,
  quietUntil,
  quietWords,
  seenWords,
  soundsNow,
} from '../words/alarm-words.ts';
import { ageWords, clockMs, hoursAndMinutes } from '../words/clock.ts';
import { nextLine } from '../words/next-line.ts';
import { whyWords } from '../words/why-words.ts';
import { NoBoil } from './no-boil.tsx';
import { phone } from './may-answer.ts';
import { callingFirst } from './pan-order.ts';
import { PhonePan } from './phone-pan.tsx';

/** Read from five metres: the pans alone, as large as they go. */
const isWall = signal(false);

function Head({ now }: { now: Now }): JSX.Element {
  const line = now.mode === 'idle' ? null : nextLine(now);
  return (
    <header class="phone-head">
      {now.mode === 'practice' && <p class="phone-practice">{say('phone.practice')}</p>}
      <p class="phone-next">
        {line === null ? (
          say('shell.no_boil')
        ) : (
          <>
            {line.priority !== null && (
              <>
                <AlarmShape priority={line.priority} flashes={false} />{' '}
              </>
            )}
            {line.who !== null && <b>{say('next.who', { who: line.who })} </b>}
            {line.what} {line.range !== null && <small>{line.range}</small>}
          </>
        )}
      </p>
      <p class={isLost.value ? 'phone-age phone-age-lost' : 'phone-age'}>
        {hoursAndMinutes(clockMs(now))} · {ageWords(now, silentSeconds.value)}
      </p>
    </header>
  );
}

interface CallProps {
  alarm: AlarmView;
  now: Now;
  /** Calls of the same pan for the same hand, which are named in it: they have no place of their own. */
  also: readonly AlarmView[];
}

function Call({ alarm, now, also }: CallProps): JSX.Element {
  return (
    <li class={`phone-call phone-call-${alarm.priority}`}>
      <AlarmShape priority={alarm.priority} flashes={true} />
      <div>
        <span class="phone-priority">{priorityWord(alarm.priority)}</span> <b>{calledWords(alarm, now.header)}</b>
        {alarm.alarm !== 'reminder' && <p>{asSentence(hostWords(whyWords(alarm.why, settings.value)))}</p>}
        <p>{hostWords(alarm.todo)}</p>
        {isUnheard(alarm, now) && <p>{say('phone.came_in_quiet')}</p>}
        {also.length > 0 && <p>{say('alarms.also', { what: also.map(({ title }) => hostWords(title)).join(', ') })}</p>}
      </div>
    </li>
  );
}

/** What came and went while nobody looked, in one line: it needs nobody any more, and the pans the room. */
function OverLine({ over, now }: { over: readonly AlarmView[]; now: Now }): JSX.Element | null {
  const [latest] = [...over].sort((a, b) => b.since - a.since);
  if (latest === undefined) return null;
  const what = calledWords(latest, now.header);
  return (
    <p class="phone-over">
      {over.length === 1 ? say('phone.over', { what }) : say('phone.over_many', { count: String(over.length), what })}
    </p>
  );
}

interface AnswersProps {
  now: Now;
  /** What a press of "I have seen it" answers. */
  answers: readonly AlarmView[];
}

function Answers({ now, answers }: AnswersProps): JSX.Element {
  const until = quietUntil(now);
  return (
    <div class="phone-answers">
      <button
        type="button"
        class="hurry-seen"
        onClick={() => answers.forEach((each) => acknowledge(each, now.alarms, wasSeenWords(answers, now)))}
      >
        {seenWords(answers, now.alarms)}
      </button>
      <button
        type="button"
        class="hurry-quiet"
        disabled={soundsNow(now) === null && until === null}
        onClick={until === null ? () => beQuiet(now) : endQuiet}
      >
        <span>
          {until === null ? say('alarms.quiet') : say('alarms.quiet_end')}
          {until !== null && <small>{quietWords(now, until)}</small>}
          {until === null && now.mode === 'practice' && <small>{quietHint(now)}</small>}
        </span>
      </button>
    </div>
  );
}

/** A silence that runs on, where no call stands whose buttons would tell of it. */
function QuietLine({ now, mayAnswer }: { now: Now; mayAnswer: boolean }): JSX.Element | null {
  const until = quietUntil(now);
  if (until === null) return null;
  return (
    <p class="phone-quiet">
      <span>{quietWords(now, until)}</span>
      {mayAnswer && (
        <button type="button" onClick={endQuiet}>
          {say('alarms.quiet_end')}
        </button>
      )}
    </p>
  );
}

/** Said once the laptop has taken it. */
const wasSeenWords = (answers: readonly AlarmView[], now: Now): string =>
  say('phone.seen', { what: answers.map((alarm) => calledWords(alarm, now.header)).join(', ') });

const MOST_CALLS = 3;
/** More pans than this stand as rows, so that six of them fit a phone. */
const MOST_CARDS = 3;

function Calls({ now }: { now: Now }): JSX.Element {
  const unseen = inOrder(now.alarms).filter((alarm) => !isAside(alarm) && !alarm.answered);
  const active = unseen.filter(({ condition }) => condition === 'active');
  const over = unseen.filter(({ condition }) => condition === 'over');
  const [first] = active;
  const also = first === undefined ? [] : sameHand(first, active);
  const calls = active.filter((alarm) => !also.includes(alarm));
  const { answers } = useSeenPress(now, [...calls.slice(0, MOST_CALLS), ...also, ...(first === undefined ? over : [])]);
  const mayAnswer = phone.value?.mayAnswer === true;
  return (
    <>
      <div role="alert" class="unseen">
        {first === undefined
          ? ''
          : say('phone.call', { what: calledWords(first, now.header), todo: hostWords(first.todo) })}
      </div>
      {(unseen.length === 0 || !mayAnswer) && <QuietLine now={now} mayAnswer={mayAnswer} />}
      {unseen.length > 0 && (
        <section
          class={first === undefined ? 'phone-calls phone-calls-over' : 'phone-calls'}
          aria-label={say('phone.calls')}
        >
          {calls.length > 0 && (
            <ul>
              {calls.slice(0, MOST_CALLS).map((alarm) => (
                <Call key={alarmKey(alarm)} alarm={alarm} now={now} also={alarm === first ? also : []} />
              ))}
            </ul>
          )}
          {calls.length > MOST_CALLS && <p>{say('phone.more_calls', { count: String(calls.length - MOST_CALLS) })}</p>}
          <OverLine over={over} now={now} />
          {mayAnswer && <Answers now={now} answers={answers} />}
          {!mayAnswer && first !== undefined && <p class="hint">{say('phone.only_look')}</p>}
        </section>
      )}
    </>
  );
}

const SOUND_WORDS: Record<typeof soundState.value, MessageKey> = {
  waiting: 'phone.sound.waiting',
  ready: 'shell.try_sound',
  none: 'phone.sound.none',
};

/** Of no pan there is no wall view. */
function Foot({ hasPans }: { hasPans: boolean }): JSX.Element {
  const press = (): void => {
    if (soundState.value === 'ready') playBurst('medium', settings.value.loudness);
    else void allowSound();
  };
  return (
    <footer class="phone-foot">
      <button type="button" disabled={soundState.value === 'none'} onClick={press}>
        {say(SOUND_WORDS[soundState.value])}
      </button>
      {hasPans && (
        <button type="button" aria-pressed={isWall.value} onClick={() => (isWall.value = !isWall.value)}>
          {say('phone.wall')}
        </button>
      )}
    </footer>
  );
}

/** What the last press did, or why it did nothing. */
function SaidLine(): JSX.Element {
  const last = said.value;
  return (
    <div role="status">
      {last !== null && (
        <p class={last.good ? 'phone-done' : 'problem'}>
          {last.good ? '✓' : '✕'} {hostWords(last.sentence)}
        </p>
      )}
    </div>
  );
}

export function PhoneApp(): JSX.Element {
  const now = live.value;
  const runs = now !== null && now.mode !== 'idle' && !now.ended;
  const isMany = (now?.readings.length ?? 0) > MOST_CARDS;
  return (
    <div class={isWall.value && runs ? 'phone phone-wall' : 'phone'}>
      <LostBand />
      {/* Who was put out is shown nothing any more, not even what was shown before. */}
      {linkState.value.state === 'refused' ? null : now === null ? (
        <header class="phone-head">
          <p class="phone-next">{say('shell.looking')}</p>
        </header>
      ) : (
        <>
          <Head now={now} />
          <main>
            <h1 class="unseen">{say('phone.pans')}</h1>
            <SaidLine />
            <Calls now={now} />
            {runs ? (
              <div class={isMany ? 'phone-pans phone-rows' : 'phone-pans'}>
                {(isWall.value ? now.readings : callingFirst(now)).map((reading) => (
                  <PhonePan key={reading.pan} now={now} reading={reading} isRow={isMany} />
                ))}
              </div>
            ) : (
              <NoBoil now={now} />
            )}
          </main>
          <Foot hasPans={runs} />
        </>
      )}
    </div>
  );
}
