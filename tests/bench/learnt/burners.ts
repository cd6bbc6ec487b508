// Invented burners with their pans, each with a true share of heat and a scatter of its own from boil to boil, and the boils on them.
import type { Header, Heat, Learnt } from '../../../src/core/boil/entries.ts';
import type { Scenario } from '../../../src/core/simulation/scenario.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';
import { scenarioOf, type PotPlan } from '../forecast/boil-plan.ts';
import { drawFor, type Draw } from '../forecast/draw.ts';
import {
  around,
  batch,
  firstFills,
  firstLooks,
  LATENT_J_PER_KG,
  ordinaryProbe,
  steamKgPerS,
  takenOff,
} from '../forecast/kinds/kind.ts';

export interface BurnerKind {
  name: string;
  about: string;
  heat: Heat['kind'];
  /** The share of heat is drawn between these for each burner. */
  efficiency: readonly [least: number, most: number];
  powerWatts: readonly [least: number, most: number];
  /** Standard deviation of a boil's heat about its burner's, a share; drawn between these for each burner. */
  scatter: readonly [least: number, most: number];
  powerTold: boolean;
  vesselTold: boolean;
  /** In the judged boil somebody notes what goes in, as in those before it. */
  filled: boolean;
  /** In its last boil, which is judged, somebody has put the pan on another fire: so many times its heat, not told. */
  changedBy?: number;
}

const ordinary = {
  heat: 'propane',
  efficiency: [0.28, 0.62],
  powerWatts: [5000, 16_000],
  scatter: [0.04, 0.18],
  powerTold: true,
  vesselTold: true,
  filled: true,
} as const;

export const burnerKinds: readonly BurnerKind[] = [
  { ...ordinary, name: 'gas-pot', about: 'a pot on propane, power told, fill noted' },
  {
    ...ordinary,
    name: 'gas-unmeasured',
    about: 'the same; nobody told power or size',
    powerTold: false,
    vesselTold: false,
  },
  {
    ...ordinary,
    name: 'gas-unfilled',
    about: 'the same as the first, but in the judged boil nobody notes what goes in',
    filled: false,
  },
  {
    ...ordinary,
    name: 'wood',
    about: 'a pan on wood, which differs more from boil to boil',
    heat: 'wood',
    efficiency: [0.25, 0.6],
    scatter: [0.12, 0.3],
  },
  {
    ...ordinary,
    name: 'electric',
    about: 'an electric plate, nearly alike each time',
    heat: 'electric',
    efficiency: [0.55, 0.9],
    powerWatts: [3000, 7000],
    scatter: [0.02, 0.06],
  },
  {
    ...ordinary,
    name: 'gas-changed',
    about: 'the judged boil has 0.6 of the heat, and nobody said so',
    changedBy: 0.6,
  },
];

/** What stays of a burner from boil to boil. */
interface Burner {
  efficiency: number;
  powerWatts: number;
  scatter: number;
  areaM2: number;
  toldPowerWatts: number;
}

function burnerOf(kind: BurnerKind, seed: number): Burner {
  const draw = drawFor(seed, `burner ${kind.name}`);
  const efficiency = draw.between(...kind.efficiency);
  const powerWatts = draw.acrossScales(...kind.powerWatts);
  const widestM2 = (LATENT_J_PER_KG * steamKgPerS(powerWatts, efficiency)) / 24_000;
  return {
    efficiency,
    powerWatts,
    scatter: draw.between(...kind.scatter),
    areaM2: Math.min(widestM2, draw.acrossScales(0.02, 0.08)),
    toldPowerWatts: powerWatts * draw.between(0.9, 1.1),
  };
}

/** The boil number `number` (0, 1, …) on the burner of a seed; `learnt` goes into its header as the program would write it. */
export function boilOn(kind: BurnerKind, seed: number, number: number, isLast: boolean): Scenario {
  const burner = burnerOf(kind, seed);
  const name = `${kind.name}-${seed}-${number}`;
  const draw = drawFor(1000 * seed + number, kind.name);
  const chance = randomStream(1000 * seed + number, `scatter ${kind.name}`);
  const changed = isLast ? (kind.changedBy ?? 1) : 1;
  const efficiency = Math.min(0.95, burner.efficiency * changed * Math.exp(burner.scatter * nextNormal(chance)));
  const pot = potOn(kind, burner, efficiency, draw);
  const deeds = [
    ...firstLooks(draw, [pot], { pressure: draw.chance(0.7), checks: draw.chance(0.7) }),
    ...(kind.filled || !isLast ? firstFills(draw, [pot]) : []),
    ...takenOff([pot]),
  ];
  return scenarioOf({ seed: 100_000 * seed + 10 * number + kind.name.length, name, ...around(draw, [pot], deeds) });
}

function potOn(kind: BurnerKind, burner: Burner, efficiency: number, draw: Draw): PotPlan {
  const { powerWatts, areaM2, toldPowerWatts } = burner;
  const pot = batch(draw, 'p1', { powerWatts, efficiency, hours: draw.between(2, 3.5) });
  const told = { ...pot, areaM2, vesselTold: kind.vesselTold, heatKind: kind.heat, lossWattsPerKelvin: 3 };
  const probe = ordinaryProbe(draw, { tipMm: 5, biasCelsius: draw.between(-1, 1) });
  const { toldPowerWatts: _, ...untold } = told;
  return kind.powerTold ? { ...told, toldPowerWatts, probe } : { ...untold, probe };
}

/** The same boil, begun with what was learnt before. */
export function beginningWith(recording: string, learnt: Learnt | undefined): string {
  const end = recording.indexOf('\n');
  const header = JSON.parse(recording.slice(0, end)) as Header;
  return JSON.stringify({ ...header, ...(learnt && { learnt }) }) + recording.slice(end);
}
