// A whole day's boil in the simulator as a plan sees it: stock poured into three pots as they go down, poured together, finished in the smallest.
import type { PanSetup } from '../../../src/core/boil/entries.ts';
import type { PlanInput } from '../../../src/core/plan/plan.ts';
import { perform } from '../../../src/core/simulation/acts.ts';
import { depthMillimetres, litresAtTwenty, strengthBrix } from '../../../src/core/simulation/liquid.ts';
import type { Scenario } from '../../../src/core/simulation/scenario.ts';
import { stepSimulation } from '../../../src/core/simulation/simulate.ts';
import { panNamed, startSimulation } from '../../../src/core/simulation/state.ts';
import type { SimulationState } from '../../../src/core/simulation/state.ts';
import { PROPANE_NET_MJ_PER_KG } from '../../../src/core/physics/fuel.ts';
import { drawFor } from '../forecast/draw.ts';

const SECOND = 1000;
const HOUR = 3_600_000;
/** Nobody boils longer than this without a pause; a boil that is not done by then is not counted. */
const MOST_HOURS = 90;

/** Tarn Hollow, invented: three pots over burners of given power, with birch sap. */
export const pots: PanSetup[] = [
  { id: 'p1', name: 'Back pot', vessel: { shape: 'round', diameter_mm: 400 } },
  { id: 'p2', name: 'Middle pot', vessel: { shape: 'round', diameter_mm: 360 } },
  { id: 'p3', name: 'Front pot', vessel: { shape: 'round', diameter_mm: 220 } },
].map((pot, index) => ({ ...pot, heat: { kind: 'propane', power_w: [16_000, 12_000, 5000][index]! } }) as PanSetup);

export const asked: PlanInput = {
  site: { altitude_m: 640 },
  sap: 'birch',
  litres: 140,
  brix: 0.9,
  celsius: 5,
  finish: { brix: 67 },
  pans: pots,
};

export interface DayTruth {
  hours: number;
  propaneKg: number;
  syrupLitres: number;
  /** Heat that warmed sap or became steam over the burner's nominal heat, by pan. */
  shares: Record<string, number>;
}

/** What is true of one seed's burners; the same burners on another day when `day` differs. */
export interface Burners {
  efficiency: Record<string, number>;
}

/**
 * Shares of the nominal power that reach the liquid: from a bare ring under a pot in the open (25 to 35 % as steam,
 * common practice, and about 5 points more before the walls' loss) to one behind a windshield.
 */
export function burnersOf(seed: number): Burners {
  const draw = drawFor(seed, 'burners of a plan');
  return { efficiency: Object.fromEntries(pots.map(({ id }) => [id, draw.acrossScales(0.3, 0.52)])) };
}

function scenario(seed: number, day: number, { efficiency }: Burners): Scenario {
  const draw = drawFor(seed * 100 + day, 'day of a plan');
  const wind = draw.between(0.3, 2);
  return {
    seed: seed * 100 + day,
    header: {
      recording: 'panwarden',
      version: 1,
      started: '2027-04-18T07:30:00-07:00',
      pans: pots.map((pot) => ({ ...pot, sap: 'birch' })),
    },
    endsAt: MOST_HOURS * HOUR,
    air: {
      celsius: draw.between(-3, 12),
      windMetresPerSecond: wind,
      windSpread: wind / 2,
      pressure: [{ t: 0, hpa: draw.between(925, 950) }],
    },
    pans: pots.map(({ id }) => ({
      id,
      litres: 0,
      brix: 1,
      celsius: 5,
      level: 1,
      efficiency: efficiency[id]!,
      lossWattsPerKelvin: 5,
    })),
    ports: [],
    probes: [],
    deeds: [],
  };
}

