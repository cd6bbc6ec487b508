// The Help screen: the way through a first boil with pictures, what each number means, and the cautions with their sources.
import type { JSX } from 'preact';
import { say } from '../language/say.ts';
import { addressOf, place } from '../shell/routes.ts';
import { CautionsPage } from './cautions-page.tsx';
import { FirstBoil } from './first-boil.tsx';
import { NumbersPage } from './numbers-page.tsx';

const PAGES = [
  { name: 'first-boil', title: () => say('help.first_boil.title'), page: FirstBoil },
  { name: 'numbers', title: () => say('help.numbers.title'), page: NumbersPage },
  { name: 'cautions', title: () => say('help.cautions.title'), page: CautionsPage },
] as const;

export function HelpView(): JSX.Element {
  const at = PAGES.find(({ name }) => name === place.value[0]) ?? PAGES[0];
  const Page = at.page;
  return (
    <div class="page help">
      <h1>{say('help.title')}</h1>
      <nav class="row" aria-label={say('help.title')}>
        {PAGES.map(({ name, title }) => (
          <a key={name} href={addressOf('help', name)} aria-current={name === at.name ? 'page' : undefined}>
            {title()}
          </a>
        ))}
      </nav>
      <Page />
    </div>
  );
}
