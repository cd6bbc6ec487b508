// The choice of how sure the program must be of a finish before it calls it.
import type { JSX } from 'preact';
import type { Settings } from '../client/types.ts';

const CHOICES: readonly (readonly [number, string])[] = [
  [0.2, 'rather too soon: at 20 % likely'],
  [0.35, 'a little soon: at 35 % likely'],
  [0.5, 'as likely as not: at 50 %'],
  [0.65, 'a little late: at 65 % likely'],
  [0.8, 'rather too late: at 80 % likely'],
];

interface SureProps {
  now: Settings;
  change: (part: Partial<Settings>) => void;
}

export function SureOfFinish({ now, change }: SureProps): JSX.Element {
  const kept = now.finish_probability;
  const choices = CHOICES.some(([value]) => value === kept)
    ? CHOICES
    : [...CHOICES, [kept, `at ${Math.round(100 * kept)} % likely`] as const];
  return (
    <div class="lead-field">
      <label>
        <span>Call a pan finished</span>
        <select
          value={String(kept)}
          aria-describedby="means-finish-probability"
          onChange={({ currentTarget: { value } }) => change({ finish_probability: Number(value) })}
        >
          {choices.map(([value, word]) => (
            <option key={value} value={String(value)}>
              {word}
            </option>
          ))}
        </select>
      </label>
      <div id="means-finish-probability" class="hint">
        <p>A strength is a range, not a point. Sooner keeps syrup from burning, later keeps it from being thin.</p>
      </div>
    </div>
  );
}
