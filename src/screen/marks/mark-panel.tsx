// Marks in two presses: first what was done to the chosen pan, then how much.
import type { JSX } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { ask, said, settings, tell } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { Header, Mark, Now } from '../client/types.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { firstButton } from '../shell/arrival.tsx';
import { useKey } from '../shell/keys.ts';
import { useRefusal } from '../shell/refusal.tsx';
import { comesIntoSight } from '../shell/scroll-clear.ts';
import { timeOfDay } from '../words/clock.ts';
import { notedWords } from '../words/mark-words.ts';
import { isBig } from '../pans/big-view.tsx';
import { panName } from '../words/pan-words.ts';
import { exactStrength } from '../words/amounts.ts';
import { doubtAbout } from './doubt.ts';
import { focusFront, useClearOfCalls, useFront, useReturn } from './form-in-sight.ts';
import { formOf, formsFor } from './forms.ts';
import { saidOf } from './left-out.ts';
import { headOf } from './mark-form.ts';
import type { MarkForm, MarkPlace, Values } from './mark-form.ts';
import { openForm } from './open-form.ts';
import { PanChoice } from './pan-choice.tsx';
import { noteAgain, takeBack, takeCorrectionBack } from './take-back.ts';
import { typedAgain } from './typed-again.ts';
import { TypedMark } from './typed-mark.tsx';
import { happenedAt, momentOf, type When, whyNoMoment } from './when.ts';
import { WhenChoice } from './when-choice.tsx';

/** A number that can hardly be meant is asked about before it is noted. */
function Doubt({ question, yes, no }: { question: string; yes: () => void; no: () => void }): JSX.Element {
  const row = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    comesIntoSight(row.current);
    firstButton(row.current);
  }, []);
  return (
    <div class="row mark-doubt" role="alert" ref={row}>
      <b class="problem">▲ {question}</b>
      {/* First what changes nothing, for it has the focus: an Enter too many must not answer yes. */}
      <button type="button" class="main-button" onClick={no}>
        {say('marks.let_me_change')}
      </button>
      <button type="button" onClick={yes}>
        {say('marks.yes_note_it')}
      </button>
    </div>
  );
}

/** What the host says that is new since the last mark was sent, beside the form that sent it. */
function FreshNotices({ now, before }: { now: Now; before: readonly string[] | null }): JSX.Element | null {
  const told = saidOf(said.value, now)?.notice;
  const fresh =
    before === null ? [] : now.notices.filter((sentence) => !before.includes(sentence) && sentence !== told);
  if (fresh.length === 0) return null;
  return (
    <ul class="fresh-notices">
      {fresh.map((sentence) => (
        <li key={sentence}>▲ {hostWords(sentence)}</li>
      ))}
    </ul>
  );
}

/** Marks of which the host may know that they can hardly be meant. */
const DOUBTFUL: ReadonlySet<Mark['kind']> = new Set([
  'pressure',
  'depth',
  'density',
  'water-check',
  'reading',
  'top-up',
  'draw-off',
  'transfer',
]);

/** Why a mark can hardly be meant; of a density that was put right for its warmth, with what was typed. */
function doubtWords(sentence: string, mark: Mark, { settings }: MarkPlace): string {
  const doubt = hostWords(sentence);
  if (mark.kind !== 'density' || mark.brix === undefined) return doubt;
  const typed = exactStrength(mark.brix, settings);
  return doubt.includes(typed) ? doubt : say('marks.warmth_put_right', { doubt, typed });
}

/** What there is to ask back before a mark is noted: what the form can tell itself, then what the host knows. */
async function questionAbout(mark: Mark, place: MarkPlace): Promise<string | null> {
  const own = doubtAbout(mark, place);
  if (own !== null || !DOUBTFUL.has(mark.kind)) return own;
  try {
    const sentence = (await ask({ doubt: mark })) as string | null;
    return sentence === null ? null : say('marks.right_all_the_same', { doubt: doubtWords(sentence, mark, place) });
  } catch {
    return null; // What is wrong with the link is said when the mark is sent.
  }
}

/** "Back pot: Top-up 2.0 L, 5 min ago: noted." */
function sentenceOf(what: string, when: When, at: number | undefined, now: Now): string {
  if (at === undefined) return say('pans.noted', { what });
  return when !== 'then' && 'ago' in when
    ? say('marks.noted_ago', { what, minutes: String(when.ago) })
    : say('marks.noted_at', { what, time: timeOfDay(now, at) });
}

/** With the id of the note that it takes the place of, if it is to take one's. */
const correcting = (mark: Mark, { again }: MarkPlace): Mark =>
  again?.mark.id === undefined ? mark : { ...mark, corrects: again.mark.id };

