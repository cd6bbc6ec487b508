// The channels that tell how warm the terminals of thermocouples are: which they are, what they said last, how old it is.
import { byName } from './by-name.ts';
import type { Header } from './entries.ts';
import type { LineReading } from './line-reading.ts';
import { LOST_PERIODS, lostAt, periodMs, probeHears, type ProbeTrack, startProbe } from './probe-track.ts';
import { type NoTemperature, temperatureCelsius } from './probe-value.ts';

export interface ColdJunction {
  channel: string;
  track: ProbeTrack;
}

/** One name for a channel of a port. */
export const channelName = (port: string, channel: string): string => `${port} ${channel}`;

/** The cold junctions that a header's thermocouples name; those that were there keep what is known of them. */
export function coldJunctionsOf(
  header: Header,
  kept: Record<string, ColdJunction>,
  t: number,
): Record<string, ColdJunction> {
  const named = byName<ColdJunction>();
  for (const { port, sensor } of header.probes ?? []) {
    if (sensor?.kind !== 'thermocouple') continue;
    const name = channelName(port, sensor.cold_junction);
    named[name] = kept[name] ?? { channel: sensor.cold_junction, track: startProbe(port, t) };
  }
  return named;
}

/** To be called before the thermocouples of the line are read, for the two often stand in one line. */
export function hearColdJunctions(
  junctions: Record<string, ColdJunction>,
  port: string,
  readings: readonly LineReading[],
  t: number,
): void {
  for (const name in junctions) {
    const { channel, track } = junctions[name]!;
    if (track.port !== port) continue;
    const reading = readings.find((one) => one.channel === channel);
    const celsius = reading === undefined ? 'implausible' : temperatureCelsius(reading);
    if (celsius !== 'implausible') probeHears(track, t, celsius);
  }
}

/** °C at t (ms) while it is not older than five of its own periods; else why there is none. */
export function coldJunctionCelsius({ track }: ColdJunction, t: number): number | NoTemperature {
  if (track.brokenSince !== null) return 'cold-junction-broken';
  const fresh = track.heardAt !== null && t - track.heardAt <= LOST_PERIODS * periodMs(track);
  if (fresh && track.celsius !== null) return track.celsius;
  return t < lostAt(track) ? 'awaited' : 'cold-junction-silent';
}
