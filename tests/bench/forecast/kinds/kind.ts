// What a kind of boil is, and the ordinary pot, probe and hands from which each kind departs.
import type { Finish, Sap, SugarShares } from '../../../../src/core/boil/entries.ts';
import type { Deed, FirePlan, Scenario, ScenarioProbe } from '../../../../src/core/simulation/scenario.ts';
import { hour, minute, probeOf, scenarioOf, type BoilPlan, type PotPlan } from '../boil-plan.ts';
import { drawFor, type Draw } from '../draw.ts';

export interface Kind {
  name: string;
  about: string;
  /** Everything is drawn from the seed, within what the kind is about. */
  scenario(seed: number): Scenario;
}

/** A kind from a function that draws its plan; name and seed decide every draw. */
export function kind(name: string, about: string, plan: (draw: Draw) => Omit<BoilPlan, 'seed' | 'name'>): Kind {
  return {
    name,
    about,
    scenario: (seed) => scenarioOf({ seed: 1000 * seed + name.length, name, ...plan(drawFor(seed, name)) }),
  };
}

type ProbeFlaws = Omit<ScenarioProbe, 'id'>;

/** Drawn over nearly all that the probes of real people do. */
export function ordinaryProbe(draw: Draw, given: Partial<ProbeFlaws> = {}): ProbeFlaws {
  return {
    lagSeconds: draw.acrossScales(2, 15),
    ...(draw.chance(0.3) && { secondLagSeconds: draw.between(2, 10) }),
    biasCelsius: draw.between(-2, 2),
    noiseCelsius: draw.acrossScales(0.03, 0.3),
    resolutionCelsius: draw.oneOf([0.0625, 0.0625, 0.1, 0.125, 0.25, 0.5]),
    spikesPerHour: draw.oneOf([0, 1, 10]),
    tipMm: draw.between(4, 10),
    superheat: {
      mostCelsius: draw.between(0, draw.chance(0.3) ? 0.3 : 0.1),
      memorySeconds: draw.acrossScales(60, 1200),
    },
    ...given,
  };
}

/** A good probe in a good place. */
export function goodProbe(draw: Draw): ProbeFlaws {
  return ordinaryProbe(draw, {
    lagSeconds: draw.between(2, 5),
    secondLagSeconds: 1,
    noiseCelsius: draw.between(0.03, 0.08),
    resolutionCelsius: 0.0625,
    superheat: { mostCelsius: draw.between(0, 0.06), memorySeconds: 300 },
  });
}

/** A mix as saps of that name have it, a little unlike the header's; half of the time just the header's. */
function naturalShares(draw: Draw, sap: 'maple' | 'birch'): SugarShares | undefined {
  const sucrose = sap === 'maple' ? draw.between(0.95, 0.995) : draw.between(0.05, 0.18);
  const fructose = (1 - sucrose) * draw.between(0.48, 0.54);
  const others = sap === 'maple' ? draw.between(0, 0.006) : draw.between(0, 0.02);
  return draw.chance(0.5) ? undefined : { sucrose, glucose: 1 - sucrose - fructose, fructose, others };
}

/** A flame that wanders as cylinders, wind and wood make it; one in five swings as well. */
function ordinaryFire(draw: Draw): FirePlan {
  const flutter = { spread: draw.between(0.03, 0.15), memorySeconds: draw.acrossScales(100, 3000) };
  const swing = { share: draw.between(0.1, 0.3), periodSeconds: [480, 900] as [number, number] };
  return draw.chance(0.2) ? { flutter, swing } : { flutter };
}

export interface Batch {
  sap: 'maple' | 'birch';
  /** From the beginning to the finish at full flame. */
  hours: number;
  fromBrix: number;
  powerWatts: number;
  efficiency: number;
  /** Least depth of the finished syrup, mm. */
  endsDeepMm: number;
  /** Least heat into the liquid for each square metre, W: under some 15 kW in light wind a pan only simmers. */
  leastWattsPerM2: number;
  /** Depth at the beginning, mm: the bottom is then as wide as its heat allows, and the batch as big as that holds. */
  beginsDeepMm: number;
}

export const LATENT_J_PER_KG = 2.25e6;
/** Of a big pot; small ones lose less. */
export const LOSS_W_PER_K = 6;

/** Steam of a pot at its boil in light wind, kg/s. */
export const steamKgPerS = (powerWatts: number, efficiency: number): number =>
  (0.95 * powerWatts * efficiency - 90 * LOSS_W_PER_K) / LATENT_J_PER_KG;

/** Flat pans of the trade take 25 kW/m² (trade.md). */
const ORDINARY_W_PER_M2 = 24_000;

