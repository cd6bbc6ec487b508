// What a pan's sap is called, and which of the kinds that the host names it is.
import type { Pan, SapKind } from '../client/types.ts';
import { type MessageKey, say } from '../language/say.ts';

export type SapKey = SapKind['key'];
type Shares = NonNullable<SapKind['shares']>;

const CALLED: Record<SapKey, MessageKey> = {
  maple: 'sap.maple',
  'maple-early': 'sap.maple_early',
  'maple-late': 'sap.maple_late',
  birch: 'sap.birch',
  walnut: 'sap.walnut',
  other: 'sap.other',
};

/** As the kinds are offered to choose from. */
const OFFERED: Record<SapKey, MessageKey> = {
  maple: 'usual.maple',
  'maple-early': 'boil.sap.maple_early',
  'maple-late': 'boil.sap.maple_late',
  birch: 'usual.birch',
  walnut: 'boil.sap.walnut',
  other: 'boil.sap.other',
};

/** A kind of sap as a list of them names it. */
export const sapKindName = (key: SapKey): string => say(OFFERED[key]);

/** Shares closer than this are the same kind. */
const SAME_SHARE = 0.0005;

function areAlike(one: Shares, sap: Partial<Shares>): boolean {
  const parts = ['sucrose', 'glucose', 'fructose', 'others'] as const;
  return parts.every((part) => Math.abs((one[part] ?? 0) - (sap[part] ?? 0)) < SAME_SHARE);
}

/** The kind of a pan's sap; a pan that says nothing has maple, shares that no kind has are another sap. */
export function sapKeyOf(sap: Pan['sap'], kinds: readonly SapKind[]): SapKey {
  if (sap === undefined || typeof sap === 'string') return sap ?? 'maple';
  return kinds.find(({ shares }) => shares !== null && areAlike(shares, sap as Partial<Shares>))?.key ?? 'other';
}

/** A pan’s sap by its kind’s name. */
export function sapCalled(sap: Pan['sap'], kinds: readonly SapKind[]): string {
  return say(CALLED[sapKeyOf(sap, kinds)]);
}

/** A sap by the key that a comparison has of it: "maple", "birch", or its shares, "0.000/0.425/0.525/0.050". */
export function sapOfKey(key: string): Pan['sap'] {
  if (key === 'maple' || key === 'birch') return key;
  const [sucrose, glucose, fructose, others] = key.split('/').map(Number);
  return { sucrose, glucose, fructose, others };
}
