// Which figures stand in the list of boils.
import type { BoilRow, FigureName } from '../../protocol/season-messages.ts';

/** Two fuels whose heat in a kilogram differs by more than this share are not the same (judgement). */
const SAME_FUEL_SHARE = 0.01;

/**
 * The columns of the table for these boils: fuel by its weight for each volume of syrup, which is what is bought and weighed; by its heat where
 * some boil burned another fuel, for weights of unlike fuels cannot be held against each other.
 */
export function listColumns(rows: readonly Pick<BoilRow, 'figures'>[]): readonly FigureName[] {
  const told = rows.flatMap(({ figures }) => (figures === null ? [] : [figures]));
  const isByWeight = told.every(({ fuel_kg_per_l: kg, fuel_mj_per_l: heat }) => (kg === null) === (heat === null));
  const heats = told.flatMap(({ fuel_kg_per_l: kg, fuel_mj_per_l: heat }) =>
    kg === null || heat === null ? [] : [heat.value / kg.value],
  );
  const isOneFuel = Math.max(...heats) - Math.min(...heats) <= SAME_FUEL_SHARE * Math.max(...heats);
  const isFuelOfAll = isByWeight && (heats.length < 2 || isOneFuel);
  return ['sap_litres', 'syrup_litres', 'ratio', isFuelOfAll ? 'fuel_kg_per_l' : 'fuel_mj_per_l'];
}
