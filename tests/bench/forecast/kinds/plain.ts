// Kinds in which people do everything well, and the sap, the probe or the weather is what they did not expect.
import { type Draw } from '../draw.ts';
import {
  around,
  batch,
  careful,
  firstFills,
  firstLooks,
  goodProbe,
  hour,
  kind,
  minute,
  ordinaryProbe,
  takenOff,
} from './kind.ts';

const birchShares = (draw: Draw, others: number) => {
  const sucrose = draw.between(0.02, 0.2);
  const glucose = (1 - sucrose) * draw.between(0.42, 0.54);
  return { sucrose, glucose, fructose: 1 - sucrose - glucose, others };
};

const mapleShares = (draw: Draw) => {
  const sucrose = draw.between(0.82, 0.95);
  const glucose = (1 - sucrose) * draw.between(0.45, 0.55);
  return { sucrose, glucose, fructose: 1 - sucrose - glucose, others: draw.between(0.003, 0.015) };
};

export const plainKinds = [
  kind('maple-pot', 'one pot of maple with a good probe, checked', (draw) => {
    const pots = [batch(draw, 'p1', {}, { probe: goodProbe(draw) })];
    return around(draw, pots, careful(draw, pots));
  }),
  kind('birch-pot', 'one pot of birch with a good probe, checked', (draw) => {
    const pots = [batch(draw, 'p1', { sap: 'birch' }, { probe: goodProbe(draw) })];
    return around(draw, pots, careful(draw, pots));
  }),
  kind('late-maple', 'maple of the late season: more invert sugar than the header says', (draw) => {
    const pots = [batch(draw, 'p1', {}, { trueShares: mapleShares(draw) })];
    return around(draw, pots, careful(draw, pots));
  }),
  kind('mineral-birch', 'birch of another mix with 2 to 6 % acids and minerals; nobody measures it', (draw) => {
    const pots = [batch(draw, 'p1', { sap: 'birch' }, { trueShares: birchShares(draw, draw.between(0.02, 0.06)) })];
    return around(draw, pots, careful(draw, pots));
  }),
  kind('measured-birch', 'the same, but with one or two density readings on the way', (draw) => {
    const pots = [batch(draw, 'p1', { sap: 'birch' }, { trueShares: birchShares(draw, draw.between(0.02, 0.06)) })];
    const instrument = draw.oneOf(['hydrometer', 'refractometer'] as const);
    const looks = [draw.between(35, 45), draw.between(50, 58)].slice(draw.whole(0, 1));
    const marks = looks.map((value) => ({
      when: { sight: 'brix-above' as const, pan: 'p1', value },
      acts: [{ act: 'measure-density' as const, pan: 'p1', instrument }],
      late: [30, 180] as [number, number],
    }));
    return around(draw, pots, careful(draw, pots, marks));
  }),
  kind('never-checked', 'offsets to 2 °C, no check, no pressure; the altitude told or not', (draw) => {
    const probe = ordinaryProbe(draw, { biasCelsius: draw.between(-2, 2) });
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']) }, { probe })];
    const told = draw.chance(0.7) ? {} : { altitudeM: null };
    return around(draw, pots, [...firstFills(draw, pots), ...takenOff(pots)], told);
  }),
  kind('passing-front', 'pressure runs by 1 to 3 hPa/h; marked now and then, or only at first', (draw) => {
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), hours: draw.between(3.5, 6) })];
    const told = draw.chance(0.5);
    const marks = [1.5, 3, 4.5, 6].map((hours) => ({
      when: { at: hours * hour },
      acts: [{ act: 'read-pressure' as const }],
    }));
    const drift = draw.between(1, 3) * draw.oneOf([-1, 1]);
    return around(draw, pots, careful(draw, pots, told ? marks : []), { driftHpaPerHour: drift });
  }),
  kind('slow-probe', 'two lags, coarse steps, much noise, a line every 4 to 10 s', (draw) => {
    const probe = ordinaryProbe(draw, {
      lagSeconds: draw.between(8, 20),
      secondLagSeconds: draw.between(5, 20),
      noiseCelsius: draw.between(0.15, 0.3),
      resolutionCelsius: draw.oneOf([0.25, 0.5]),
    });
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']) }, { probe })];
    return around(draw, pots, careful(draw, pots), { periodMs: draw.oneOf([4000, 5000, 10_000]) });
  }),
  kind('wild-readings', 'spikes to 60 °C in 1 to 2 % of the lines, two or one a second', (draw) => {
    const periodMs = draw.oneOf([500, 1000]);
    const spikesPerHour = (draw.between(0.01, 0.02) * hour) / periodMs;
    const probe = ordinaryProbe(draw, { spikesPerHour, noiseCelsius: draw.between(0.1, 0.3) });
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), hours: draw.between(2, 3.5) }, { probe })];
    return around(draw, pots, careful(draw, pots), { periodMs });
  }),
  kind('foam-and-superheat', 'the tip sees up to 0.3 °C too much that wanders, and foam from 45 °Bx on', (draw) => {
    const probe = ordinaryProbe(draw, {
      superheat: { mostCelsius: draw.between(0.2, 0.3), memorySeconds: draw.between(200, 1500) },
    });
    const foam = {
      fromBrix: draw.between(45, 60),
      offsetCelsius: draw.between(-0.4, 0.2),
      noiseCelsius: draw.between(0.1, 0.4),
      lastsSeconds: draw.between(20, 90),
      restsSeconds: draw.between(120, 600),
    };
    const pots = [batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']) }, { probe, foam })];
    return around(draw, pots, careful(draw, pots));
  }),
  kind('kitchen-finish', 'a few litres of thick concentrate on an electric plate, in a small pot', (draw) => {
    const pots = [
      batch(
        draw,
        'p1',
        {
          sap: draw.oneOf(['maple', 'birch']),
          powerWatts: draw.between(3000, 3500),
          efficiency: draw.between(0.5, 0.7),
          fromBrix: draw.between(25, 40),
          hours: draw.between(1.5, 3),
        },
        { heatKind: 'electric', fire: { flutter: { spread: 0.005, memorySeconds: 300 } } },
      ),
    ];
    return around(draw, pots, careful(draw, pots), { wind: { mean: 0.1, spread: 0.05, gustSeconds: 60 } });
  }),
  kind('finish-by-rise', 'the finish is told as degrees over water, in a header without vessel and power', (draw) => {
    const sap = draw.oneOf(['maple', 'birch'] as const);
    const pots = [
      batch(draw, 'p1', { sap }, { finish: { rise_c: sap === 'maple' ? 3.94 : 6 }, vesselTold: false }),
    ].map(({ toldPowerWatts: _, ...pot }) => pot);
    const deeds = [...firstLooks(draw, pots, { pressure: false, checks: true }), ...takenOff(pots)];
    return around(draw, pots, deeds);
  }),
  kind('bare-minimum', 'one probe, one pan, no mark at all but a check after a quarter of an hour', (draw) => {
    const pots = [
      batch(draw, 'p1', { sap: draw.oneOf(['maple', 'birch']), hours: draw.between(2.5, 4) }, { vesselTold: false }),
    ].map(({ toldPowerWatts: _, ...pot }) => pot);
    const check = { when: { at: 15 * minute }, acts: [{ act: 'check-water' as const, probe: 'A/1' }] };
    return around(draw, pots, [check, ...takenOff(pots)]);
  }),
];