/** Resolves to whether the host took it. */
function send(mark: Mark, when: When, at: number | undefined, place: MarkPlace): Promise<boolean> {
  const id = `screen-${crypto.randomUUID()}`;
  const { again } = place;
  // The one whose place it takes is taken back by now, and may not have been told so yet.
  const marks = place.now.marks.filter((each) => each.mark.id === undefined || each.mark.id !== again?.mark.id);
  const { t } = place.now;
  const what = notedWords({ mark, t, at: at ?? t }, { ...place.now, marks }, place.settings);
  const noted = sentenceOf(what, when, at, place.now);
  // An emptied pan counts as off the fire; of its burner nobody has said anything.
  const done = 'all' in mark && mark.all === true ? say('marks.noted_empty', { noted }) : noted;
  const undo =
    again === undefined
      ? () => takeBack(id, what)
      : () => void takeCorrectionBack(id, again, notedWords(again, place.now, place.settings));
  return tell({ mark: { ...correcting(happenedAt(mark, at), place), id } }, done, undo, id);
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
  const { again } = place;
  const then = place.pour ?? again;
  const isTakenBack = useRef(false);
  const [when, setWhen] = useState<When>(then === undefined || form.kind === 'remind' ? { ago: 0 } : 'then');
  const { refuse, sentence } = useRefusal();
  const [doubted, setDoubted] = useState<{ mark: Mark; question: string } | null>(null);
  const [boxes, setBoxes] = useState<{ start: Values; press: number }>({
    start: again === undefined ? { ...place.start } : typedAgain(again.mark, place.settings),
    press: 0,
  });
  const top = useRef<HTMLDivElement>(null);
  /** Left after the right one was refused: the one that it was to replace stands again. */
  const leave = (): void => {
    if (again?.mark.id !== undefined && isTakenBack.current)
      void noteAgain(again, notedWords(again, place.now, place.settings), again.mark.id);
    close();
  };
  useKey('Escape', leave);
  const pressFirst = form.pressFirst === true;
  useFront(top, pressFirst);
  useClearOfCalls(top);
  const at = momentOf(when, place.now, then);
  const isSending = useRef(false);
  /** What was refused stays as it was typed. */
  const noteIt = async (mark: Mark): Promise<void> => {
    if (isSending.current) return;
    isSending.current = true;
    sent();
    const opened = openForm.value;
    // Just before: whoever is asked back and goes elsewhere has changed nothing.
    if (again?.mark.id !== undefined && !isTakenBack.current)
      isTakenBack.current = await tell({ mark: { kind: 'withdraw', id: again.mark.id } });
    const isNoted = await send(mark, when, at ?? undefined, place);
    isSending.current = false;
    // Meanwhile another may have been opened.
    if (isNoted && openForm.value === opened) close();
  };
  const offer = async (mark: Mark): Promise<void> => {
    refuse(at === null ? whyNoMoment(when, place.now) : null);
    if (at === null) return;
    const question = await questionAbout(correcting(happenedAt(mark, at), place), place);
    if (question === null) await noteIt(mark);
    else setDoubted({ mark, question });
  };
  /** Its number stands in the boxes, too: a question about it must not stand beside another that was typed before. */
  const offerQuick = async (mark: Mark): Promise<void> => {
    setBoxes({ start: typedAgain(mark, place.settings), press: boxes.press + 1 });
    await offer(mark);
  };
  const offerTyped = async (values: Values): Promise<void> => {
    const patch = form.patch?.(values, place) ?? null;
    const mark = form.build?.(values, place) ?? null;
    const done = mark === null ? form.changed?.(values, place) : undefined;
    if (patch !== null && !(await tell({ set: patch }, done))) return;
    if (mark === null) close();
    else await offer(mark);
  };
  /** Enter behind a time of day sends what was typed, or goes where that is to be typed or pressed. */
  const enterTime = (): void => {
    refuse(at === null ? whyNoMoment(when, place.now) : null);
    if (at === null || top.current === null) return;
    const typed = top.current.querySelector<HTMLFormElement>('form.typed');
    const isTyped = (typed?.querySelector<HTMLInputElement>('input')?.value ?? '').trim() !== '';
    if (typed !== null && isTyped) typed.requestSubmit();
    else focusFront(top.current, pressFirst);
  };
  // What was asked about was to be noted of the pan that was chosen then.
  useLayoutEffect(() => {
    setDoubted(null);
    refuse(null);
  }, [place.pan]);
  const front = (): void => {
    if (top.current !== null) focusFront(top.current, pressFirst);
  };
  const without = form.without?.(place) ?? null;
  const head = headOf(form, place);
  const otherWay = form.otherWay?.(place) ?? null;
  const fields = without === null ? form.fields(place) : [];
  const quicks = without === null ? form.quicks(place) : [];
  return (
    <div class="mark-form" ref={top}>
      <div class="mark-form-head">
        <h2>{say('marks.head', { pan: panName(place.header, place.pan), kind: say(head.word) })}</h2>
        <button type="button" onClick={leave}>
          {say('marks.back')} <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
      {form.ofNoPan !== true && <PanChoice now={place.now} pan={place.pan} chosen={front} />}
      {again !== undefined && <p>{say('marks.instead_of', { what: notedWords(again, place.now, place.settings) })}</p>}
      <p>{without ?? say(quicks.length === 0 ? (form.questionTyped ?? head.question) : head.question)}</p>
      {without === null && form.kind !== 'remind' && (
        <WhenChoice when={when} choose={setWhen} place={place} enter={enterTime} />
      )}
      {sentence}
      {quicks.length > 0 && (
        <div class="quicks" tabIndex={pressFirst ? -1 : undefined}>
          {quicks.map((quick) => (
            <button key={quick.label} type="button" onClick={() => void offerQuick(quick.mark)}>
              {quick.label}
            </button>
          ))}
        </div>
      )}
      {otherWay !== null && (
        <p>
          <button type="button" onClick={() => (openForm.value = { kind: otherWay.kind, pour: null })}>
            {otherWay.words}
          </button>
        </p>
      )}
      {fields.length > 0 && form.build !== undefined && (
        <TypedMark
          fieldsOf={(values) => form.fields(place, values)}
          key={boxes.press}
          start={boxes.start}
          changed={() => setDoubted(null)}
          build={(values) => void offerTyped(values)}
        />
      )}
      {doubted !== null && (
        <Doubt
          key={doubted.question}
          question={doubted.question}
          yes={() => void noteIt({ ...doubted.mark, sure: true })}
          no={() => {
            setDoubted(null);
            front();
          }}
        />
      )}
    </div>
  );
}

