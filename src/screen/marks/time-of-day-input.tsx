// A field for a time of day that has passed, with one as an example of how it is written.
import type { JSX } from 'preact';

export function TimeOfDayInput({
  example,
  value,
  set,
  enter,
}: {
  example: string;
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
      placeholder={example}
      value={value}
      onInput={(event) => set(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') enter?.();
      }}
    />
  );
}
