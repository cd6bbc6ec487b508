// The kinds of sap that a person can choose from: the sugars of each, its usual strength, and where that is known from.
import type { Sap, SugarShares } from '../boil/entries.ts';
import { sugarShares } from './sugar-shares.ts';

export type SapKindKey = 'maple-early' | 'maple-late' | 'maple' | 'birch' | 'walnut' | 'other';

export interface SapKind {
  key: SapKindKey;
  /** For a person. */
  name: string;
  /** null where a person has to say them. */
  shares: SugarShares | null;
  /** Of everything dissolved in fresh sap, °Bx; null where nobody can say. */
  typicalBrix: number | null;
  source: string;
  /** One plain sentence on what is known and what to do about the rest. */
  sentence: string;
}

const maple: SapKind = {
  key: 'maple',
  name: 'Maple',
  shares: sugarShares('maple'),
  typicalBrix: 2,
  source: 'Abstract of Stuckel & Low 1996 on 80 syrups, read; sap of 1 to 5 °Bx, about 2, by extension services.',
  sentence:
    'Nearly all of the sugar is sucrose, so that the published figures for sucrose agree to about 0.1 °C (0.2 °F).',
};

const mapleEarly: SapKind = {
  key: 'maple-early',
  name: 'Maple, early in the season',
  shares: { sucrose: 0.99, glucose: 0.005, fructose: 0.005 },
  typicalBrix: 2,
  source: 'Extension services: nearly pure sucrose early; the 99 % is our round figure.',
  sentence: 'Early sap has hardly any sugar but sucrose, and 66 °Bx boils 4.0 °C (7.2 °F) over water.',
};

const mapleLate: SapKind = {
  key: 'maple-late',
  name: 'Maple, late in the season',
  shares: { sucrose: 0.9, glucose: 0.05, fructose: 0.05 },
  typicalBrix: 2,
  source:
    'Extension services: glucose and fructose rise late; the 90 % is our round figure, within what Stuckel & Low 1996 found in syrups.',
  sentence:
    'Late sap has more glucose and fructose, and 66 °Bx boils about 0.2 °C (0.4 °F) hotter than from early sap; a density reading tells by how much.',
};

const birch: SapKind = {
  key: 'birch',
  name: 'Birch',
  shares: sugarShares('birch'),
  typicalBrix: 1,
  source:
    'Trade references, read: 42 to 54 % fructose, 35 to 45 % glucose, 5 to 15 % sucrose of the sugars; sap of 0.5 to 1.5 °Bx, about 1.',
  sentence:
    'No rise of birch syrup was ever published: the model says about 6 °C (11 °F) over water for 66 °Bx, so please take one density reading near the end, and this sap is corrected from then on.',
};

const walnut: SapKind = {
  key: 'walnut',
  name: 'Walnut',
  shares: { sucrose: 0.95, glucose: 0.025, fructose: 0.025 },
  typicalBrix: 2,
  source: 'From memory and common practice: mostly sucrose, as strong as maple sap; nothing was read.',
  sentence:
    'Nobody published the rise of walnut syrup: it is taken as nearly that of maple from memory, so please take one density reading near the end.',
};

const other: SapKind = {
  key: 'other',
  name: 'Another sap',
  shares: null,
  typicalBrix: null,
  source: 'What the person says.',
  sentence:
    'Say how much of the sugar is sucrose, glucose and fructose; between the first and the others lie 2 °C (4 °F) at 66 °Bx, so please also take one density reading near the end.',
};

/** In the order in which they are offered. */
export const sapKinds: readonly SapKind[] = [maple, mapleEarly, mapleLate, birch, walnut, other];

/** Two shares that a person would call the same. */
const sameShare = 0.0005;

function sameMix(one: SugarShares, two: SugarShares): boolean {
  return (['sucrose', 'glucose', 'fructose', 'others'] as const).every(
    (part) => Math.abs((one[part] ?? 0) - (two[part] ?? 0)) < sameShare,
  );
}

/** The kind whose mix a header's sap has; "other" where it is none of them. */
export function sapKindOf(sap: Sap): SapKind {
  const mix = sugarShares(sap);
  return sapKinds.find(({ shares }) => shares !== null && sameMix(shares, mix)) ?? other;
}
