// Names a sap so that the next boil knows it for the same.
import type { Sap } from './entries.ts';

/** `maple`, `birch`, or its shares to a thousandth: "0.500/0.300/0.200/0.000". A pan that says nothing has maple. */
export function sapKey(sap: Sap | undefined): string {
  if (sap === undefined || typeof sap === 'string') return sap ?? 'maple';
  const { sucrose = 0, glucose = 0, fructose = 0, others = 0 } = sap;
  return [sucrose, glucose, fructose, others].map((share) => share.toFixed(3)).join('/');
}
