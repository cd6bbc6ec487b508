// The forms for what a person measured at the pans: a depth, a thermometer, a probe in boiling water.
import { localDigits } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { celsiusOf, celsiusShown, mmOf, mmShown, temperature, unitSymbols } from '../words/amounts.ts';
import { probeName } from '../words/pan-words.ts';
import type { ProbeView } from '../client/types.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';
import { numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace } from './mark-form.ts';

const DEPTHS_MM = [15, 20, 30, 40, 50, 75];
const DEPTHS_INCH = [0.5, 0.75, 1, 1.5, 2, 3];

export const depthMark: MarkForm = {
  kind: 'depth',
  key: 'E',
  word: 'marks.depth',
  question: 'marks.depth.question',
  quicks: ({ pan, settings }) =>
    (settings.length === 'mm' ? DEPTHS_MM : DEPTHS_INCH).map((shown) => ({
      label: localDigits(`${shown} ${unitSymbols(settings).length}`),
      mark: { kind: 'depth', pan, mm: mmOf(shown, settings) },
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

/** In even steps from the water point to the finish: there a reading tells most. */
function likelyTemperatures({ now, pan, settings }: MarkPlace): number[] {
  const step = settings.temperature === 'F' ? 2 : 1;
  const water = now.readings.find((each) => each.pan === pan)?.water_c ?? WATER_C;
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
