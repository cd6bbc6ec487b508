// The forms for what a person measured: density, depth, a thermometer, boiling water, the air's pressure.
import { hpaFromInHg } from '../../core/quantities/units.ts';
import { celsiusOf, celsiusShown, mmOf, mmShown, temperature, unitSymbols } from '../words/amounts.ts';
import { probeName } from '../words/pan-words.ts';
import type { Mark, ProbeView, Settings } from '../client/types.ts';
import { given, numberOf } from './mark-form.ts';
import type { MarkForm, MarkPlace, NumberField } from './mark-form.ts';

function temperatureField(settings: Settings, label: string, optional = false): NumberField {
  const [least, greatest] = settings.temperature === 'C' ? [-20, 160] : [-4, 320];
  return { name: 'temperature', label, unit: unitSymbols(settings).temperature, least, greatest, optional };
}

function outdoorField(settings: Settings): NumberField {
  const [least, greatest] = settings.temperature === 'C' ? [-60, 55] : [-76, 131];
  return { ...temperatureField(settings, 'Outdoors it is', true), least, greatest };
}

function celsiusIn(values: Record<string, string>, settings: Settings): number | undefined {
  const shown = numberOf(values, 'temperature');
  return shown === undefined ? undefined : celsiusOf(shown, settings);
}

const SCALES = [
  { value: 'hydrometer-brix', label: 'Hydrometer, °Brix' },
  { value: 'hydrometer-baume', label: 'Hydrometer, °Baumé' },
  { value: 'hydrometer-sg', label: 'Hydrometer, specific gravity' },
  { value: 'refractometer-brix', label: 'Refractometer, °Brix' },
];

/** Specific gravity is near 1, Baumé below 45: the value alone cannot be mistaken across these ranges. */
function densityOf(scale: string, value: number | undefined): { brix?: number; baume?: number; sg?: number } {
  if (value === undefined) return {};
  if (scale.endsWith('baume')) return { baume: value };
  return scale.endsWith('sg') ? { sg: value } : { brix: value };
}

export const density: MarkForm = {
  kind: 'density',
  key: 'Y',
  word: 'Density',
  question: 'What does the hydrometer show, in °Brix?',
  quicks: ({ pan }) =>
    [60, 63, 65, 66, 67, 68].map((brix) => ({
      label: `${brix} °Bx`,
      mark: { kind: 'density', pan, brix, instrument: 'hydrometer' },
    })),
  fields: ({ settings }) => [
    { name: 'scale', label: 'Or choose and type', options: SCALES },
    { name: 'value', label: 'It shows', unit: '', least: 0, greatest: 100 },
    temperatureField(settings, 'Sample is this warm', true),
  ],
  build(values, { pan, settings }) {
    const scale = values['scale'] ?? 'hydrometer-brix';
    return given({
      kind: 'density',
      pan,
      ...densityOf(scale, numberOf(values, 'value')),
      instrument: scale.startsWith('refractometer') ? 'refractometer' : 'hydrometer',
      celsius: celsiusIn(values, settings),
    } satisfies Mark);
  },
};

const DEPTHS_MM = [15, 20, 30, 40, 50, 75];
const DEPTHS_INCH = [0.5, 0.75, 1, 1.5, 2, 3];

export const depthMark: MarkForm = {
  kind: 'depth',
  key: 'E',
  word: 'Depth',
  question: 'How deep is it in the pan?',
  quicks: ({ pan, settings }) =>
    (settings.length === 'mm' ? DEPTHS_MM : DEPTHS_INCH).map((shown) => ({
      label: `${shown} ${unitSymbols(settings).length}`,
      mark: { kind: 'depth', pan, mm: mmOf(shown, settings) },
    })),
  fields: ({ settings }) => [
    {
      name: 'depth',
      label: 'Or type it',
      unit: unitSymbols(settings).length,
      least: 0,
      greatest: Math.round(mmShown(1500, settings)),
    },
  ],
  build: (values, { pan, settings }) => ({ kind: 'depth', pan, mm: mmOf(numberOf(values, 'depth') ?? 0, settings) }),
};

