// Kinds with several pans: poured together, eight at once, one probe for three, and a pan that is kept below a boil.
import { surfaceEvaporationKgPerM2S } from '../../../../src/core/physics/open-surface.ts';
import type { Deed } from '../../../../src/core/simulation/scenario.ts';
import type { PotPlan } from '../boil-plan.ts';
import type { Draw } from '../draw.ts';
import {
  around,
  batch,
  careful,
  firstFills,
  firstLooks,
  hour,
  kind,
  LATENT_J_PER_KG,
  LOSS_W_PER_K,
  minute,
  ordinaryProbe,
  takenOff,
  type Batch,
} from './kind.ts';

/** An empty pot that waits for what is poured over. */
function waiting(draw: Draw, id: string, like: PotPlan, areaM2: number, powerWatts: number): PotPlan {
  return {
    ...like,
    id,
    areaM2,
    truePowerWatts: powerWatts,
    toldPowerWatts: powerWatts,
    litres: 0,
    brix: 0,
    celsius: 10,
    probe: ordinaryProbe(draw),
  };
}

/** Two big pots of raw sap, poured together, then finished in a small one. */
function fromSap(draw: Draw, sap: 'maple' | 'birch', brix: number) {
  const given: Partial<Batch> = {
    sap,
    fromBrix: brix,
    hours: draw.between(3, 4.5),
    powerWatts: draw.between(10_000, 18_000),
  };
  const wide = { areaM2: draw.between(0.12, 0.2) };
  const first = batch(draw, 'p1', given, wide);
  const second = batch(draw, 'p2', given, wide);
  const sugarKg = (first.litres + second.litres) * 0.01 * brix;
  const syrupLitres = sugarKg / 0.67 / 1.33;
  const thickBrix = draw.between(25, 40);
  const steamKg = sugarKg * (100 / thickBrix - 100 / 67);
  const steamWatts = (LATENT_J_PER_KG * steamKg) / (3600 * draw.between(0.8, 1.8));
  const powerWatts = (steamWatts + 90 * LOSS_W_PER_K) / (0.95 * first.efficiency);
  const last = waiting(draw, 'p3', first, Math.max(0.008, syrupLitres / draw.between(30, 60)), powerWatts);
  const togetherAt = first.litres / 4 / first.areaM2;
  const deeds: Deed[] = [
    {
      when: { sight: 'depth-below', pan: 'p1', value: togetherAt },
      acts: [{ act: 'transfer', from: 'p2', to: 'p1', litres: 'all' }],
      late: [30, 240],
    },
    {
      when: { sight: 'brix-above', pan: 'p1', value: thickBrix },
      acts: [{ act: 'transfer', from: 'p1', to: 'p3', litres: 'all' }],
      late: [30, 240],
    },
  ];
  const pots = [first, second, last];
  return around(draw, pots, careful(draw, pots, deeds));
}

/** Watts into a still pan that hold it at a temperature under light air. */
function holdingWatts(areaM2: number, celsius: number): number {
  const air = { celsius: 18, vapourHpa: 12, windMetresPerSecond: 0.1, pressureHpa: 980 };
  const kgPerM2S = surfaceEvaporationKgPerM2S(celsius, 1.5, air) ?? 0;
  return areaM2 * kgPerM2S * 2.28e6 + 6 * (celsius - 18);
}

export const manyPanKinds = [
  kind('maple-from-sap', 'two pots of 1.5 to 4 °Bx maple sap, poured together, finished in a small pot', (draw) =>
    fromSap(draw, 'maple', draw.between(1.5, 4)),
  ),
  kind('birch-from-sap', 'the same with birch sap of 0.5 to 1.4 °Bx', (draw) =>
    fromSap(draw, 'birch', draw.between(0.5, 1.4)),
  ),
  kind(
    'three-pots',
    'three pots at different stages, the first fed from the second, each finished by itself',
    (draw) => {
      const pots = ['p1', 'p2', 'p3'].map((id) => batch(draw, id, { hours: draw.between(2, 4.5) }));
      const moves: Deed[] = [1, 1.6].map((hours) => ({
        when: { at: hours * hour },
        acts: [{ act: 'transfer', from: 'p2', to: 'p1', litres: pots[1]!.litres * draw.between(0.1, 0.2) }],
        late: [10, 120],
      }));
      return around(draw, pots, careful(draw, pots, moves));
    },
  ),
  kind('eight-pans', 'eight small pots of maple and birch on one board, all kinds of fire', (draw) => {
    const pots = Array.from({ length: 8 }, (_, index) => {
      const sap = draw.oneOf(['maple', 'birch'] as const);
      const heatKind = draw.oneOf(['propane', 'wood', 'electric'] as const);
      const given = {
        sap,
        hours: draw.between(1.5, 4),
        powerWatts: draw.between(3000, 7000),
        endsDeepMm: draw.between(22, 45),
      };
      return batch(draw, `p${index + 1}`, given, { heatKind });
    });
    return around(draw, pots, careful(draw, pots), { periodMs: 2000 });
  }),
  kind(
    'one-probe-round',
    'one probe goes round three pots, some minutes in each; hand readings now and then',
    (draw) => {
      const first = batch(draw, 'p1', { hours: draw.between(2.5, 4) });
      const others = ['p2', 'p3'].map((id) => batch(draw, id, { hours: draw.between(2.5, 4.5) }, { probe: null }));
      const pots = [first, ...others];
      const stayMs = draw.between(4, 8) * minute;
      const rounds: Deed[] = Array.from({ length: Math.ceil((6 * hour) / stayMs) }, (_, index) => ({
        when: { at: (index + 1) * stayMs },
        acts: [{ act: 'move-probe', probe: 'A/1', pan: `p${((index + 1) % 3) + 1}` }],
        late: [2, 30],
      }));
      const hands: Deed[] = [1, 1.7, 2.4, 3].flatMap((hours) =>
        others.map(({ id }): Deed => ({ when: { at: hours * hour }, acts: [{ act: 'read-by-hand', pan: id }] })),
      );
      return around(draw, pots, careful(draw, pots, [...rounds, ...hands]));
    },
  ),
  kind(
    'below-a-boil',
    'birch kept under 94 °C on a plate; litres, a dip stick and density readings tell of it',
    (draw) => {
      const areaM2 = draw.between(0.1, 0.25);
      const watts = holdingWatts(areaM2, draw.between(83, 88));
      const pot = batch(
        draw,
        'p1',
        { sap: 'birch', fromBrix: draw.between(28, 42) },
        {
          areaM2,
          litres: areaM2 * draw.between(32, 50),
          celsius: draw.between(50, 80),
          finish: { brix: 67, ceiling_c: 94 },
          heatKind: 'electric',
          efficiency: 0.6,
          truePowerWatts: watts / 0.6,
          toldPowerWatts: watts / 0.6,
          minDepthMm: 8,
        },
      );
      const looks: Deed[] = [45, 52, 59].slice(0, draw.whole(1, 3)).map((value) => ({
        when: { sight: 'brix-above', pan: 'p1', value },
        acts: [
          { act: 'measure-density', pan: 'p1', instrument: 'refractometer' },
          { act: 'measure-depth', pan: 'p1' },
        ],
        late: [20, 120],
      }));
      const deeds = [
        ...firstLooks(draw, [pot], { pressure: true, checks: true }),
        ...firstFills(draw, [pot]),
        ...looks,
      ];
      return around(draw, [pot], [...deeds, ...takenOff([pot])], {
        wind: { mean: 0.3, spread: 0.1, gustSeconds: 300 },
      });
    },
  ),
];
