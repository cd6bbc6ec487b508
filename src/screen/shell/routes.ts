// Which view the address asks for.
import { signal } from '@preact/signals';

export const ROUTES = ['pans', 'notebook', 'probes', 'settings', 'replay', 'start', 'change'] as const;
export type Route = (typeof ROUTES)[number];

/** The route of a fragment such as `#/notebook`; the pans for anything else. */
export function routeOf(fragment: string): Route {
  const name = fragment.replace(/^#\/?/, '');
  return ROUTES.find((route) => route === name) ?? 'pans';
}

export const route = signal<Route>('pans');

export function goTo(next: Route): void {
  location.hash = `#/${next}`;
}

/** Follows the address from now on. */
export function followAddress(): void {
  const read = (): void => {
    route.value = routeOf(location.hash);
    scrollTo(0, 0);
  };
  addEventListener('hashchange', read);
  read();
}
