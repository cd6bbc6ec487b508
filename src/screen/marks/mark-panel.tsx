// Marks in two presses: first what was done to the chosen pan, then how much.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { ask, settings, tell } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { Mark, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { useKey } from '../shell/keys.ts';
import { scrollClear } from '../shell/scroll-clear.ts';
import { timeOfDay } from '../words/clock.ts';
import { markWords } from '../words/mark-words.ts';
import { panName } from '../words/pan-words.ts';
import { doubtAbout } from './doubt.ts';
import { formOf, markForms } from './forms.ts';
import { stamped } from './mark-form.ts';
import type { MarkForm, MarkPlace, Values } from './mark-form.ts';
import { openForm } from './open-form.ts';
import { TypedMark } from './typed-mark.tsx';

const MINUTES_AGO = [0, 2, 5, 10, 20];

interface AgoChoiceProps {
  /** null is the time of the pour that was seen. */
  minutes: number | null;
  choose: (minutes: number | null) => void;
  place: MarkPlace;
}

function AgoChoice({ minutes, choose, place: { now, pour } }: AgoChoiceProps): JSX.Element {
  return (
    <div class="ago" role="group" aria-label={say('marks.how_long_ago')}>
      <span>{say('marks.when')}</span>
      {pour !== undefined && (
        <button type="button" aria-pressed={minutes === null} onClick={() => choose(null)}>
          {say('marks.at', { time: timeOfDay(now, pour.at) })}
        </button>
      )}
      {MINUTES_AGO.map((each) => (
        <button key={each} type="button" aria-pressed={each === minutes} onClick={() => choose(each)}>
          {each === 0 ? say('marks.now') : say('marks.ago', { minutes: String(each) })}
        </button>
      ))}
    </div>
  );
}

/** A number that can hardly be meant is asked about before it is noted. */
function Doubt({ question, yes, no }: { question: string; yes: () => void; no: () => void }): JSX.Element {
  return (
    <div class="row" role="alert">
      <b class="problem">▲ {question}</b>
      <button type="button" onClick={yes}>
        {say('marks.yes_note_it')}
      </button>
      <button type="button" class="main-button" onClick={no}>
        {say('marks.let_me_change')}
      </button>
    </div>
  );
}

/** What the host says that is new since the last mark was sent, beside the form that sent it. */
function FreshNotices({ now, before }: { now: Now; before: readonly string[] | null }): JSX.Element | null {
  const fresh = before === null ? [] : now.notices.filter((sentence) => !before.includes(sentence));
  if (fresh.length === 0) return null;
  return (
    <ul class="fresh-notices">
      {fresh.map((sentence) => (
        <li key={sentence}>▲ {hostWords(sentence)}</li>
      ))}
    </ul>
  );
}

/** What there is to ask back before a mark is noted: what the form can tell itself, then what the host knows. */
async function questionAbout(mark: Mark, place: MarkPlace): Promise<string | null> {
  const own = doubtAbout(mark, place);
  if (own !== null || mark.kind !== 'pressure') return own;
  try {
    const sentence = (await ask({ doubt: mark })) as string | null;
    return sentence === null ? null : say('marks.right_all_the_same', { doubt: hostWords(sentence) });
  } catch {
    return null; // What is wrong with the link is said when the mark is sent.
  }
}

/** "Back pot: Top-up 2.0 L, 5 min ago: noted." */
function notedWords(what: string, minutes: number, time: string | null): string {
  if (time !== null) return say('marks.noted_at', { what, time });
  return minutes === 0 ? say('pans.noted', { what }) : say('marks.noted_ago', { what, minutes: String(minutes) });
}

function send(mark: Mark, minutes: number | null, place: MarkPlace): void {
  const id = `screen-${crypto.randomUUID()}`;
  const at = minutes === null ? place.pour?.at : undefined;
  const ago = minutes ?? 0;
  const what = markWords(mark, place.header, place.settings);
  void tell(
    { mark: at === undefined ? stamped(mark, id, place.now.t, ago) : { ...mark, id, happened: at } },
    notedWords(what, ago, at === undefined ? null : timeOfDay(place.now, at)),
  );
}

/** Into view, with the keyboard on its first amount: from a key on, a mark is one more press. */
function useFront(top: { current: HTMLElement | null }): void {
  useEffect(() => {
    if (top.current === null) return;
    scrollClear(top.current);
    const first =
      top.current.querySelector<HTMLElement>('.quicks button, .typed input, .typed select') ??
      top.current.querySelector('button');
    first?.focus({ preventScroll: true });
  }, []);
}

