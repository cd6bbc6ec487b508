// A field for a day, or a moment of it, with what it holds in words: the browser writes days as its own language does, 4/5 or 5/4, whatever is chosen here.
import type { JSX } from 'preact';
import { useId } from 'preact/hooks';
import { dayInWords } from '../words/clock.ts';

interface DateInputProps {
  label: string;
  /** YYYY-MM-DD, with a time of day YYYY-MM-DDTHH:MM, or empty. */
  value: string;
  set: (day: string) => void;
  /** The last day that can be meant. */
  most?: string;
  required?: boolean;
  withTime?: boolean;
}

export function DateInput({
  label,
  value,
  set,
  most,
  required = false,
  withTime = false,
}: DateInputProps): JSX.Element {
  const said = useId();
  // What has no zone is read in the machine's: in none of all it is told as it was typed.
  const words = dayInWords(withTime ? `${value}Z` : value);
  return (
    <label>
      <span>{label}</span>
      <input
        aria-label={label}
        aria-describedby={value === '' ? undefined : said}
        type={withTime ? 'datetime-local' : 'date'}
        value={value}
        max={most}
        required={required}
        onInput={(event) => set(event.currentTarget.value)}
      />
      {value !== '' && (
        <small class="hint day-words" id={said}>
          {words}
        </small>
      )}
    </label>
  );
}
