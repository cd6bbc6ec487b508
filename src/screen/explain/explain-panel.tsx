// The panel that tells of a number where it comes from, how old its parts are and how sure it is.
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { ask, saps, settings } from '../client/store.ts';
import type { Explanation, Now } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { openFormFor } from '../marks/open-form.ts';
import { selectedPan } from '../pans/selected-pan.ts';
import { useKey } from '../shell/keys.ts';
import { underTop } from '../shell/scroll-clear.ts';
import { timeOfDay } from '../words/clock.ts';
import { explainTitle, explainWords, surerWords } from '../words/explain-words.ts';
import { markCall } from '../words/pan-words.ts';
import { asked, stopAsking } from './asked.ts';
import type { Asked } from './asked.ts';
import { placeOf } from './panel-place.ts';
import type { Edges } from './panel-place.ts';
import { HINT_ID } from './tell.tsx';

/** Asked anew so often while it is open, so that its ages go on. */
const ASK_EVERY_MS = 2000;

type Heard = { told: Explanation } | { why: string } | null;

/** What the host says of the number, kept fresh. */
function useExplanation(question: Asked, view: Now['view']): Heard {
  const [heard, setHeard] = useState<Heard>(null);
  useEffect(() => {
    let open = true;
    const again = (): void =>
      void ask({ explain: { view, pan: question.pan, what: question.what } }).then(
        (data) => open && setHeard({ told: data as Explanation }),
        (error: Error) => open && setHeard({ why: error.message }),
      );
    again();
    const timer = setInterval(again, ASK_EVERY_MS);
    return () => {
      open = false;
      clearInterval(timer);
    };
  }, [question, view]);
  return heard;
}

/** Between the first line with its bands and the calls, which are never covered. */
function room(): Edges {
  const bottom = document.querySelector('.bottom')?.getBoundingClientRect().top ?? innerHeight;
  return { left: 0, right: document.documentElement.clientWidth, top: underTop(), bottom };
}

/** Beside its number at every drawing, for the page may have scrolled or the calls may have grown. */
function usePlace(panel: { current: HTMLElement | null }, button: HTMLElement): void {
  const put = (): void => {
    const element = panel.current;
    if (element === null) return;
    element.style.maxHeight = '';
    const place = placeOf(button.getBoundingClientRect(), element.getBoundingClientRect(), room());
    element.style.left = `${place.left}px`;
    element.style.top = `${place.top}px`;
    element.style.maxHeight = `${place.maxHeight}px`;
  };
  useLayoutEffect(put);
  useEffect(() => {
    addEventListener('scroll', put, { passive: true });
    addEventListener('resize', put);
    return () => {
      removeEventListener('scroll', put);
      removeEventListener('resize', put);
    };
  }, [button]);
}

/** A press anywhere else puts it away; a press on another number asks about that one. */
function useAway(panel: { current: HTMLElement | null }): void {
  useEffect(() => {
    const pressed = (event: Event): void => {
      const at = event.target;
      if (!(at instanceof Element) || panel.current?.contains(at) === true || at.closest('.tell') !== null) return;
      asked.value = null;
    };
    addEventListener('pointerdown', pressed);
    return () => removeEventListener('pointerdown', pressed);
  }, []);
}

interface SurerProps {
  told: Explanation;
  now: Now;
  canMark: boolean;
}

/** The mark that would help most, with the way to it where marks can be made. */
function Surer({ told, now, canMark }: SurerProps): JSX.Element | null {
  const words = surerWords(told);
  const pan = told.pan ?? selectedPan(now);
  if (words === null) return null;
  const open = (): void => {
    asked.value = null;
    if (pan !== null && told.surer !== null) openFormFor(pan, told.surer);
  };
  return (
    <div class="explain-surer">
      <span>{words}</span>
      {canMark && pan !== null && told.surer !== null && (
        <button type="button" onClick={open}>
          {markCall(told.surer)}
        </button>
      )}
    </div>
  );
}

function Body({ heard, now, canMark }: { heard: Heard; now: Now; canMark: boolean }): JSX.Element {
  if (heard === null) return <p>{say('explain.looking')}</p>;
  if ('why' in heard) return <p class="problem">✕ {hostWords(heard.why)}</p>;
  const { told } = heard;
  return (
    <>
      <p id="explain-words">
        {explainWords(told, { now, settings: settings.value, saps: saps.value })}
        {now.view === 'replay' && ` ${say('explain.said_of', { time: timeOfDay(now, told.t) })}`}
      </p>
      <Surer told={told} now={now} canMark={canMark} />
    </>
  );
}

function Panel({ question, now, canMark }: { question: Asked; now: Now; canMark: boolean }): JSX.Element {
  const panel = useRef<HTMLDivElement>(null);
  const heard = useExplanation(question, now.view);
  useKey('Escape', stopAsking);
  usePlace(panel, question.button);
  useAway(panel);
  useLayoutEffect(() => panel.current?.querySelector('button')?.focus({ preventScroll: true }), [question]);
  return (
    <div class="explain" role="dialog" aria-labelledby="explain-title" aria-describedby="explain-words" ref={panel}>
      <div class="explain-head">
        <h2 id="explain-title">{explainTitle(question.what, question.pan, now.header)}</h2>
        <button type="button" onClick={stopAsking}>
          {say('explain.close')} <kbd aria-hidden="true">Esc</kbd>
        </button>
      </div>
      <Body heard={heard} now={now} canMark={canMark} />
    </div>
  );
}

/** Nothing while nothing is asked; it closes by itself when its number leaves the page. */
export function ExplainPanel({ now, canMark }: { now: Now; canMark: boolean }): JSX.Element {
  const question = asked.value;
  const gone = question !== null && !question.button.isConnected;
  useEffect(() => {
    if (gone) asked.value = null;
  }, [gone]);
  useEffect(() => () => void (asked.value = null), []);
  return (
    <>
      <span id={HINT_ID} class="unseen">
        {say('explain.hint')}
      </span>
      {question !== null && !gone && <Panel question={question} now={now} canMark={canMark} />}
    </>
  );
}
