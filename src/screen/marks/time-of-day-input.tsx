// A field for a time of day that has passed, with the one just passed as an example of how it is written.
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { justPassed } from './when.ts';

export function TimeOfDayInput({
  now,
  value,
  set,
  enter,
}: {
  now: Now;
  value: string;
  set: (typed: string) => void;
  /** What Enter does where the field stands in no form. */
  enter?: () => void;
}): JSX.Element {
  return (
    <input
      type="text"
      inputMode="decimal"
      autoComplete="off"
      class="number"
      placeholder={justPassed(now)}
      value={value}
      onInput={(event) => set(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') enter?.();
      }}
    />
  );
}
