// The form for the air's pressure: three ways to come by one, each named by where a person finds the number.
import { hpaFromInHg } from '../../core/quantities/units.ts';
import type { Mark } from '../client/types.ts';
import { metresOf, metresShown, unitSymbols } from '../words/amounts.ts';
import { given, numberOf } from './mark-form.ts';
import type { Field, MarkForm, MarkPlace, Values } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

const PLACES = [
  { value: 'station', label: 'a barometer here at the pans' },
  { value: 'altimeter', label: "an airfield's setting (QNH), as read on the radio or an airfield report" },
  { value: 'sea-level', label: "a weather page's or phone's sea-level figure" },
];
type Place = 'station' | 'altimeter' | 'sea-level';

const placeIn = (values: Values): Place => (values['at'] as Place | undefined) ?? 'station';

/** A barometer shows at most 36 inches of mercury and at least 300 hPa, so the figure itself tells the unit. */
const MOST_INHG = 36;
const LEAST_INHG = 9;
const MOST_HPA = 1200;

const hpaOf = (shown: number): number => (shown <= MOST_INHG ? hpaFromInHg(shown) : shown);

const OUTDOORS_C = [-60, 55] as const;
/** From dry land below the sea to where nobody boils any more, m. */
const HEIGHTS_M = [-400, 5000] as const;

/** Brought down to the sea, a pressure tells nothing of a place whose height is not known. */
function needsHeight({ header }: MarkPlace, values: Values): boolean {
  return placeIn(values) !== 'station' && header.site?.altitude_m === undefined;
}

function fields(place: MarkPlace, values: Values): Field[] {
  const { settings } = place;
  const unit = settings.pressure === 'hpa' ? 'hPa (or inHg)' : 'inHg (or hPa)';
  const [least, greatest] = HEIGHTS_M.map((metres) => Math.round(metresShown(metres, settings)));
  const height = { name: 'height', label: 'Height of this place over the sea', unit: unitSymbols(settings).height };
  return [
    { name: 'at', label: 'I have it from', options: PLACES },
    { name: 'value', label: 'It says', unit, least: LEAST_INHG, greatest: MOST_HPA },
    ...(placeIn(values) === 'sea-level'
      ? [temperatureField(settings, 'Outdoors it is', { optional: true, range: OUTDOORS_C })]
      : []),
    ...(needsHeight(place, values) ? [{ ...height, least: least ?? 0, greatest: greatest ?? 0 }] : []),
  ];
}

export const pressure: MarkForm = {
  kind: 'pressure',
  key: 'B',
  word: 'Air pressure',
  question: 'What is the air pressure, and where did you find the number?',
  quicks: () => [],
  fields: (place, values = {}) => fields(place, values),
  build: (values, { settings }) =>
    given({
      kind: 'pressure',
      hpa: hpaOf(numberOf(values, 'value') ?? 0),
      at: placeIn(values),
      outdoor_celsius: placeIn(values) === 'sea-level' ? celsiusIn(values, settings) : undefined,
    } satisfies Mark),
  patch(values, place) {
    const shown = needsHeight(place, values) ? numberOf(values, 'height') : undefined;
    return shown === undefined ? null : { site: { altitude_m: metresOf(shown, place.settings) } };
  },
};
