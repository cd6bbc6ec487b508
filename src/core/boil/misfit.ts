// The sentence for a probe whose numbers do not fit its sensor: what came, and what to do.
import type { ProbeSetup, Sensor } from './entries.ts';
import type { LineReading } from './line-reading.ts';
import { type Misfit, plausibleCelsius } from './probe-value.ts';

const SENSOR_WORDS: Record<Sensor['kind'], { name: string; unit: string }> = {
  temperature: { name: 'thermometer', unit: 'degrees' },
  thermocouple: { name: 'thermocouple', unit: 'millivolts' },
  rtd: { name: 'platinum probe', unit: 'ohms' },
  ntc: { name: 'thermistor', unit: 'ohms' },
};

/** One sentence for a person; the probe has no value while this lasts. */
export function misfitSentence(
  { id, port, channel, sensor }: ProbeSetup,
  misfit: Misfit,
  reading: LineReading,
): string {
  const { name, unit } = SENSOR_WORDS[sensor?.kind ?? 'temperature'];
  const came = `${channel}=${reading.value ?? 'nan'}${reading.unit ?? ''}`;
  if (misfit === 'has-unit')
    return `The probe ${id} has no value: it is set up as a ${name}, whose number is in ${unit}, but ${came} came, which is a temperature; let the board send ${unit} without a unit, or take "sensor" out of the setup.`;
  if (misfit === 'off-scale')
    return `The probe ${id} has no value: ${came} came, and so many ${unit} are no temperature from ${plausibleCelsius.lowest} to ${plausibleCelsius.highest} °C of its ${name}; look at its lead and plug, and at "sensor" in the setup.`;
  const junction = sensor?.kind === 'thermocouple' ? sensor.cold_junction : '';
  const why =
    misfit === 'cold-junction-broken'
      ? 'is called broken by the board'
      : 'was not heard for more than five of its periods';
  return `The probe ${id} has no value: its cold junction, channel ${junction} of port ${port}, ${why}; look at the board, or at "cold_junction" in the setup.`;
}
