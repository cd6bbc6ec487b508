// Which sugars a sap brings, as mass shares of all its dissolved sugar.
import type { Sap, SugarShares } from '../boil/entries.ts';

/**
 * Maple: 80 syrups of Stuckel & Low 1996 hold mostly sucrose and a little invert sugar.
 * Birch: trade references give 42-54 % fructose, about 45 % glucose and little sucrose.
 * Both are single mixes from a wide spread; one density reading tells more about a given sap.
 */
const knownSaps: Record<'maple' | 'birch', SugarShares> = {
  maple: { sucrose: 0.98, glucose: 0.01, fructose: 0.01 },
  birch: { sucrose: 0.12, glucose: 0.43, fructose: 0.45 },
};

/** The mass shares of the sugars in a sap, and its acids and minerals: those of maple, of birch, or those given. */
export function sugarShares(sap: Sap): SugarShares {
  if (typeof sap === 'string') return knownSaps[sap];
  const { sucrose = 0, glucose = 0, fructose = 0, others } = sap;
  return { sucrose, glucose, fructose, ...(others === undefined ? {} : { others }) };
}
