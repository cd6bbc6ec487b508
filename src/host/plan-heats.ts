// What earlier boils showed of the fires of a plan's pans, as the plan takes it.
import type { Header, PanSetup } from '../core/boil/entries.ts';
import { panDesign } from '../core/pan/setup.ts';
import { latentHeatKjPerKg } from '../core/physics/heat.ts';
import type { KnownHeat } from '../core/plan/burners.ts';
import type { Teaching } from '../notebook/contract.ts';
import type { Setup } from '../protocol/header-schema.ts';
import { learntFor } from './learnt.ts';

/** `teachings` come newest first; a pan whose fire no boil showed is left out. */
export const knownHeats = (pans: readonly PanSetup[], teachings: readonly Teaching[]): KnownHeat[] =>
  heatsLearnt(pans, learntFor({ pans: [...pans] } as Setup, teachings));

/** The same from what a boil began with, as its header has it. */
export function heatsLearnt(pans: readonly PanSetup[], learnt: Header['learnt']): KnownHeat[] {
  const latent = latentHeatKjPerKg(100);
  if (learnt === undefined || latent === null) return [];
  return pans.flatMap((pan) => {
    const steam = panDesign(pan, learnt).learntSteam;
    if (steam === null) return [];
    return [{ pan: pan.id, useful_w: Math.exp(steam.lnKgPerS) * latent * 1000, spread: steam.share }];
  });
}
