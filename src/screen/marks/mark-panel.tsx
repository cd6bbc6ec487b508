// Marks in two presses: first what was done to the chosen pan, then how much.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { settings, tell } from '../client/store.ts';
import type { Mark, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { useKey } from '../shell/keys.ts';
import { markWords } from '../words/mark-words.ts';
import { panName } from '../words/pan-words.ts';
import { formOf, markForms } from './forms.ts';
import { stamped } from './mark-form.ts';
import type { MarkForm, MarkPlace } from './mark-form.ts';
import { openForm } from './open-form.ts';
import { TypedMark } from './typed-mark.tsx';

const MINUTES_AGO = [0, 2, 5, 10, 20];

function AgoChoice({ minutes, choose }: { minutes: number; choose: (minutes: number) => void }): JSX.Element {
  return (
    <div class="ago" role="group" aria-label="How many minutes ago">
      <span>When:</span>
      {MINUTES_AGO.map((each) => (
        <button key={each} type="button" aria-pressed={each === minutes} onClick={() => choose(each)}>
          {each === 0 ? 'now' : `${each} min ago`}
        </button>
      ))}
    </div>
  );
}

/** The open form: quick amounts, each noted by one press, and a place to type another. */
function OpenForm({ form, place, close }: { form: MarkForm; place: MarkPlace; close: () => void }): JSX.Element {
  const [minutes, setMinutes] = useState(0);
  const top = useRef<HTMLDivElement>(null);
  useKey('Escape', close);
  useEffect(() => top.current?.scrollIntoView({ block: 'nearest' }), []);
  const noteIt = (mark: Mark): void => {
    const id = `screen-${crypto.randomUUID()}`;
    void tell(
      { mark: stamped(mark, id, place.now.t, minutes) },
      `Noted. ${markWords(mark, place.header, place.settings)}.`,
    );
    close();
  };
  const fields = form.fields(place);
  const quicks = form.quicks(place);
  return (
    <div class="mark-form" ref={top}>
      <div class="mark-form-head">
        <h2>
          {panName(place.header, place.pan)}: {form.word}
        </h2>
        <button type="button" onClick={close}>
          Back <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
      <p>{form.question}</p>
      <AgoChoice minutes={minutes} choose={setMinutes} />
      {quicks.length > 0 && (
        <div class="quicks">
          {quicks.map((quick) => (
            <button key={quick.label} type="button" onClick={() => noteIt(quick.mark)}>
              {quick.label}
            </button>
          ))}
        </div>
      )}
      {fields.length > 0 && form.build !== undefined && (
        <TypedMark fields={fields} build={(values) => noteIt(form.build?.(values, place) as Mark)} />
      )}
      {fields.length === 0 && quicks.length === 0 && <p>There is nothing to choose from yet.</p>}
    </div>
  );
}

export function MarkPanel({ now, pan }: { now: Now; pan: string }): JSX.Element | null {
  if (now.header === null) return null;
  const place: MarkPlace = { now, header: now.header, pan, settings: settings.value };
  const open = openForm.value;
  const form = open === null ? null : formOf(open);
  if (form !== null) {
    return (
      <section class="marks panel" aria-label="Note something">
        <OpenForm key={form.kind} form={form} place={place} close={() => (openForm.value = null)} />
      </section>
    );
  }
  return (
    <section class="marks panel" aria-label="Note something">
      <h2>Note for {panName(now.header, pan)}</h2>
      <div class="mark-kinds">
        {markForms.map((each) => (
          <KeyButton key={each.kind} letter={each.key} act={() => (openForm.value = each.kind)}>
            {each.word}
          </KeyButton>
        ))}
      </div>
    </section>
  );
}
