// What a number in a line is in °C by the sensor that the probe is set up with, or why it is none: the one place of both.
import { platinumCelsius } from '../physics/platinum.ts';
import { thermistorCelsius } from '../physics/thermistor.ts';
import { tipCelsius } from '../physics/thermocouple.ts';
import { celsiusFromFahrenheit, celsiusFromKelvin } from '../quantities/units.ts';
import type { Sensor } from './entries.ts';
import type { LineReading, LineUnit } from './line-reading.ts';

/** What a probe over a fire can meet, °C; beyond it the number is a fault of the wire, not a temperature. */
export const plausibleCelsius = { lowest: -60, highest: 450 };

/** Why the numbers of a probe do not fit its sensor. */
export type Misfit =
  | 'has-unit'
  | 'off-scale'
  | 'reversed'
  | 'shorted'
  | 'cold-junction-broken'
  | 'cold-junction-silent';

/**
 * 'implausible' is a number on the wire that no probe can have meant: as if the line had not named the channel.
 * 'awaited' says that a cold junction may still come.
 */
export type NoTemperature = Misfit | 'implausible' | 'awaited';

const isPlausible = (celsius: number): boolean =>
  celsius >= plausibleCelsius.lowest && celsius <= plausibleCelsius.highest;

/** °C of a number in each unit that a line may name. */
export const inCelsius: Record<LineUnit, (value: number) => number> = {
  C: (value) => value,
  F: celsiusFromFahrenheit,
  K: celsiusFromKelvin,
};

/**
 * °C of a number that is a temperature, or 'implausible'; null when the device says that the probe is broken.
 * Minus zero is none: a device prints it for a sum that went wrong. (As millivolts it is a tip as warm as its plug.)
 * @param unit what it is in where the line does not say
 */
export function temperatureCelsius(reading: LineReading, unit: LineUnit = 'C'): number | null | 'implausible' {
  if (reading.value === null) return null;
  const celsius = inCelsius[reading.unit ?? unit](reading.value);
  return isPlausible(celsius) && !Object.is(reading.value, -0) ? celsius : 'implausible';
}

/**
 * °C before any offset; null when the device says that the probe is broken.
 * @param sensor degrees Celsius when undefined
 * @param coldJunction °C at the terminals of a thermocouple, or why that is not known; asked for only by one
 */
export function probeCelsius(
  sensor: Sensor | undefined,
  reading: LineReading,
  coldJunction: () => number | NoTemperature,
): number | null | NoTemperature {
  if (sensor === undefined) return temperatureCelsius(reading);
  if (sensor.kind === 'temperature') return temperatureCelsius(reading, sensor.unit);
  if (reading.value === null) return null;
  if (reading.unit !== null) return 'has-unit';
  const celsius = rawCelsius(sensor, reading.value, coldJunction);
  if (typeof celsius === 'string') return celsius;
  return celsius !== null && isPlausible(celsius) ? celsius : 'off-scale';
}

/**
 * A tip in a pan so cold, °C, and so much under its terminals, is one whose two wires are exchanged: it seems to cool as
 * the pan warms, and over boiling water is at about -50 °C (computed for types K, J and T with terminals at 20 to 30 °C).
 */
const REVERSED_C = -25;
const REVERSED_UNDER_COLD_C = 30;

function rawCelsius(
  sensor: Exclude<Sensor, { kind: 'temperature' }>,
  value: number,
  coldJunction: () => number | NoTemperature,
): number | null | NoTemperature {
  if (sensor.kind === 'rtd') return platinumCelsius(sensor.r0_ohm, value);
  if (sensor.kind === 'ntc') return thermistorCelsius(sensor, value);
  const cold = coldJunction();
  if (typeof cold === 'string') return cold;
  const tip = tipCelsius(sensor.type, value, cold);
  return tip !== null && tip < REVERSED_C && tip < cold - REVERSED_UNDER_COLD_C ? 'reversed' : tip;
}
