// The form for the air's pressure: three ways to come by one, each named by where a person finds the number, and the height of the place for who has none.
import { AIR_TYPED } from '../../core/quantities/units.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { Mark } from '../client/types.ts';
import { height, hpaOf, metresOf, metresShown, problemInPressure, unitSymbols } from '../words/amounts.ts';
import { given, numberOf } from './mark-form.ts';
import type { Field, MarkForm, MarkPlace, Values } from './mark-form.ts';
import { celsiusIn, temperatureField } from './temperature-field.ts';

/** No pressure at all: by the height alone the weather is left open. */
export const BY_HEIGHT = 'height';

const PLACES: readonly { value: Place; label: MessageKey }[] = [
  { value: 'station', label: 'marks.from_barometer' },
  { value: 'altimeter', label: 'marks.from_airfield' },
  { value: 'sea-level', label: 'marks.from_weather_page' },
  { value: BY_HEIGHT, label: 'marks.from_height' },
];
type Place = 'station' | 'altimeter' | 'sea-level' | typeof BY_HEIGHT;

const placeIn = (values: Values): Place => (values['at'] as Place | undefined) ?? 'station';

/** The figure itself tells the unit, whichever was chosen. */
const UNITS = { hpa: 'marks.hpa_or', kpa: 'marks.kpa_or', inhg: 'marks.inhg_or' } as const;

const OUTDOORS_C = [-60, 55] as const;
/** From dry land below the sea to where nobody boils any more, m. */
const HEIGHTS_M = [-400, 5000] as const;

/** Brought down to the sea, a pressure tells nothing of a place whose height is not known. */
function needsHeight({ header }: MarkPlace, values: Values): boolean {
  const place = placeIn(values);
  return place === BY_HEIGHT || (place !== 'station' && header.site?.altitude_m === undefined);
}

function fields(place: MarkPlace, values: Values): Field[] {
  const { settings } = place;
  const unit = say(UNITS[settings.pressure]);
  const [least, greatest] = HEIGHTS_M.map((metres) => Math.round(metresShown(metres, settings)));
  const heightField = { name: 'height', label: say('marks.place_height'), unit: unitSymbols(settings).height };
  const told = place.header.site?.altitude_m;
  const start = told === undefined ? {} : { start: inField(metresShown(told, settings), 0) };
  return [
    {
      name: 'at',
      label: say('marks.i_have_it_from'),
      options: PLACES.map(({ value, label }) => ({ value, label: say(label) })),
    },
    ...(placeIn(values) === BY_HEIGHT
      ? []
      : [
          {
            name: 'value',
            label: say('marks.it_says'),
            unit,
            least: AIR_TYPED.inhg.least,
            greatest: AIR_TYPED.hpa.greatest,
            wrong: (typed: string, value: number) => problemInPressure(say('marks.it_says'), typed, value),
          },
        ]),
    ...(placeIn(values) === 'sea-level'
      ? [temperatureField(settings, say('marks.outdoors'), { optional: true, range: OUTDOORS_C })]
      : []),
    ...(needsHeight(place, values) ? [{ ...heightField, ...start, least: least ?? 0, greatest: greatest ?? 0 }] : []),
  ];
}

export const pressure: MarkForm = {
  kind: 'pressure',
  ofNoPan: true,
  key: 'B',
  word: 'marks.pressure',
  question: 'marks.pressure.question',
  quicks: () => [],
  fields: (place, values = {}) => fields(place, values),
  build(values, { settings }) {
    const at = placeIn(values);
    if (at === BY_HEIGHT) return null;
    return given({
      kind: 'pressure',
      hpa: hpaOf(numberOf(values, 'value') ?? 0, settings),
      at,
      outdoor_celsius: at === 'sea-level' ? celsiusIn(values, settings) : undefined,
    } satisfies Mark);
  },
  changed: (values, { settings }) =>
    say('marks.height_noted', { height: height(metresOf(numberOf(values, 'height') ?? 0, settings), settings) }),
  patch(values, place) {
    const shown = needsHeight(place, values) ? numberOf(values, 'height') : undefined;
    return shown === undefined ? null : { site: { altitude_m: metresOf(shown, place.settings) } };
  },
};
