// The field of the start form that says when the fire was lit.
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { TimeOfDayInput } from '../marks/time-of-day-input.tsx';
import { type Lit, litExample, typedLit } from './lit.ts';

const NOW = 'now';

export function LitField({ now }: { now: Now }): JSX.Element {
  const lit = typedLit.value;
  const choose = (day: string): void => {
    typedLit.value = day === NOW ? null : { day: day as Lit['day'], time: lit?.time ?? '' };
  };
  return (
    <>
      <label>
        <span>{say('boil.lit')}</span>
        <select value={lit?.day ?? NOW} onChange={({ currentTarget }) => choose(currentTarget.value)}>
          <option value={NOW}>{say('marks.now')}</option>
          <option value="today">{say('boil.lit.today')}</option>
          <option value="yesterday">{say('boil.lit.yesterday')}</option>
        </select>
      </label>
      {lit !== null && (
        <label>
          <span>{say('boil.lit.at')}</span>
          <TimeOfDayInput
            example={litExample(now)}
            value={lit.time}
            set={(time) => (typedLit.value = { ...lit, time })}
          />
        </label>
      )}
    </>
  );
}
