// The form for a density reading: the instrument, its scale, and what is printed on it.
import type { Mark, Now, Settings } from '../client/types.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { number } from '../words/amounts.ts';
import { given, numberOf } from './mark-form.ts';
import type { Field, MarkForm, Values } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

type Scale = Settings['strength'];
type Choice = { value: string; label: MessageKey };

const INSTRUMENTS: readonly Choice[] = [
  { value: 'hydrometer', label: 'marks.hydrometer' },
  { value: 'refractometer', label: 'marks.refractometer' },
];
const SCALES: (Choice & { value: Scale; short: string })[] = [
  { value: 'brix', label: 'units.brix', short: '°Bx' },
  { value: 'baume', label: 'units.baume', short: '°Bé' },
  { value: 'sg', label: 'units.sg', short: '' },
];
/** The two temperatures that hydrometers are made for, °C. */
const REFERENCES: readonly Choice[] = [
  { value: '15.56', label: 'marks.made_for_60f' },
  { value: '20', label: 'marks.made_for_20c' },
];
const COMPENSATES: readonly Choice[] = [
  { value: 'no', label: 'marks.no' },
  { value: 'yes', label: 'marks.yes_atc' },
];

/** Of syrup near its finish, in steps that the stems have. */
const LIKELY: Record<Scale, number[]> = {
  brix: [60, 63, 65, 66, 67, 68],
  baume: [32, 33, 34, 35, 36, 37],
  sg: [1.29, 1.3, 1.31, 1.32, 1.33, 1.34],
};
/** Below this nobody takes a pan for syrup, °Bx. */
const NEAR_SYRUP_BRIX = 50;
const SHOWS: Record<Scale, { least: number; greatest: number }> = {
  // Water holds no sugar: 0 would be noted and tell nothing.
  brix: { least: 0.1, greatest: 85 },
  baume: { least: 0.1, greatest: 46 },
  sg: { least: 1.0005, greatest: 1.46 },
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

const said = (choices: readonly Choice[]): { value: string; label: string }[] =>
  choices.map(({ value, label }) => ({ value, label: say(label) }));

const refracts = (values: Values): boolean => values['instrument'] === 'refractometer';

/** A refractometer has °Brix alone. */
function scaleIn(values: Values, settings: Settings): Scale {
  return refracts(values) ? 'brix' : ((values['scale'] as Scale | undefined) ?? settings.strength);
}

function fields(settings: Settings, values: Values): Field[] {
  const scale = scaleIn(values, settings);
  const own = refracts(values);
  const sample = { optional: true, range: own ? REFRACTOMETER_C : HYDROMETER_C };
  const shows = {
    name: 'value',
    label: say(own ? 'marks.it_shows_brix' : 'marks.it_shows'),
    unit: scaleNamed(scale).short,
  };
  return [
    { name: 'instrument', label: say('marks.instrument'), options: said(INSTRUMENTS) },
    ...(own ? [] : [{ name: 'scale', label: say('marks.its_scale'), options: said(scalesFor(settings)) }]),
    { ...shows, ...SHOWS[scale] },
    temperatureField(settings, say('marks.sample_warm'), sample),
    own
      ? { name: 'compensated', label: say('marks.compensates'), options: said(COMPENSATES) }
      : { name: 'reference', label: say('marks.made_for'), options: said(REFERENCES) },
  ];
}

/** What is offered to press is of syrup; of a thin pan nothing is, for what is believed of it must not lead the eye. */
function isThin(now: Now, pan: string): boolean {
  const brix = now.readings.find((reading) => reading.pan === pan)?.brix ?? null;
  return brix !== null && brix < NEAR_SYRUP_BRIX;
}

export const density: MarkForm = {
  kind: 'density',
  key: 'Y',
  word: 'marks.density',
  question: 'marks.density.question',
  questionTyped: 'marks.density.question_typed',
  quicks: ({ now, pan, settings: { strength } }) =>
    isThin(now, pan)
      ? []
      : LIKELY[strength].map((shown) => ({
          label: strength === 'sg' ? number(shown, 2) : `${shown} ${scaleNamed(strength).short}`,
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
