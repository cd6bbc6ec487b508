// Asks on a pan's card about a pour that was seen and that nobody noted.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { settings, tell } from '../client/store.ts';
import type { Mark, Now, Pour } from '../client/types.ts';
import { openFormForPour } from '../marks/open-form.ts';
import { markWords } from '../words/mark-words.ts';
import { freshPour, noMark, pouredWords, yesMark } from '../words/poured-words.ts';

function answer(now: Now, mark: Mark): void {
  const what = markWords(mark, now.header, settings.value);
  void tell({ mark: { ...mark, id: `screen-${crypto.randomUUID()}` } }, say('pans.noted', { what }));
}

function Answers({ now, pour, words }: { now: Now; pour: Pour; words: string }): JSX.Element {
  return (
    <div class="poured-answers" role="group" aria-label={words}>
      <button type="button" onClick={() => answer(now, yesMark(pour, settings.value))}>
        {say('pans.yes')}
      </button>
      <button type="button" onClick={() => answer(now, noMark(pour))}>
        {say('pans.no')}
      </button>
      <button type="button" onClick={() => openFormForPour(pour)}>
        {say('pans.how_much')}
      </button>
    </div>
  );
}

export function PouredQuestion({ now, pan, canMark }: { now: Now; pan: string; canMark: boolean }): JSX.Element | null {
  const pour = freshPour(now, pan);
  if (pour === null) return null;
  const words = pouredWords(now, pour, settings.value);
  return (
    <div class="poured">
      <p>{canMark ? say('pans.asked', { what: words }) : say('pans.nobody_noted', { what: words })}</p>
      {canMark && <Answers now={now} pour={pour} words={words} />}
    </div>
  );
}
