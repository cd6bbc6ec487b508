// The alarms of a boil, the latest first, each with its answer and end, and a person's word that it was of no use.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now, RaisingShown } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { priorityWord } from '../words/alarm-words.ts';
import { timeOfDay } from '../words/clock.ts';
import { courseWords, lookBackLines, raisingWords } from '../words/history-words.ts';
import { whyWords } from '../words/why-words.ts';
import { AlarmShape } from './alarm-shape.tsx';
import { noUseMark, sayNoUse, takeBackNoUse } from './answers.ts';
import { toggled } from './page-word.ts';
import type { PageWord } from './page-word.ts';
import { FirstFew } from '../shell/first-few.tsx';

const SHOWN_FIRST = 5;

interface NoUseProps {
  raising: RaisingShown;
  now: Now;
  what: string;
  page: PageWord | null;
}

/** By a mark while the boil runs, on the boil's page afterwards. What was said by the other way cannot be taken back. */
function NoUse({ raising, now, what, page }: NoUseProps): JSX.Element | null {
  const mark = page === null ? noUseMark(raising, now.marks) : null;
  const isOnPage = page !== null && toggled(page.noUse, raising).length < page.noUse.length;
  if (!raising.noUse) {
    const tell = (): void => (page === null ? sayNoUse(raising, what) : page.toggle(raising));
    return (
      <button type="button" aria-label={say('alarms.no_use_what', { what })} onClick={tell}>
        {say('alarms.no_use')}
      </button>
    );
  }
  if (mark === null && !isOnPage) return null;
  const takeBack = (): void => (mark === null ? page?.toggle(raising) : takeBackNoUse(mark));
  return (
    <button type="button" aria-label={say('alarms.take_back_what', { what })} onClick={takeBack}>
      {say('alarms.take_back')}
    </button>
  );
}

interface RowProps {
  raising: RaisingShown;
  now: Now;
  canSay: boolean;
  page: PageWord | null;
  /** Goes to that moment, ms of boil time; null where there is nowhere to go. */
  open: ((at: number) => void) | null;
}

function Row({ raising, now, canSay, page, open }: RowProps): JSX.Element {
  const what = raisingWords(raising, now);
  return (
    <li>
      <time>
        {open === null ? (
          timeOfDay(now, raising.raisedAt)
        ) : (
          <button
            type="button"
            class="moment"
            aria-label={say('history.open_at', { time: timeOfDay(now, raising.raisedAt) })}
            onClick={() => open(raising.raisedAt)}
          >
            {timeOfDay(now, raising.raisedAt)}
          </button>
        )}
      </time>
      <AlarmShape priority={raising.priority} flashes={false} isOver={raising.clearedAt !== null} />
      <span class="raising">
        <b>{what}</b>
        <small>
          {say('alarms.called_as', { priority: priorityWord(raising.priority) })}{' '}
          {raising.alarm === 'reminder' ? '' : `${hostWords(whyWords(raising.why, settings.value))} · `}
          {courseWords(raising, now).join(' · ')}
        </small>
      </span>
      {raising.noUse && <em>{say('alarms.of_no_use')}</em>}
      {(canSay || page !== null) && <NoUse raising={raising} now={now} what={what} page={page} />}
    </li>
  );
}

interface AlarmHistoryProps {
  now: Now;
  /** The boil still takes marks. */
  canSay: boolean;
  /** Where it is said after the boil; null where it is not. */
  page?: PageWord | null;
  open?: ((at: number) => void) | null;
}

export function AlarmHistory({ now, canSay, page = null, open = null }: AlarmHistoryProps): JSX.Element | null {
  const latestFirst = [...now.history.raisings].reverse();
  if (latestFirst.length === 0) return null;
  const { earlier } = now.history;
  return (
    <section class="panel history" aria-label={say('alarms.of_boil')}>
      <h2>{say('alarms.of_boil')}</h2>
      {(canSay || page !== null) && <p class="hint">{say('alarms.say_no_use')}</p>}
      <FirstFew
        items={latestFirst}
        shown={SHOWN_FIRST}
        row={(raising, place) => (
          <Row
            key={`${raising.raisedAt} ${raisingWords(raising, now)} ${place}`}
            raising={raising}
            now={now}
            canSay={canSay}
            page={page}
            open={open}
          />
        )}
      />
      {earlier > 0 && <p class="hint">{say('alarms.earlier', { count: earlier })}</p>}
    </section>
  );
}

/** What the alarms asked of one person, once there is a whole to look back on. */
export function LookBackPanel({ now }: { now: Now }): JSX.Element {
  const { lookBack, earlier } = now.history;
  return (
    <section class="panel" aria-label={say('alarms.look_back')}>
      <h2>{say('alarms.look_back')}</h2>
      <dl class="look-back">
        {lookBackLines(lookBack, earlier, now).map(([what, says]) => (
          <div key={what}>
            <dt>{what}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
