// Fuel that the burners of a plan take, each kind for itself.
import type { Heat } from '../boil/entries.ts';
import { fuelFor } from '../physics/fuel.ts';
import type { Fuel } from '../physics/fuel.ts';
import { Z80 } from '../quantities/spread.ts';
import type { Burner } from './burners.ts';
import type { Stage } from './stages.ts';

/** The middle 80 % between low and high. */
export interface FuelNeeded {
  kind: Exclude<Heat['kind'], 'other'>;
  unit: 'kg' | 'kWh';
  amount: number;
  low: number;
  high: number;
}

/** Seasoned wood: a fifth of its mass is water (common practice). */
const FUELS: Record<FuelNeeded['kind'], Fuel> = {
  propane: { kind: 'propane' },
  wood: { kind: 'wood', moisture: 0.2 },
  electric: { kind: 'electric' },
};

/**
 * A burner burns at its nominal power for as long as it is on; `spread` is that of the hours. Of another heat nothing is
 * known. In the USA a burner's Btu/h is said to be meant gross (from memory, no source read): by that it burns 8 % less
 * propane than is told here, which lies within the range.
 */
export function fuelNeeded(stages: readonly Stage[], burners: readonly Burner[], spread: number): FuelNeeded[] {
  return (['propane', 'wood', 'electric'] as const).flatMap((kind) => {
    const mj = burners
      .filter((burner) => burner.kind === kind && burner.burntW !== null)
      .reduce((sum, burner) => sum + (burner.burntW! / 1e6) * 3600 * hoursOf(stages, burner), 0);
    const amount = mj === 0 ? null : fuelFor(mj, FUELS[kind], 1);
    if (amount === null) return [];
    const unit = kind === 'electric' ? 'kWh' : 'kg';
    return [{ kind, unit, amount, low: amount * Math.exp(-Z80 * spread), high: amount * Math.exp(Z80 * spread) }];
  });
}

const hoursOf = (stages: readonly Stage[], { pan }: Burner): number =>
  stages.filter(({ pans }) => pans.includes(pan)).reduce((sum, { hours }) => sum + hours, 0);
