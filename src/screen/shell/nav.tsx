// The way between the views.
import type { JSX } from 'preact';
import { replay } from '../client/store.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { route } from './routes.ts';
import type { Route } from './routes.ts';

const TABS: readonly (readonly [Route, MessageKey])[] = [
  ['pans', 'nav.pans'],
  ['notebook', 'nav.notebook'],
  ['plan', 'nav.plan'],
  ['probes', 'nav.probes'],
  ['settings', 'nav.settings'],
  ['help', 'nav.help'],
];

/** Views that are reached from another one belong to it. */
const WITHIN: Partial<Record<Route, Route>> = { compare: 'notebook', tune: 'notebook' };

export function Nav(): JSX.Element {
  const tabs: typeof TABS = replay.value === null ? TABS : [...TABS, ['replay', 'nav.replay']];
  const at = WITHIN[route.value] ?? route.value;
  return (
    <nav class="nav" aria-label={say('nav.views')}>
      {tabs.map(([to, word]) => (
        <a key={to} href={`#/${to}`} aria-current={at === to ? 'page' : undefined}>
          {say(word)}
        </a>
      ))}
    </nav>
  );
}
