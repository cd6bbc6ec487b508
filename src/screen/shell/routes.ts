// Which view the address asks for.
import { signal } from '@preact/signals';

export const ROUTES = [
  'pans',
  'notebook',
  'plan',
  'probes',
  'settings',
  'help',
  'replay',
  'compare',
  'tune',
  'start',
  'change',
] as const;
export type Route = (typeof ROUTES)[number];

/** The route of a fragment such as `#/notebook` or `#/notebook/season`; the pans for anything else. */
export function routeOf(fragment: string): Route {
  const [name] = partsOf(fragment);
  return ROUTES.find((route) => route === name) ?? 'pans';
}

/** What stands behind the route, such as `['boil', '2027-04-18-run']`. */
function placeOf(fragment: string): string[] {
  return partsOf(fragment).slice(1);
}

function partsOf(fragment: string): string[] {
  return fragment
    .replace(/^#\/?/, '')
    .split('/')
    .map((part) => decoded(part));
}

/** What somebody typed may be no proper address. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export const route = signal<Route>('pans');
export const place = signal<readonly string[]>([]);

/** The address of a view, and of a place in it. */
export const addressOf = (next: Route, ...within: string[]): string =>
  `#/${[next, ...within.map((part) => encodeURIComponent(part))].join('/')}`;

/** Goes to a view, or to a place in it. */
export function goTo(next: Route, ...within: string[]): void {
  location.hash = addressOf(next, ...within);
}

/** Follows the address from now on. */
export function followAddress(): void {
  const read = (): void => {
    route.value = routeOf(location.hash);
    place.value = placeOf(location.hash);
    scrollTo(0, 0);
  };
  addEventListener('hashchange', read);
  read();
}
