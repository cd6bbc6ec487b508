// The form for a density reading: the instrument, its scale, and what is printed on it.
import type { Mark, Settings } from '../client/types.ts';
import { given, numberOf } from './mark-form.ts';
import type { Field, MarkForm, Values } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

type Scale = Settings['strength'];

const INSTRUMENTS = [
  { value: 'hydrometer', label: 'Hydrometer (a float)' },
  { value: 'refractometer', label: 'Refractometer (a glass)' },
];
const SCALES: { value: Scale; label: string; short: string }[] = [
  { value: 'brix', label: '°Brix', short: '°Bx' },
  { value: 'baume', label: '°Baumé', short: '°Bé' },
  { value: 'sg', label: 'specific gravity', short: '' },
];
/** The two temperatures that hydrometers are made for, °C. */
const REFERENCES = [
  { value: '15.56', label: '60 °F (15.6 °C)' },
  { value: '20', label: '20 °C (68 °F)' },
];
const COMPENSATES = [
  { value: 'no', label: 'no' },
  { value: 'yes', label: 'yes (ATC)' },
];

/** Of syrup near its finish, in steps that the stems have. */
const LIKELY: Record<Scale, number[]> = {
  brix: [60, 63, 65, 66, 67, 68],
  baume: [32, 33, 34, 35, 36, 37],
  sg: [1.29, 1.3, 1.31, 1.32, 1.33, 1.34],
};
const SHOWS: Record<Scale, { least: number; greatest: number }> = {
  brix: { least: 0, greatest: 85 },
  baume: { least: 0, greatest: 46 },
  sg: { least: 1, greatest: 1.46 },
};
/** What the two instruments can be read at, °C. */
const HYDROMETER_C = [0, 105] as const;
const REFRACTOMETER_C = [10, 30] as const;

const scaleNamed = (scale: Scale): (typeof SCALES)[number] => SCALES.find(({ value }) => value === scale) ?? SCALES[0]!;

/** The person's own scale first. */
const scalesFor = ({ strength }: Settings): typeof SCALES => [
  scaleNamed(strength),
  ...SCALES.filter(({ value }) => value !== strength),
];

const refracts = (values: Values): boolean => values['instrument'] === 'refractometer';

/** A refractometer has °Brix alone. */
function scaleIn(values: Values, settings: Settings): Scale {
  return refracts(values) ? 'brix' : ((values['scale'] as Scale | undefined) ?? settings.strength);
}

function fields(settings: Settings, values: Values): Field[] {
  const scale = scaleIn(values, settings);
  const own = refracts(values);
  const sample = { optional: true, range: own ? REFRACTOMETER_C : HYDROMETER_C };
  const shows = { name: 'value', label: own ? 'It shows, in °Brix' : 'It shows', unit: scaleNamed(scale).short };
  return [
    { name: 'instrument', label: 'Or choose and type', options: INSTRUMENTS },
    ...(own ? [] : [{ name: 'scale', label: 'Its scale', options: scalesFor(settings) }]),
    { ...shows, ...SHOWS[scale] },
    temperatureField(settings, 'The sample is this warm', sample),
    own
      ? { name: 'compensated', label: 'It makes up for warmth', options: COMPENSATES }
      : { name: 'reference', label: 'Made for, as printed on it', options: REFERENCES },
  ];
}

export const density: MarkForm = {
  kind: 'density',
  key: 'Y',
  word: 'Density',
  question: 'What does the hydrometer show? The quick ones are for a cool sample; type a hot one with its warmth.',
  quicks: ({ pan, settings: { strength } }) =>
    LIKELY[strength].map((shown) => ({
      label: strength === 'sg' ? shown.toFixed(2) : `${shown} ${scaleNamed(strength).short}`,
      mark: { kind: 'density', pan, [strength]: shown, instrument: 'hydrometer' },
    })),
  fields: ({ settings }, values = {}) => fields(settings, values),
  build(values, { pan, settings }) {
    const own = refracts(values);
    return given({
      kind: 'density',
      pan,
      [scaleIn(values, settings)]: numberOf(values, 'value'),
      instrument: own ? 'refractometer' : 'hydrometer',
      celsius: celsiusIn(values, settings),
      reference_celsius: own ? 20 : Number(values['reference'] ?? REFERENCES[0]?.value),
      compensated: own ? values['compensated'] === 'yes' : undefined,
    } satisfies Mark);
  },
};
