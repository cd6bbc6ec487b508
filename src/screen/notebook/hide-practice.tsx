// Takes a practice boil that is over out of the list of boils, and puts it back; a real boil has no such button.
import type { JSX } from 'preact';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { say } from '../language/say.ts';
import { goTo } from '../shell/routes.ts';
import { keepPage } from './page-words.tsx';

interface HidePracticeProps {
  view: BoilPageView;
  keep: (view: BoilPageView) => void;
}

/** One press hides it and leads to the list, at whose foot it can be had back: so nothing is asked first. */
export function HidePractice({ view, keep }: HidePracticeProps): JSX.Element | null {
  if (!view.practice || view.running) return null;
  const isHidden = view.hidden === true;
  async function turn(): Promise<void> {
    const kept = await keepPage(view.boil, (page) => ({ ...page, hidden: isHidden ? undefined : true }));
    if (kept === null) return;
    if (isHidden) return keep(kept);
    goTo('notebook');
  }
  return (
    <button type="button" onClick={() => void turn()}>
      {say(isHidden ? 'notebook.hide.again' : 'notebook.hide')}
    </button>
  );
}
