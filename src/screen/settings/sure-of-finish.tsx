// The choice of how sure the program must be of a finish before it calls it.
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { JSX } from 'preact';
import type { Settings } from '../client/types.ts';
import { saidOptions } from '../boil/inputs.tsx';

const CHOICES: readonly (readonly [number, MessageKey])[] = [
  [0.2, 'sure.0_2'],
  [0.35, 'sure.0_35'],
  [0.5, 'sure.0_5'],
  [0.65, 'sure.0_65'],
  [0.8, 'sure.0_8'],
];

/** What can be chosen, as shares of 1. */
export const SURE_OF_FINISH = CHOICES.map(([value]) => value);

interface SureProps {
  now: Settings;
  change: (part: Partial<Settings>) => void;
}

export function SureOfFinish({ now, change }: SureProps): JSX.Element {
  const kept = now.finish_probability;
  const choices = saidOptions(CHOICES);
  if (!CHOICES.some(([value]) => value === kept))
    choices.push([kept, say('sure.at', { percent: String(Math.round(100 * kept)) })]);
  return (
    <div class="lead-field">
      <label>
        <span>{say('sure.title')}</span>
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
        <p>{say('sure.text')}</p>
      </div>
    </div>
  );
}
