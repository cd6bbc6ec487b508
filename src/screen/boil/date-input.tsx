// A field for a day, with the day that it holds in words: the browser writes days as its own language does, 4/5 or 5/4.
import type { JSX } from 'preact';
import { dayInYear } from '../words/clock.ts';

interface DateInputProps {
  label: string;
  /** YYYY-MM-DD, or empty. */
  value: string;
  set: (day: string) => void;
  /** The last day that can be meant. */
  most?: string;
  required?: boolean;
}

export function DateInput({ label, value, set, most, required = false }: DateInputProps): JSX.Element {
  return (
    <label>
      <span>
        {label} {value !== '' && <small class="hint">{dayInYear(value)}</small>}
      </span>
      <input
        type="date"
        value={value}
        max={most}
        required={required}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}
