// Kinds of fires: wind, wood that swings, a flame turned down or gone out that nobody noted, and big burners.
import { around, batch, careful, kind } from './kind.ts';

/** A pan that is to boil on with half its flame, W/m². */
const WEAK_AT_TIMES = 38_000;

export const fireKinds = [
  kind('windy', 'gusts that take up to half of the flame, for minutes at a time', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), leastWattsPerM2: WEAK_AT_TIMES })];
    const wind = { mean: draw.between(2, 4), spread: draw.between(1.2, 2.2), gustSeconds: draw.between(120, 900) };
    return around(draw, pots, careful(draw, pots), { wind });
  }),
  kind('wood-swings', 'wood that swings by a third with periods of 8 to 15 min', (draw) => {
    const fire = {
      flutter: { spread: draw.between(0.03, 0.08), memorySeconds: 120 },
      swing: { share: draw.between(0.25, 0.36), periodSeconds: [480, 900] as [number, number] },
    };
    const given = {
      sap: draw.oneOf(['maple', 'birch'] as const),
      efficiency: draw.between(0.3, 0.5),
      leastWattsPerM2: WEAK_AT_TIMES,
    };
    const pots = [batch(draw, 'p1', given, { heatKind: 'wood', fire })].map((pot) => {
      if (draw.chance(0.5)) return pot;
      const { toldPowerWatts: _, ...untold } = pot;
      return untold;
    });
    return around(draw, pots, careful(draw, pots));
  }),
  kind('fed-wood', 'wood that is fed every 9 to 16 min and dies down between', (draw) => {
    const pots = [
      batch(draw, 'p1', { efficiency: draw.between(0.3, 0.5), leastWattsPerM2: WEAK_AT_TIMES }, { heatKind: 'wood' }),
    ].map(({ fire: _, ...pot }) => pot);
    return around(draw, pots, careful(draw, pots));
  }),
  kind('turned-down', 'the flame is turned down at 40 to 55 °Bx and nobody notes it', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), leastWattsPerM2: WEAK_AT_TIMES })];
    const deed = {
      when: { sight: 'brix-above' as const, pan: 'p1', value: draw.between(40, 55) },
      acts: [{ act: 'flame' as const, pan: 'p1', level: draw.between(0.45, 0.75) }],
      forgotten: draw.oneOf([1, 1, 0]),
      late: [30, 240] as [number, number],
    };
    return around(draw, pots, careful(draw, pots, [deed]));
  }),
  kind('went-out', 'the flame goes out for 8 to 25 min, and is lit again without a mark', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']) })];
    const out = draw.between(25, 50);
    const deeds = [
      {
        when: { sight: 'brix-above' as const, pan: 'p1', value: out },
        acts: [{ act: 'flame' as const, pan: 'p1', level: 0 }],
        forgotten: 1,
      },
      {
        when: { sight: 'brix-above' as const, pan: 'p1', value: out, delaySeconds: draw.between(480, 1500) },
        acts: [{ act: 'flame' as const, pan: 'p1', level: 1 }],
        forgotten: 1,
      },
    ];
    return around(draw, pots, careful(draw, pots, deeds));
  }),
  kind('big-flat-pan', 'a flat pan of 0.3 to 0.9 m² over 20 to 30 kW, finished where it stands', (draw) => {
    const given = {
      powerWatts: draw.between(24_000, 30_000),
      efficiency: draw.between(0.4, 0.6),
      fromBrix: draw.between(18, 28),
      endsDeepMm: draw.between(17, 26),
      hours: 4,
    };
    const pots = [batch(draw, 'p1', given, { minDepthMm: 10, heatKind: draw.oneOf(['wood', 'propane']) })];
    return around(draw, pots, careful(draw, pots));
  }),
];