/** A pot whose batch ends after the hours; litres stay between 4 and 60, and the bottom is no wider than its heat. */
export function batch(draw: Draw, id: string, given: Partial<Batch> = {}, more: Partial<PotPlan> = {}): PotPlan {
  const sap = given.sap ?? 'maple';
  const finishBrix = 67;
  const fromBrix = given.fromBrix ?? draw.between(8, 20);
  const truePowerWatts = given.powerWatts ?? draw.acrossScales(3500, 16_000);
  const efficiency = given.efficiency ?? draw.between(0.25, 0.6);
  const hours = given.hours ?? draw.between(2.5, 5);
  const steamKg = 3600 * hours * steamKgPerS(truePowerWatts, efficiency);
  const litres = Math.min(60, Math.max(4, steamKg / (1 - fromBrix / finishBrix) / (1 + 0.004 * fromBrix)));
  const trueShares = naturalShares(draw, sap);
  const endsDeepMm = given.endsDeepMm ?? draw.between(24, 60);
  const syrupLitres = (litres * (1 + 0.004 * fromBrix) * fromBrix) / finishBrix / 1.33;
  const widestM2 =
    (LATENT_J_PER_KG * steamKgPerS(truePowerWatts, efficiency)) / (given.leastWattsPerM2 ?? ORDINARY_W_PER_M2);
  const areaM2 =
    given.beginsDeepMm === undefined ? Math.min(widestM2, Math.max(0.015, syrupLitres / endsDeepMm)) : widestM2;
  return {
    id,
    sap: sap satisfies Sap,
    areaM2,
    vesselTold: true,
    heatKind: 'propane',
    truePowerWatts,
    toldPowerWatts: truePowerWatts * draw.between(0.9, 1.1),
    efficiency,
    lossWattsPerKelvin: Math.min(LOSS_W_PER_K, 2 + 30 * areaM2),
    finish: { brix: sap === 'maple' ? 66.9 : 67 } satisfies Finish,
    minDepthMm: draw.oneOf([10, 12, 15]),
    litres: given.beginsDeepMm === undefined ? litres : areaM2 * given.beginsDeepMm,
    brix: fromBrix,
    celsius: draw.between(10, 70),
    fire: ordinaryFire(draw),
    ...(trueShares && { trueShares }),
    probe: ordinaryProbe(draw, { tipMm: draw.between(4, Math.max(5, Math.min(20, 0.5 * endsDeepMm))) }),
    ...more,
  };
}

export interface Surroundings {
  altitudeM?: number | null;
  /** hPa/h; the pressure then runs straight. */
  driftHpaPerHour?: number;
  wind?: BoilPlan['wind'];
  periodMs?: number;
}

/** Long enough for every kind; a boil ends by itself once every pan has been off for a while. */
const LONGEST_MS = 14 * hour;

export function around(
  draw: Draw,
  pots: PotPlan[],
  deeds: Deed[],
  given: Surroundings = {},
): Omit<BoilPlan, 'seed' | 'name'> {
  const altitudeM = draw.between(50, 1100);
  const hpa = 1013.25 * (1 - altitudeM / 44_331) ** 5.2559 + draw.between(-10, 10);
  const drift = given.driftHpaPerHour ?? draw.between(-0.8, 0.8);
  return {
    pots,
    periodMs: given.periodMs ?? draw.oneOf([1000, 1000, 2000]),
    altitudeM: given.altitudeM === undefined ? altitudeM : given.altitudeM,
    pressure: [
      { t: 0, hpa },
      { t: LONGEST_MS, hpa: hpa + (drift * LONGEST_MS) / hour },
    ],
    wind: given.wind ?? {
      mean: draw.between(0.3, 2),
      spread: draw.between(0.1, 0.9),
      gustSeconds: draw.acrossScales(40, 600),
    },
    airCelsius: draw.between(-4, 12),
    deeds,
    endsAt: LONGEST_MS,
  };
}

/** A water check of every probe, right to 0.1 °C, and a pressure, as the makers do it before a boil. */
export function firstLooks(
  draw: Draw,
  pots: readonly PotPlan[],
  looks: { pressure: boolean; checks: boolean },
): Deed[] {
  const checks = looks.checks
    ? pots
        .filter(({ probe }) => probe !== null)
        .map((pot, index): Deed => ({
          when: { at: (index + 1) * 15_000 },
          acts: [{ act: 'check-water', probe: probeOf(pot), errorCelsius: draw.between(-0.1, 0.1) }],
        }))
    : [];
  return [...(looks.pressure ? [{ when: { at: 0 }, acts: [{ act: 'read-pressure' as const }] }] : []), ...checks];
}

/** What was poured in first, litres known to 8 % and strength to 7 % (one standard deviation is about half of it). */
export function firstFills(draw: Draw, pots: readonly PotPlan[]): Deed[] {
  return pots
    .filter(({ litres }) => litres > 0)
    .map(({ id, litres, brix, celsius }) => ({
      when: { at: 2000 },
      acts: [
        {
          act: 'note',
          mark: {
            kind: 'top-up',
            pan: id,
            litres: Number((litres * draw.between(0.92, 1.08)).toFixed(1)),
            brix: Number((brix * draw.between(0.93, 1.07)).toFixed(1)),
            celsius: Math.round(celsius),
          },
        },
      ],
    }));
}

/** Somebody lifts it off well past its finish, so that a late call is still seen to be late; or finds it burned. */
export const takenOff = (pots: readonly PotPlan[], pastBrix = 3): Deed[] =>
  pots.flatMap((pot) => [
    {
      when: { sight: 'brix-above', pan: pot.id, value: 67 + pastBrix },
      acts: [{ act: 'draw-off', pan: pot.id, litres: 'all' }],
      late: [5, 60],
    },
    foundBurned(pot.id),
  ]);

/** Somebody comes back to it well after it has burned. */
export const foundBurned = (pan: string): Deed => ({
  when: { sight: 'celsius-above', pan, value: 135, delaySeconds: 300 },
  acts: [{ act: 'draw-off', pan, litres: 'all' }],
});

/** What a person who does it all well does: looks, fills, and takes off. */
export function careful(draw: Draw, pots: PotPlan[], more: Deed[] = []): Deed[] {
  return [
    ...firstLooks(draw, pots, { pressure: draw.chance(0.7), checks: true }),
    ...firstFills(draw, pots),
    ...more,
    ...takenOff(pots),
  ];
}

export { hour, minute };
