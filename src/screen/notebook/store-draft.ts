// Collected sap as it is typed, and what is kept of it.
import type { Collection } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { brixOf, celsiusOf, litresOf, roundTemperature, typedNumber, volume } from '../words/amounts.ts';
import { say } from '../language/say.ts';

export type SapField = 'day' | 'litres' | 'brix' | 'trees' | 'stored' | 'celsius';
export type SapTyped = Record<SapField, string> & { sap: 'maple' | 'birch' };

/** An empty form for sap of today. */
export const newSap = (today: string): SapTyped => ({
  day: today,
  litres: '',
  brix: '',
  trees: '',
  stored: '',
  celsius: '',
  sap: 'maple',
});

/** For the next sap: what is likely the same stays, and nothing that was measured. */
export const nextSap = (today: string, { day, sap, stored }: SapTyped): SapTyped => ({
  ...newSap(today),
  ...{ day, sap, stored },
});

/** More than this in one day is rather a slip, litres: 200 taps at a gallon a day or so (judgement). */
const MOST_A_DAY_L = 800;

/** What is asked before so much is kept; null where nobody need be asked. */
export const muchDoubt = (litres: number, settings: Settings): string | null =>
  litres > MOST_A_DAY_L ? say('store.doubt.much', { litres: volume(litres, settings), add: say('store.add') }) : null;

/** What the notebook takes of one day, litres, and of how cold a store is, °C. */
const MOST_KEPT_L = 100_000;
const [COLDEST_C, WARMEST_C] = [-40, 60];
const isKeptAt = (celsius: number): boolean => celsius >= COLDEST_C && celsius <= WARMEST_C;

/** What is to be kept, or one sentence on what is wrong. */
export function sapTyped(typed: SapTyped, settings: Settings): Omit<Collection, 'id'> | { why: string } {
  const amount = typedNumber(typed.litres);
  if (amount === null || amount <= 0) return { why: say('store.problem.litres') };
  if (litresOf(amount, settings) > MOST_KEPT_L)
    return { why: say('store.problem.most', { most: volume(MOST_KEPT_L, settings, 0) }) };
  const brix = typedNumber(typed.brix);
  const celsius = typedNumber(typed.celsius);
  if (typed.brix.trim() !== '' && (brix === null || brixOf(brix, settings) > 20 || brix < 0)) {
    return { why: say('store.problem.brix') };
  }
  if (typed.celsius.trim() !== '' && (celsius === null || !isKeptAt(celsiusOf(celsius, settings)))) {
    const [low, high] = [roundTemperature(COLDEST_C, settings), roundTemperature(WARMEST_C, settings)];
    return { why: say('store.problem.cold', { low, high }) };
  }
  const text = (field: 'trees' | 'stored'): string | undefined => typed[field].trim() || undefined;
  return {
    day: typed.day,
    litres: litresOf(amount, settings),
    brix: brix === null ? undefined : brixOf(brix, settings),
    sap: typed.sap,
    trees: text('trees'),
    stored: text('stored'),
    store_celsius: celsius === null ? undefined : celsiusOf(celsius, settings),
  };
}
