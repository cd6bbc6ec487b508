// The field in which a form asks for a temperature, in the degrees that were chosen.
import type { Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { celsiusOf, celsiusShown, unitSymbols } from '../words/amounts.ts';
import { numberOf } from './mark-form.ts';
import type { NumberField, Values } from './mark-form.ts';

/** What a thermometer over a fire can show, °C. */
const USUAL: [number, number] = [-20, 160];

/** What a thermometer in a pan may show, where one is told how to type it, °C. */
const EXAMPLE_C = 98.5;

interface TemperatureFieldOptions {
  optional?: boolean;
  /** What is taken, °C. */
  range?: readonly [number, number];
}

/** A field for a temperature in the unit shown; what lies outside of its range (°C) is refused by the form. */
export function temperatureField(
  settings: Settings,
  label: string,
  { optional = false, range = USUAL }: TemperatureFieldOptions = {},
): NumberField {
  const [least, greatest] = range.map((celsius) => Math.round(celsiusShown(celsius, settings)));
  const unit = unitSymbols(settings).temperature;
  const [cold, hot] = range;
  const example = inField(celsiusShown(Math.min(Math.max(EXAMPLE_C, cold), hot), settings), 1);
  return { name: 'temperature', label, unit, least: least ?? 0, greatest: greatest ?? 0, optional, example };
}

/** What was typed in it, °C. */
export function celsiusIn(values: Values, settings: Settings): number | undefined {
  const shown = numberOf(values, 'temperature');
  return shown === undefined ? undefined : celsiusOf(shown, settings);
}
