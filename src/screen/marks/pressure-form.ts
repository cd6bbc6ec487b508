// The form for the air's pressure: three ways to come by one, each named by where a person finds the number.
import { AIR_TYPED } from '../../core/quantities/units.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Mark } from '../client/types.ts';
import { hpaOf, metresOf, metresShown, problemInPressure, unitSymbols } from '../words/amounts.ts';
import { given, numberOf } from './mark-form.ts';
import type { Field, MarkForm, MarkPlace, Values } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

const PLACES: readonly { value: Place; label: MessageKey }[] = [
  { value: 'station', label: 'marks.from_barometer' },
  { value: 'altimeter', label: 'marks.from_airfield' },
  { value: 'sea-level', label: 'marks.from_weather_page' },
];
type Place = 'station' | 'altimeter' | 'sea-level';

const placeIn = (values: Values): Place => (values['at'] as Place | undefined) ?? 'station';

/** The figure itself tells the unit, whichever was chosen. */
const UNITS = { hpa: 'marks.hpa_or', kpa: 'marks.kpa_or', inhg: 'marks.inhg_or' } as const;

const OUTDOORS_C = [-60, 55] as const;
/** From dry land below the sea to where nobody boils any more, m. */
const HEIGHTS_M = [-400, 5000] as const;

/** Brought down to the sea, a pressure tells nothing of a place whose height is not known. */
function needsHeight({ header }: MarkPlace, values: Values): boolean {
  return placeIn(values) !== 'station' && header.site?.altitude_m === undefined;
}

function fields(place: MarkPlace, values: Values): Field[] {
  const { settings } = place;
  const unit = say(UNITS[settings.pressure]);
  const [least, greatest] = HEIGHTS_M.map((metres) => Math.round(metresShown(metres, settings)));
  const height = { name: 'height', label: say('marks.place_height'), unit: unitSymbols(settings).height };
  return [
    {
      name: 'at',
      label: say('marks.i_have_it_from'),
      options: PLACES.map(({ value, label }) => ({ value, label: say(label) })),
    },
    {
      name: 'value',
      label: say('marks.it_says'),
      unit,
      least: AIR_TYPED.inhg.least,
      greatest: AIR_TYPED.hpa.greatest,
      wrong: (typed, value) => problemInPressure(say('marks.it_says'), typed, value),
    },
    ...(placeIn(values) === 'sea-level'
      ? [temperatureField(settings, say('marks.outdoors'), { optional: true, range: OUTDOORS_C })]
      : []),
    ...(needsHeight(place, values) ? [{ ...height, least: least ?? 0, greatest: greatest ?? 0 }] : []),
  ];
}

export const pressure: MarkForm = {
  kind: 'pressure',
  key: 'B',
  word: 'marks.pressure',
  question: 'marks.pressure.question',
  quicks: () => [],
  fields: (place, values = {}) => fields(place, values),
  build: (values, { settings }) =>
    given({
      kind: 'pressure',
      hpa: hpaOf(numberOf(values, 'value') ?? 0, settings),
      at: placeIn(values),
      outdoor_celsius: placeIn(values) === 'sea-level' ? celsiusIn(values, settings) : undefined,
    } satisfies Mark),
  patch(values, place) {
    const shown = needsHeight(place, values) ? numberOf(values, 'height') : undefined;
    return shown === undefined ? null : { site: { altitude_m: metresOf(shown, place.settings) } };
  },
};
