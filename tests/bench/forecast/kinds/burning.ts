// Kinds that are left to burn: too strong, too shallow while thick, too shallow while thin.
import type { Deed } from '../../../../src/core/simulation/scenario.ts';
import { around, batch, firstFills, firstLooks, foundBurned, hour, kind } from './kind.ts';

export const burningKinds = [
  kind('left-too-strong', 'nobody comes back: it passes its finish and burns for its strength', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']) })];
    const looks = firstLooks(draw, pots, { pressure: draw.chance(0.5), checks: true });
    const fills = draw.chance(0.7) ? firstFills(draw, pots) : [];
    return around(draw, pots, [...looks, ...fills, foundBurned('p1')]);
  }),
  kind('left-too-shallow', 'a batch too small for its pan: the bottom burns before it is syrup', (draw) => {
    const fromBrix = draw.between(4, 9);
    // At 4 mm it burns; the strength is then what is drawn here, as syrup takes less room for its weight than sap.
    const burnsAtBrix = draw.between(28, 58);
    const given = {
      sap: draw.oneOf(['maple', 'birch'] as const),
      fromBrix,
      powerWatts: draw.between(6000, 14_000),
      beginsDeepMm: (4.7 * burnsAtBrix) / fromBrix,
      leastWattsPerM2: draw.between(20_000, 28_000),
    };
    const pots = [batch(draw, 'p1', given)];
    const depth: Deed[] = draw.chance(0.5)
      ? [{ when: { at: draw.between(0.5, 1.2) * hour }, acts: [{ act: 'measure-depth', pan: 'p1' }] }]
      : [];
    const looks = firstLooks(draw, pots, { pressure: draw.chance(0.5), checks: true });
    return around(draw, pots, [...looks, ...firstFills(draw, pots), ...depth, foundBurned('p1')]);
  }),
  kind(
    'forgotten-top-ups',
    'a flat pan fed for two hours; then nobody pours any more, and it burns as thin sap',
    (draw) => {
      const given = {
        fromBrix: draw.between(2, 5),
        powerWatts: draw.between(15_000, 30_000),
        efficiency: draw.between(0.35, 0.55),
        beginsDeepMm: draw.between(28, 50),
        leastWattsPerM2: draw.between(20_000, 28_000),
      };
      const pot = batch(draw, 'p1', given, { minDepthMm: 12, heatKind: draw.oneOf(['wood', 'propane']) });
      const feed: Deed = {
        when: {
          sight: 'depth-below',
          pan: 'p1',
          value: (pot.litres / pot.areaM2) * 0.8,
          until: draw.between(1.5, 2.5) * hour,
          times: 60,
          restSeconds: 180,
        },
        acts: [
          {
            act: 'pour',
            pan: 'p1',
            litres: Number((0.2 * pot.litres).toFixed(1)),
            brix: draw.between(1, 4),
            celsius: 5,
          },
        ],
        late: [10, 180],
        forgotten: draw.oneOf([0, 0.15]),
      };
      const looks = firstLooks(draw, [pot], { pressure: true, checks: true });
      return around(draw, [pot], [...looks, ...firstFills(draw, [pot]), feed, foundBurned('p1')]);
    },
  ),
];