interface OpenFormProps {
  form: MarkForm;
  place: MarkPlace;
  close: () => void;
  /** Called just before a mark is sent. */
  sent: () => void;
}

/** The open form: quick amounts, each noted by one press, and a place to type another. */
function OpenForm({ form, place, close, sent }: OpenFormProps): JSX.Element {
  const [minutes, setMinutes] = useState<number | null>(place.pour === undefined ? 0 : null);
  const [doubted, setDoubted] = useState<{ mark: Mark; question: string } | null>(null);
  const top = useRef<HTMLDivElement>(null);
  useKey('Escape', close);
  useFront(top);
  const noteIt = (mark: Mark): void => {
    sent();
    send(mark, minutes, place);
    close();
  };
  const offer = async (mark: Mark): Promise<void> => {
    const question = await questionAbout(mark, place);
    if (question === null) noteIt(mark);
    else setDoubted({ mark, question });
  };
  const offerTyped = async (values: Values): Promise<void> => {
    const patch = form.patch?.(values, place) ?? null;
    if (patch !== null && !(await tell({ set: patch }))) return;
    await offer(form.build?.(values, place) as Mark);
  };
  const fields = form.fields(place);
  const quicks = form.quicks(place);
  return (
    <div class="mark-form" ref={top}>
      <div class="mark-form-head">
        <h2>{say('marks.head', { pan: panName(place.header, place.pan), kind: say(form.word) })}</h2>
        <button type="button" onClick={close}>
          {say('marks.back')} <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
      <p>{say(form.question)}</p>
      {form.kind !== 'remind' && <AgoChoice minutes={minutes} choose={setMinutes} place={place} />}
      {quicks.length > 0 && (
        <div class="quicks">
          {quicks.map((quick) => (
            <button key={quick.label} type="button" onClick={() => void offer(quick.mark)}>
              {quick.label}
            </button>
          ))}
        </div>
      )}
      {fields.length > 0 && form.build !== undefined && (
        <TypedMark fieldsOf={(values) => form.fields(place, values)} build={(values) => void offerTyped(values)} />
      )}
      {doubted !== null && (
        <Doubt question={doubted.question} yes={() => noteIt(doubted.mark)} no={() => setDoubted(null)} />
      )}
      {fields.length === 0 && quicks.length === 0 && <p>{say('marks.nothing_to_choose')}</p>}
    </div>
  );
}

/** When a form closes, the keyboard goes back to the button that opens it. */
function useReturn(panel: { current: HTMLElement | null }, open: MarkForm | null): void {
  const before = useRef<MarkForm | null>(null);
  useEffect(() => {
    const closed = open === null ? before.current : null;
    before.current = open;
    if (closed === null || document.activeElement !== document.body) return;
    panel.current?.querySelector<HTMLElement>(`[aria-keyshortcuts="${closed.key}"]`)?.focus({ preventScroll: true });
  }, [open]);
}

export function MarkPanel({ now, pan }: { now: Now; pan: string }): JSX.Element | null {
  const panel = useRef<HTMLElement>(null);
  const open = openForm.value;
  const form = open === null ? null : formOf(open.kind);
  const [before, setBefore] = useState<readonly string[] | null>(null);
  useReturn(panel, form);
  if (now.header === null) return null;
  const seen = open?.pour?.pan === pan ? { pour: open.pour } : {};
  const place: MarkPlace = { now, header: now.header, pan, settings: settings.value, ...seen };
  if (form !== null) {
    return (
      <section class="marks panel" aria-label={say('marks.note_something')} ref={panel}>
        <FreshNotices now={now} before={before} />
        <OpenForm
          key={form.kind}
          form={form}
          place={place}
          close={() => (openForm.value = null)}
          sent={() => setBefore(now.notices)}
        />
      </section>
    );
  }
  return (
    <section class="marks panel" aria-label={say('marks.note_something')} ref={panel}>
      <h2>{say('marks.note_for', { pan: panName(now.header, pan) })}</h2>
      <FreshNotices now={now} before={before} />
      <div class="mark-kinds">
        {markForms.map((each) => (
          <KeyButton key={each.kind} letter={each.key} act={() => (openForm.value = { kind: each.kind, pour: null })}>
            {say(each.word)}
          </KeyButton>
        ))}
      </div>
    </section>
  );
}
