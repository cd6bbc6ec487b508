// The way between the views.
import type { JSX } from 'preact';
import { replay } from '../client/store.ts';
import { say } from '../language/say.ts';
import { route } from './routes.ts';
import type { Route } from './routes.ts';

const TABS: [Route, string][] = [
  ['pans', 'Pans'],
  ['notebook', 'Notebook'],
  ['plan', 'Plan'],
  ['probes', 'Probes'],
  ['settings', 'Settings'],
];

/** Views that are reached from another one belong to it. */
const WITHIN: Partial<Record<Route, Route>> = { compare: 'notebook', tune: 'notebook' };

export function Nav(): JSX.Element {
  const always: [Route, string][] = [...TABS, ['help', say('nav.help')]];
  const tabs: [Route, string][] = replay.value === null ? always : [...always, ['replay', 'Replay']];
  const at = WITHIN[route.value] ?? route.value;
  return (
    <nav class="nav" aria-label="Views">
      {tabs.map(([to, word]) => (
        <a key={to} href={`#/${to}`} aria-current={at === to ? 'page' : undefined}>
          {word}
        </a>
      ))}
    </nav>
  );
}
