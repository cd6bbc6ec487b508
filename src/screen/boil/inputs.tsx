// The labelled fields that the forms of a boil are made of.
import type { ComponentChildren, JSX } from 'preact';
import { useId, useState } from 'preact/hooks';
import { type MessageKey, say } from '../language/say.ts';

export function Labelled({
  label,
  unit,
  field,
  below = null,
  children,
}: {
  label: string;
  unit?: string;
  /** By which a form finds it again when it was refused. */
  field?: string;
  /** What is said of the field, under it. */
  below?: ComponentChildren;
  children: ComponentChildren;
}): JSX.Element {
  return (
    <label data-field={field}>
      <span>{label}</span>
      <span class="with-unit">
        {children}
        {unit !== undefined && <span>{unit}</span>}
      </span>
      {below}
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
  /** What is wrong with what stands in it; said at the field once it is left, for 4 may be the beginning of 400. */
  wrong?: string | null;
}

export function NumberInput({ label, unit, value, set, hint, field, wrong = null }: NumberProps): JSX.Element {
  const [isIn, setIn] = useState(false);
  const id = useId();
  const said = isIn ? null : wrong;
  return (
    <Labelled label={label} unit={unit} field={field} below={said === null ? null : <Wrong id={id} said={said} />}>
      <input
        class="number"
        inputMode="decimal"
        autoComplete="off"
        placeholder={hint}
        value={value}
        aria-invalid={said === null ? undefined : true}
        aria-describedby={said === null ? undefined : id}
        onFocus={() => setIn(true)}
        onBlur={() => setIn(false)}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </Labelled>
  );
}

/** Told with the field, and no part of what the field is called. */
const Wrong = ({ id, said }: { id: string; said: string }): JSX.Element => (
  <span class="problem field-wrong" id={id} aria-hidden="true">
    ✕ {said}
  </span>
);

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
