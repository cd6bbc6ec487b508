// What a practice boil that is over gave: nobody has to weigh what was simulated.
import type { JSX } from 'preact';
import type { BoilPageView } from '../../protocol/season-messages.ts';
import { settings } from '../client/store.ts';
import { say } from '../language/say.ts';
import { useAsked } from '../notebook/page-data.ts';
import { practiceGave } from '../words/figure-words.ts';

export function PracticeSyrup({ boil }: { boil: string }): JSX.Element | null {
  const { view } = useAsked<BoilPageView>({ boil_page: { boil } }, boil, ({ figures }) => figures === null);
  if (view === null || view.figures === null) return null;
  const gave = practiceGave(view.figures, settings.value);
  return gave === null ? null : <p>{say('pans.practice.gave', gave)}</p>;
}
