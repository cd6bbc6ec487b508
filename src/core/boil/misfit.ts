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
    return `The probe ${id} has no value: ${came} came, and so many ${unit} are no temperature from ${plausibleCelsius.lowest} to ${plausibleCelsius.highest} °C of its ${name}${likelyCause(sensor, reading.value)}; look at its lead and plug, and at "sensor" in the setup.`;
  if (misfit === 'reversed')
    return `The probe ${id} has no value: ${came} came, which would be far colder than its plug, so the two wires of its ${name} are likely exchanged; exchange them at the board, and look at "sensor" in the setup.`;
  if (misfit === 'shorted')
    return `The probe ${id} has no value: ${came} came, as warm as its plug and at once after a hot pan, so the two wires of its ${name} likely touch each other; look at its lead and its tip.`;
  const junction = sensor?.kind === 'thermocouple' ? sensor.cold_junction : '';
  const why =
    misfit === 'cold-junction-broken'
      ? 'is called broken by the board'
      : 'was not heard for more than five of its periods';
  return `The probe ${id} has no value: its cold junction, channel ${junction} of port ${port}, ${why}; look at the board, or at "cold_junction" in the setup.`;
}

/** What so few or so many ohms, or millivolts, are a sign of; common practice. */
function likelyCause(sensor: Sensor | undefined, value: number | null): string {
  if (sensor === undefined || sensor.kind === 'temperature' || value === null) return '';
  if (sensor.kind === 'thermocouple')
    return value > 0 ? ', so a wire is likely broken' : ', so its two wires are likely exchanged';
  // The ohms of platinum grow with warmth, those of a thermistor fall: between the two ends neither cause is likely.
  const usual = sensor.kind === 'rtd' ? sensor.r0_ohm : 'r25_ohm' in sensor ? sensor.r25_ohm : null;
  if (value <= (usual ?? 100) / 1000 || (sensor.kind === 'rtd' && value < sensor.r0_ohm / 2))
    return ', so the lead or the tip is likely shorted';
  return value > (usual ?? 10_000) * (sensor.kind === 'rtd' ? 2.7 : 50) ? ', so a wire is likely broken' : '';
}
