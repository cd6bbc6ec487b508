// The part of a mark's form where a number or words are typed.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { useRefusal } from '../shell/refusal.tsx';
import { problemIn } from './mark-form.ts';
import type { Field, Values } from './mark-form.ts';

function startValue(field: Field): string {
  if ('options' in field) return field.options[0]?.value ?? '';
  return field.start ?? '';
}

function Input({ field, value, set }: { field: Field; value: string; set: (value: string) => void }): JSX.Element {
  if ('options' in field) {
    return (
      <select value={value} onChange={(event) => set(event.currentTarget.value)}>
        {field.options.map((each) => (
          <option key={each.value} value={each.value}>
            {each.label}
          </option>
        ))}
      </select>
    );
  }
  const mode = 'words' in field ? 'text' : 'decimal';
  return (
    <input
      type="text"
      inputMode={mode}
      autoComplete="off"
      class={mode === 'text' ? 'wide' : 'number'}
      value={value}
      onInput={(event) => set(event.currentTarget.value)}
    />
  );
}

/** What a person has not touched yet stands as it starts. */
function withStarts(fields: readonly Field[], typed: Values): Values {
  return { ...Object.fromEntries(fields.map((field) => [field.name, startValue(field)])), ...typed };
}

interface TypedMarkProps {
  /** Which fields there are may hang on what was chosen so far. */
  fieldsOf: (values: Values) => Field[];
  /** What stands in it before anything is typed, by field. */
  start: Values;
  /** Called when somebody types or chooses: what was asked about the former value is asked no more. */
  changed: () => void;
  build: (values: Values) => void;
}

export function TypedMark({ fieldsOf, start, changed, build }: TypedMarkProps): JSX.Element {
  const [typed, setTyped] = useState<Values>(start);
  const fields = fieldsOf(withStarts(fieldsOf({}), typed));
  const values = withStarts(fields, typed);
  const { refuse, sentence } = useRefusal();
  function submit(event: Event): void {
    event.preventDefault();
    const wrong = problemIn(values, fields);
    refuse(wrong);
    if (wrong === null) build(values);
  }
  return (
    <form class="typed" onSubmit={submit} noValidate>
      {fields.map((field) => (
        <label key={field.name}>
          <span>{field.label}</span>
          <span class="with-unit">
            <Input
              field={field}
              value={values[field.name] ?? ''}
              set={(value) => {
                changed();
                setTyped({ ...typed, [field.name]: value });
              }}
            />
            {'unit' in field && field.unit !== '' && <span>{field.unit}</span>}
          </span>
        </label>
      ))}
      <button type="submit" class="main-button">
        {say('marks.note_it')}
      </button>
      {sentence}
    </form>
  );
}
