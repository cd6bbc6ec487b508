// What a season's sums and quotients say, and the rows that tell kinds of sap apart where a season boiled several.
import type { FigureName, KindOfSeason, KindTotals, SeasonTotals, SeasonView } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import { figureLabel, figureWords } from './figure-words.ts';
import { sapKindName } from './sap-words.ts';

/** A sum over so many boils; of how many it is known where that is not all of them. */
export function sumWords(
  name: FigureName,
  { figure, boils_known: known }: SeasonTotals['cost'],
  boils: number,
  settings: Settings,
): string {
  const words = figureWords(name, figure, settings);
  return figure === null || known === boils ? words : say('season.part_known', { figure: words, known, boils });
}

/** A quotient of the season; of sap to syrup where it boiled several kinds, where they are told, or why they are not. */
export function quotientWords(
  name: 'ratio' | 'fuel_mj_per_l' | 'fuel_kg_per_l' | 'water_off_l_per_h' | 'cost_a_jar',
  totals: SeasonTotals,
  settings: Settings,
): string {
  if (name !== 'ratio' || totals.by_kind.length === 0) return figureWords(name, totals[name], settings);
  return say(totals.by_kind.some(isOfOneKind) ? 'season.kinds_apart' : 'season.kinds_together');
}

const isOfOneKind = ({ sap }: Pick<KindTotals, 'sap'>): boolean => sap !== 'several';

const kindWords = (sap: KindOfSeason): string => (sap === 'several' ? say('season.several_kinds') : sapKindName(sap));

/**
 * Rows of each kind of sap alone, where the seasons boiled several apart; of one kind, or of several in each boil, their sums
 * tell all.
 */
export function rowsOfKind(
  seasons: readonly Pick<SeasonView['seasons'][number], 'totals'>[],
  name: 'sap_litres' | 'syrup_litres' | 'ratio',
  settings: Settings,
): [label: string, words: (totals: Pick<SeasonTotals, 'by_kind'>) => string][] {
  const all = seasons.flatMap(({ totals }) => totals.by_kind);
  if (!all.some(isOfOneKind)) return [];
  const told = (of: KindTotals): string =>
    name === 'ratio' ? figureWords(name, of.ratio, settings) : sumWords(name, of[name], of.boils, settings);
  return [...new Set(all.map(({ sap }) => sap))]
    .filter((sap) => name !== 'ratio' || sap !== 'several')
    .map((sap) => [
      say('season.of_kind', { figure: figureLabel(name), sap: kindWords(sap) }),
      ({ by_kind: kinds }) => {
        const of = kinds.find((each) => each.sap === sap);
        return of === undefined ? '' : told(of);
      },
    ]);
}