/** Poured in up to this depth, and again below that; poured together below the last (mm). */
const FULL_MM = 100;
const LOW_MM = 45;
const TOGETHER_MM = 22;
/** A pot that waits for more is kept under this, °Bx. */
const THICK_BRIX = 50;
/** Heat that turns a kilogram of sap of 5 °C into steam, J: 93 °C of warming, then the latent heat. */
const HEAT_OF_A_KG = 4180 * 93 + 2.262e6;
/** What a jug holds, litres. */
const JUG_L = 3;

/** What a person does who looks at the pots once a minute. */
class Hands {
  readonly #state: SimulationState;
  readonly #brix: number;
  #stock: number;

  constructor(state: SimulationState, litres: number, brix: number) {
    this.#state = state;
    this.#stock = litres;
    this.#brix = brix;
  }

  fill(t: number): void {
    for (const { id } of pots) while (this.#stock > 0 && this.#depth(id) < FULL_MM) this.#pour(id, t);
  }

  look(t: number): void {
    for (const { id } of pots)
      if (this.#isOn(id)) while (this.#stock > 0 && this.#depth(id) < LOW_MM) this.#pour(id, t);
    if (this.#stock > 0) return;
    for (const [index, { id }] of pots.slice(0, -1).entries()) {
      const next = pots[index + 1]!.id;
      if (this.#isOn(id) && this.#depth(id) < TOGETHER_MM) this.#pourOver(id, next, 'all', t);
      // The smaller one must not run low or thick while it waits for the larger.
      else if (this.#isOn(id) && (this.#depth(next) < TOGETHER_MM || this.#strength(next) > THICK_BRIX))
        this.#pourOver(id, next, 1, t);
    }
  }

  #pourOver(from: string, to: string, litres: number | 'all', t: number): void {
    perform(this.#state, { act: 'transfer', from, to, litres }, t);
  }

  #strength(id: string): number {
    return strengthBrix(panNamed(this.#state, id).liquid);
  }

  #pour(pan: string, t: number): void {
    const litres = Math.min(JUG_L, this.#stock);
    perform(this.#state, { act: 'pour', pan, litres, brix: this.#brix, celsius: 5 }, t);
    this.#stock -= litres;
  }

  #isOn(id: string): boolean {
    return !panNamed(this.#state, id).off;
  }

  #depth(id: string): number {
    const { liquid, hearth } = panNamed(this.#state, id);
    return depthMillimetres(liquid, hearth.areaM2);
  }
}

/** The boil of one seed and day, worked out second by second; null where it did not come to an end. */
export function dayOfBoiling(seed: number, day: number, burners: Burners): DayTruth | null {
  const state = startSimulation(scenario(seed, day, burners));
  const draw = drawFor(seed * 100 + day, 'sap of a plan');
  // A can's mark and a cheap refractometer: 3 % and 0.05 °Bx (common practice).
  const hands = new Hands(state, 140 * draw.between(0.97, 1.03), 0.9 + draw.between(-0.05, 0.05));
  hands.fill(0);
  const onSeconds: Record<string, number> = {};
  for (let t = 0; t < MOST_HOURS * HOUR; t += 60 * SECOND) {
    stepSimulation(state, t);
    hands.look(t);
    for (const { id } of pots) if (!panNamed(state, id).off) onSeconds[id] = (onSeconds[id] ?? 0) + 60;
    const last = panNamed(state, 'p3');
    if (panNamed(state, 'p1').off && panNamed(state, 'p2').off && strengthBrix(last.liquid) >= 67) {
      const joule = pots.reduce((sum, { id, heat }) => sum + (onSeconds[id] ?? 0) * heat!.power_w!, 0);
      return {
        hours: t / HOUR,
        propaneKg: joule / 1e6 / PROPANE_NET_MJ_PER_KG,
        syrupLitres: litresAtTwenty(last.liquid),
        shares: Object.fromEntries(
          pots.map(({ id, heat }) => [
            id,
            (panNamed(state, id).evaporatedKg * HEAT_OF_A_KG) / (heat!.power_w! * (onSeconds[id] ?? 1)),
          ]),
        ),
      };
    }
  }
  return null;
}