/** Whole degrees around where the pan last stood, or from the water point up. */
function likelyTemperatures({ now, pan, settings }: MarkPlace): number[] {
  const reading = now.readings.find((each) => each.pan === pan);
  const middle = Math.round(celsiusShown(reading?.temperature_c ?? (reading?.water_c ?? 99) + 2, settings));
  return [-2, -1, 0, 1, 2, 3].map((step) => middle + step);
}

export const handReading: MarkForm = {
  kind: 'reading',
  key: 'R',
  word: 'Read by hand',
  question: 'What does the thermometer show?',
  quicks: (place) =>
    likelyTemperatures(place).map((shown) => ({
      label: `${shown} °${place.settings.temperature}`,
      mark: { kind: 'reading', pan: place.pan, celsius: celsiusOf(shown, place.settings) },
    })),
  fields: ({ settings }) => [temperatureField(settings, 'Or type it')],
  build: (values, { pan, settings }) => ({ kind: 'reading', pan, celsius: celsiusIn(values, settings) ?? 0 }),
};

/** This pan's probes first: that is the one that was most likely put into the boiling water. */
function probesFor({ now, header, pan }: MarkPlace): ProbeView[] {
  const known = new Set((header.probes ?? []).map((probe) => probe.id));
  const probes = now.probes.filter((probe) => known.has(probe.id));
  return probes.sort((a, b) => Number(b.pan === pan) - Number(a.pan === pan));
}

export const waterCheck: MarkForm = {
  kind: 'water-check',
  key: 'C',
  word: 'Check in boiling water',
  question: 'Which probe is in plain boiling water, and what does it show?',
  quicks: (place) =>
    probesFor(place).flatMap((probe) => {
      const { celsius } = probe;
      if (celsius === null) return [];
      const label = `${probeName(place.header, probe.id)}: ${temperature(celsius, place.settings)}`;
      return [{ label, mark: { kind: 'water-check' as const, probe: probe.id, celsius } }];
    }),
  fields: (place) => [
    {
      name: 'probe',
      label: 'Or another figure, of',
      options: probesFor(place).map((probe) => ({ value: probe.id, label: probeName(place.header, probe.id) })),
    },
    temperatureField(place.settings, 'It showed'),
  ],
  build: (values, place) => ({
    kind: 'water-check',
    probe: values['probe'] ?? probesFor(place)[0]?.id ?? '',
    celsius: celsiusIn(values, place.settings) ?? 0,
  }),
};

const PRESSURE_PLACES = [
  { value: 'station', label: 'A barometer right here' },
  { value: 'altimeter', label: "An airfield's setting (QNH)" },
  { value: 'sea-level', label: "A weather page's sea-level figure" },
];

/** A barometer shows at most 36 inches of mercury and at least 300 hPa, so the figure itself tells the unit. */
const MOST_INHG = 36;

function hpaOf(shown: number): number {
  return shown <= MOST_INHG ? hpaFromInHg(shown) : shown;
}

export const pressure: MarkForm = {
  kind: 'pressure',
  key: 'B',
  word: 'Air pressure',
  question: 'What is the air pressure, and where did you find it?',
  quicks: () => [],
  fields: ({ settings }) => [
    { name: 'at', label: 'Found on', options: PRESSURE_PLACES },
    { name: 'value', label: 'Pressure', unit: 'hPa or inches of mercury', least: 9, greatest: 1200 },
    outdoorField(settings),
  ],
  build: (values, { settings }) =>
    given({
      kind: 'pressure',
      hpa: hpaOf(numberOf(values, 'value') ?? 0),
      at: (values['at'] ?? 'station') as 'station' | 'altimeter' | 'sea-level',
      outdoor_celsius: celsiusIn(values, settings),
    } satisfies Mark),
};
