// The field in which a form asks for a temperature, in the degrees that were chosen.
import type { Settings } from '../client/types.ts';
import { celsiusOf, celsiusShown, unitSymbols } from '../words/amounts.ts';
import { numberOf } from './mark-form.ts';
import type { NumberField, Values } from './mark-form.ts';

/** What a thermometer over a fire can show, °C. */
const USUAL: [number, number] = [-20, 160];

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
  return { name: 'temperature', label, unit, least: least ?? 0, greatest: greatest ?? 0, optional };
}

/** What was typed in it, °C. */
export function celsiusIn(values: Values, settings: Settings): number | undefined {
  const shown = numberOf(values, 'temperature');
  return shown === undefined ? undefined : celsiusOf(shown, settings);
}