/** A note's key in the big view, where nothing is noted: it leaves that and opens the form. */
function FormKey({ form }: { form: MarkForm }): null {
  useKey(form.key, () => {
    isBig.value = false;
    openForm.value = { kind: form.kind, pour: null };
  });
  return null;
}

/** The keys of all notes while the big view shows the pans alone. */
export const FormKeys = ({ header }: { header: Header }): JSX.Element => (
  <>
    {formsFor(header).map((form) => (
      <FormKey key={form.kind} form={form} />
    ))}
  </>
);

export function MarkPanel({ now, pan }: { now: Now; pan: string }): JSX.Element | null {
  const panel = useRef<HTMLElement>(null);
  const open = openForm.value;
  const form = open === null ? null : formOf(open.kind);
  const [before, setBefore] = useState<{ pan: string; notices: readonly string[] } | null>(null);
  useReturn(panel, form);
  if (now.header === null) return null;
  // What the host says of a note made for another pan is no news of this one.
  const noticesBefore = before?.pan === pan ? before.notices : null;
  const seen = open?.pour?.pan === pan ? { pour: open.pour } : {};
  const corrected = open?.again === undefined ? {} : { again: open.again };
  const begun = open?.start === undefined ? {} : { start: open.start };
  const place: MarkPlace = { now, header: now.header, pan, settings: settings.value, ...seen, ...corrected, ...begun };
  if (form !== null) {
    return (
      <section class="marks panel" aria-label={say('marks.note_something')} ref={panel}>
        <FreshNotices now={now} before={noticesBefore} />
        <OpenForm
          key={`${form.kind} ${open?.again?.mark.id ?? ''} ${JSON.stringify(open?.start ?? '')} ${form.anewByPan === true || open?.pour ? pan : ''}`}
          form={form}
          place={place}
          close={() => (openForm.value = null)}
          sent={() => setBefore({ pan, notices: now.notices })}
        />
      </section>
    );
  }
  return (
    <section class="marks panel" aria-label={say('marks.note_something')} ref={panel}>
      <h2>{say('marks.note_for', { pan: panName(now.header, pan) })}</h2>
      <FreshNotices now={now} before={noticesBefore} />
      <div class="mark-kinds">
        {formsFor(now.header).map((each) => (
          <KeyButton key={each.kind} letter={each.key} act={() => (openForm.value = { kind: each.kind, pour: null })}>
            {say(headOf(each, place).word)}
          </KeyButton>
        ))}
      </div>
    </section>
  );
}
