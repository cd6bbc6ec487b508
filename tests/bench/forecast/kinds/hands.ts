// Kinds in which hands make the trouble: pours all day, pours that nobody marks, marks that are late, wrong or doubled.
import type { Act, Deed } from '../../../../src/core/simulation/scenario.ts';
import type { PotPlan } from '../boil-plan.ts';
import type { Draw } from '../draw.ts';
import { around, batch, careful, firstFills, firstLooks, hour, kind, minute, takenOff } from './kind.ts';

/** Sap poured in whenever the pan has sunk to a depth, until a time; what the typing is like is the deed's. */
function feeding(draw: Draw, pot: PotPlan, typing: Partial<Deed>, untilMs: number): Deed {
  const litres = draw.between(0.08, 0.2) * pot.litres;
  const depthMm = pot.litres / pot.areaM2;
  const pour: Act = {
    act: 'pour',
    pan: pot.id,
    litres: Number(litres.toFixed(1)),
    brix: Number(draw.between(0.8, 4).toFixed(1)),
    celsius: Math.round(draw.oneOf([draw.between(2, 10), draw.between(40, 70)])),
  };
  return {
    when: {
      sight: 'depth-below',
      pan: pot.id,
      value: depthMm * draw.between(0.8, 0.92),
      until: untilMs,
      times: 60,
      restSeconds: 240,
      delaySeconds: draw.between(0, 60),
    },
    acts: [pour],
    ...typing,
  };
}

const fedPot = (draw: Draw): PotPlan =>
  batch(draw, 'p1', {
    sap: draw.oneOf(['maple', 'birch']),
    fromBrix: draw.between(14, 25),
    hours: draw.between(2, 3),
    endsDeepMm: draw.between(28, 50),
  });

export const handKinds = [
  kind('topped-up', 'sap poured in for hours, every pour marked up to four minutes late', (draw) => {
    const pots = [fedPot(draw)];
    const feed = feeding(draw, pots[0]!, { late: [10, 240] }, draw.between(1.5, 3) * hour);
    return around(draw, pots, careful(draw, pots, [feed]));
  }),
  kind('unmarked-pours', 'the same with two pours in five never marked', (draw) => {
    const pots = [fedPot(draw)];
    const feed = feeding(draw, pots[0]!, { late: [10, 240], forgotten: 0.4 }, draw.between(1.5, 3) * hour);
    return around(draw, pots, careful(draw, pots, [feed]));
  }),
  kind(
    'sloppy-marks',
    'marks up to six minutes late, missing, doubled, wrong by two, one typed wrong and taken back',
    (draw) => {
      const pots = [fedPot(draw)];
      const typing: Partial<Deed> = {
        late: [20, 360],
        forgotten: 0.15,
        misread: { share: 0.2, factor: draw.oneOf([0.5, 2]) },
        doubled: 0.15,
      };
      const feed = feeding(draw, pots[0]!, typing, draw.between(1.5, 2.5) * hour);
      const slipAt = draw.between(0.8, 1.4) * hour;
      const wrong = { kind: 'top-up', pan: 'p1', litres: 25, brix: 2, celsius: 5, id: 'slip' } as const;
      const slips: Deed[] = [
        { when: { at: slipAt }, acts: [{ act: 'note', mark: wrong }] },
        { when: { at: slipAt + 90_000 }, acts: [{ act: 'note', mark: { kind: 'withdraw', id: 'slip' } }] },
      ];
      return around(draw, pots, careful(draw, pots, [feed, ...slips]));
    },
  ),
  kind('thick-pours', 'several litres of cold sap into syrup that was nearly thick, marked or not', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), hours: draw.between(2, 3.5) })];
    const pours = [draw.between(35, 45), draw.between(46, 58)].map((value): Deed => ({
      when: { sight: 'brix-above', pan: 'p1', value, times: 1 },
      acts: [
        { act: 'pour', pan: 'p1', litres: draw.between(2, 6), brix: draw.between(1, 5), celsius: draw.between(2, 30) },
      ],
      forgotten: 0.5,
      late: [10, 180],
    }));
    return around(draw, pots, careful(draw, pots, pours));
  }),
  kind('splashes', 'half a litre now and then against the foam, never marked', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), hours: draw.between(2.5, 4) })];
    const splash: Deed = {
      when: { sight: 'brix-above', pan: 'p1', value: 20, times: 4, restSeconds: draw.between(1200, 3000) },
      acts: [{ act: 'pour', pan: 'p1', litres: draw.between(0.3, 0.7), brix: 2, celsius: 10 }],
      forgotten: 1,
    };
    return around(draw, pots, careful(draw, pots, [splash]));
  }),
  kind('nothing-told', 'no fill, no flame, no power; a density reading or a dip stick once, late', (draw) => {
    const pots = [
      batch(
        draw,
        'p1',
        { sap: draw.oneOf(['maple', 'birch']), leastWattsPerM2: 38_000 },
        { level: draw.between(0.6, 1) },
      ),
    ].map(({ toldPowerWatts: _, ...pot }) => pot);
    const look: Act = draw.oneOf<Act>([
      { act: 'measure-depth', pan: 'p1' },
      { act: 'measure-density', pan: 'p1', instrument: 'refractometer' },
    ]);
    const deeds: Deed[] = [
      ...firstLooks(draw, pots, { pressure: true, checks: draw.chance(0.5) }),
      { when: { sight: 'brix-above', pan: 'p1', value: draw.between(28, 45) }, acts: [look], late: [20, 120] },
      ...takenOff(pots),
    ];
    return around(draw, pots, deeds);
  }),
  kind(
    'part-drawn-off',
    'some syrup is drawn off at 45 to 58 °Bx and the rest goes on; the flame is turned down for it',
    (draw) => {
      const pots = [
        batch(draw, 'p1', {
          sap: draw.oneOf(['maple', 'birch']),
          endsDeepMm: draw.between(45, 70),
          leastWattsPerM2: 45_000,
        }),
      ];
      const draws: Deed = {
        when: { sight: 'brix-above', pan: 'p1', value: draw.between(42, 52) },
        acts: [
          { act: 'draw-off', pan: 'p1', litres: pots[0]!.litres * draw.between(0.03, 0.07) },
          { act: 'flame', pan: 'p1', level: draw.between(0.4, 0.6) },
        ],
        late: [20, 180],
      };
      return around(draw, pots, careful(draw, pots, [draws]));
    },
  ),
  kind('long-quiet', 'eight hours from 3 to 6 °Bx, with one pressure and one fill', (draw) => {
    const pots = [
      batch(draw, 'p1', {
        sap: draw.oneOf(['maple', 'birch']),
        fromBrix: draw.between(3, 6),
        hours: draw.between(6, 9),
        powerWatts: draw.between(9000, 14_000),
        endsDeepMm: draw.between(20, 30),
      }),
    ];
    const deeds = [
      ...firstLooks(draw, pots, { pressure: true, checks: false }),
      ...firstFills(draw, pots),
      { when: { at: 5 * minute }, acts: [{ act: 'check-water' as const, probe: 'A/1' }] },
      ...takenOff(pots),
    ];
    return around(draw, pots, deeds);
  }),
];
