// The forms for what a person measured at the pans: a depth, a thermometer, a probe in boiling water.
import { rimMm } from '../../core/quantities/rim.ts';
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { celsiusOf, celsiusShown, mmOf, mmShown, temperature, unitSymbols } from '../words/amounts.ts';
import { panNamed, probeName } from '../words/pan-words.ts';
import type { Now, ProbeView, Reading } from '../client/types.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';
import { numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace } from './mark-form.ts';

const DEPTHS_MM = [10, 15, 20, 30, 40, 50, 75, 100, 150, 200, 300];
const DEPTHS_INCH = [0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 12];
const MOST_DEPTHS = 6;
/** So deep most pans are filled at the most, mm (see `core/plan/fills.ts`); an inch scale has 4 for it. */
const FULL_MM = 102;

/** Depths that this pan can have, about the one that it is believed to have where that is known. */
function likelyDepths({ now, header, pan, settings }: MarkPlace): number[] {
  const vessel = panNamed(header, pan)?.vessel;
  const rim = vessel === undefined ? null : rimMm(vessel);
  const held = (settings.length === 'mm' ? DEPTHS_MM : DEPTHS_INCH).filter(
    (shown) => mmOf(shown, settings) <= (rim ?? Infinity),
  );
  const believed = now.readings.find((each) => each.pan === pan)?.depth_mm ?? null;
  if (believed === null) return held.filter((shown) => mmOf(shown, settings) <= FULL_MM).slice(-MOST_DEPTHS);
  const over = held.findIndex((shown) => mmOf(shown, settings) >= believed);
  const middle = over < 0 ? held.length : over;
  const from = Math.max(0, Math.min(middle - MOST_DEPTHS / 2, held.length - MOST_DEPTHS));
  return held.slice(from, from + MOST_DEPTHS);
}

export const depthMark: MarkForm = {
  kind: 'depth',
  key: 'E',
  word: 'marks.depth',
  question: 'marks.depth.question',
  quicks: (place) =>
    likelyDepths(place).map((shown) => ({
      label: localDigits(`${shown} ${unitSymbols(place.settings).length}`),
      mark: { kind: 'depth', pan: place.pan, mm: mmOf(shown, place.settings) },
    })),
  fields: ({ settings }) => [
    {
      name: 'depth',
      label: say('marks.depth'),
      unit: unitSymbols(settings).length,
      least: 0,
      greatest: Math.round(mmShown(1500, settings)),
    },
  ],
  build: (values, { pan, settings }) => ({ kind: 'depth', pan, mm: mmOf(numberOf(values, 'depth') ?? 0, settings) }),
};

/** Where water boils, and how far over it a pan is done, where nobody knows better, °C. */
const WATER_C = 99;
const DONE_OVER_C = 4;

/** Under the water point by more than this nobody waits for a boil, °C; what was read longer ago may boil since, ms (judgement). */
const COLD_C = 5;
const STILL_COLD_MS = 20 * 60_000;

/** It is far from a boil by what it showed of late; sap of which nobody read anything yet was just poured in. */
function isCold(
  { lastHeats, t }: Now,
  { pan, temperature_c: celsius, probe, litres, stage }: Reading,
  waterC: number,
): boolean {
  const last = lastHeats.find((each) => each.pan === pan);
  if (celsius === null && last === undefined) return probe === null && litres !== null && stage === 'unknown';
  if (celsius === null && t - last!.at > STILL_COLD_MS) return false;
  return (celsius ?? last!.celsius) < waterC - COLD_C;
}

/** In even steps from the water point to the finish: there a reading tells most. */
function likelyTemperatures({ now, pan, settings }: MarkPlace): number[] {
  const step = settings.temperature === 'F' ? 2 : 1;
  const reading = now.readings.find((each) => each.pan === pan);
  const water = reading?.water_c ?? WATER_C;
  if (reading !== undefined && isCold(now, reading, water)) return [];
  const done = now.limits.find((each) => each.pan === pan)?.finish_c ?? water + DONE_OVER_C;
  const first = Math.floor(celsiusShown(water, settings) / step);
  const last = Math.ceil(celsiusShown(done, settings) / step);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}

export const handReading: MarkForm = {
  kind: 'reading',
  key: 'R',
  word: 'marks.reading',
  question: 'marks.reading.question',
  quicks: (place) =>
    likelyTemperatures(place).map((shown) => ({
      label: `${shown} °${place.settings.temperature}`,
      mark: { kind: 'reading', pan: place.pan, celsius: celsiusOf(shown, place.settings) },
    })),
  fields: ({ settings }) => [temperatureField(settings, say('marks.thermometer'))],
  build: (values, { pan, settings }) => ({ kind: 'reading', pan, celsius: celsiusIn(values, settings) ?? 0 }),
};

/** This pan's probes first: that is the one that was most likely put into the boiling water. */
function probesFor({ now, header, pan }: MarkPlace): ProbeView[] {
  const known = new Set((header.probes ?? []).map((probe) => probe.id));
  const probes = now.probes.filter((probe) => known.has(probe.id));
  return probes.sort((a, b) => Number(b.pan === pan) - Number(a.pan === pan));
}

/** What stands for the thermometer in the hand in the choice of a thermometer: no probe is called so. */
export const IN_THE_HAND = '';

/** The thermometers that can be held into boiling water; the one in the hand first in a pan without a probe. */
function thermometersFor(place: MarkPlace): { value: string; label: string }[] {
  const { header, now, pan } = place;
  const probes = probesFor(place).map(({ id }) => ({ value: id, label: probeName(header, id) }));
  const hand = { value: IN_THE_HAND, label: say('mark.hand_thermometer') };
  return now.probes.some((probe) => probe.pan === pan) ? [...probes, hand] : [hand, ...probes];
}

export const waterCheck: MarkForm = {
  kind: 'water-check',
  key: 'C',
  word: 'marks.water_check',
  question: 'marks.water_check.question',
  questionTyped: 'marks.water_check.question_hand',
  quicks: (place) =>
    probesFor(place).flatMap((probe) => {
      const { celsius } = probe;
      if (celsius === null) return [];
      const shown = temperature(celsius, place.settings);
      const right = temperature(celsius + (probe.correctionC ?? 0), place.settings);
      // The check is of what the probe says by itself, the pan shows what that was put right to.
      const label = say(right === shown ? 'marks.of_probe' : 'marks.of_probe_bare', {
        probe: probeName(place.header, probe.id),
        shown,
        ...(right === shown ? {} : { right }),
      });
      return [{ label, mark: { kind: 'water-check' as const, probe: probe.id, celsius } }];
    }),
  fields: (place) => {
    const options = thermometersFor(place);
    const shown = temperatureField(place.settings, say('marks.it_showed'));
    return options.length === 1 ? [shown] : [{ name: 'probe', label: say('marks.thermometer'), options }, shown];
  },
  build: (values, place) => {
    const probe = values['probe'] ?? IN_THE_HAND;
    const celsius = celsiusIn(values, place.settings) ?? 0;
    return probe === IN_THE_HAND ? { kind: 'water-check', celsius } : { kind: 'water-check', probe, celsius };
  },
};
