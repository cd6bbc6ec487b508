// The labelled fields that the forms of a boil are made of.
import type { ComponentChildren, JSX } from 'preact';
import { type MessageKey, say } from '../language/say.ts';

export function Labelled({
  label,
  unit,
  field,
  children,
}: {
  label: string;
  unit?: string;
  /** By which a form finds it again when it was refused. */
  field?: string;
  children: ComponentChildren;
}): JSX.Element {
  return (
    <label data-field={field}>
      <span>{label}</span>
      <span class="with-unit">
        {children}
        {unit !== undefined && <span>{unit}</span>}
      </span>
    </label>
  );
}

interface NumberProps {
  label: string;
  unit: string;
  value: string;
  set: (value: string) => void;
  hint?: string;
  field?: string;
}

export function NumberInput({ label, unit, value, set, hint, field }: NumberProps): JSX.Element {
  return (
    <Labelled label={label} unit={unit} field={field}>
      <input
        class="number"
        inputMode="decimal"
        autoComplete="off"
        placeholder={hint}
        value={value}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </Labelled>
  );
}

interface SelectProps<T extends string> {
  label: string;
  value: T;
  options: readonly (readonly [T, string])[];
  set: (value: T) => void;
}

/** Choices named by the catalogue, as they read now. */
export const saidOptions = <T extends string | number>(
  options: readonly (readonly [T, MessageKey])[],
): (readonly [T, string])[] => options.map(([value, key]) => [value, say(key)]);

export function Select<T extends string>({ label, value, options, set }: SelectProps<T>): JSX.Element {
  return (
    <Labelled label={label}>
      <select value={value} onChange={(event) => set(event.currentTarget.value as T)}>
        {options.map(([each, word]) => (
          <option key={each} value={each}>
            {word}
          </option>
        ))}
      </select>
    </Labelled>
  );
}
