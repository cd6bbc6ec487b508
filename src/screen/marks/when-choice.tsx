// The row of a form in which a person says when it was: now, some minutes ago, or at a time of day.
import { MINUTE_MS } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import { say } from '../language/say.ts';
import { timeOfDay } from '../words/clock.ts';
import type { MarkPlace } from './mark-form.ts';
import { TimeOfDayInput } from './time-of-day-input.tsx';
import { dayOf, daysToChoose, justPassed, litAt, type When } from './when.ts';

const MINUTES_AGO = [0, 2, 5, 10, 20];

interface WhenChoiceProps {
  when: When;
  choose: (when: When) => void;
  place: MarkPlace;
  /** A time of day was typed, and Enter pressed. */
  enter: () => void;
}

export function WhenChoice({ when, choose, place: { now, pour, again }, enter }: WhenChoiceProps): JSX.Element {
  const then = pour ?? again;
  // Nothing that is noted is older than the boil.
  const isAgo = (minutes: number): boolean => when !== 'then' && 'ago' in when && when.ago === minutes;
  const { typed, days = undefined } = when !== 'then' && 'typed' in when ? when : { typed: '' };
  const lit = litAt(now);
  const toChoose = daysToChoose(now);
  return (
    <div class="ago" role="group" aria-label={say('marks.how_long_ago')}>
      <span>{say('marks.when')}</span>
      {then !== undefined && (
        <button type="button" aria-pressed={when === 'then'} onClick={() => choose('then')}>
          {say('marks.at', { time: timeOfDay(now, then.at) })}
        </button>
      )}
      {MINUTES_AGO.filter((each) => each * MINUTE_MS <= now.t).map((each) => (
        <button key={each} type="button" aria-pressed={isAgo(each)} onClick={() => choose({ ago: each })}>
          {each === 0 ? say('marks.now') : say('marks.ago', { minutes: String(each) })}
        </button>
      ))}
      {lit !== null && (
        <button type="button" aria-pressed={typed === lit.typed && days === lit.days} onClick={() => choose(lit)}>
          {say('marks.as_lit')}
        </button>
      )}
      <label>
        {say('marks.or_at')}{' '}
        <TimeOfDayInput
          example={justPassed(now)}
          value={typed}
          set={(value) => choose(value === '' ? { ago: 0 } : { typed: value, ...(toChoose.length > 0 && { days }) })}
          enter={enter}
        />
      </label>
      {toChoose.length > 0 && (
        <select
          aria-label={say('marks.which_day')}
          value={dayOf(when, now)}
          onChange={({ currentTarget }) => choose({ typed, days: Number(currentTarget.value) })}
        >
          {toChoose.map((each) => (
            <option key={each} value={each}>
              {say('marks.day', { days: each })}
            </option>
          ))}
        </select>
      )}
    </div>
  );
}
