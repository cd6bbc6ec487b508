// What a line of a port does to the boil: its channels are the numbers of probes, of cold junctions, or of nobody yet.
import { panHears } from '../pan/pan-model.ts';
import type { BrokenBy } from './broken-probe.ts';
import { channelName, coldJunctionCelsius, hearColdJunctions } from './cold-junction.ts';
import type { Header, PortFormat, ProbeSetup } from './entries.ts';
import type { FoldTools, LineReading } from './line-reading.ts';
import { misfitSentence } from './misfit.ts';
import { noteNumber } from './probe-signs.ts';
import { heardState, probeHears, probeSendsImpossible, type ProbeTrack, startProbe } from './probe-track.ts';
import { inCelsius, type Misfit, type NoTemperature, probeCelsius, temperatureCelsius } from './probe-value.ts';
import { noteRefused } from './refused-lines.ts';
import { type BoilState, lookSoon, portNamed } from './state.ts';

/** A line that came from a port at t (ms). */
export function hearLine(state: BoilState, portId: string, line: string, t: number, tools: FoldTools): void {
  const port = portNamed(state, portId);
  const { readings, rejected } = tools.readLine(line, formatOf(state.header, portId));
  hearColdJunctions(state.coldJunctions, portId, readings, t);
  let used = false;
  for (let place = 0; place < readings.length; place++)
    used = hearChannel(state, portId, readings[place]!, place, t) || used;
  port.lines += 1;
  const why = rejected[0] ?? (used || readings.length === 0 ? null : 'no number that a probe can have meant');
  if (why !== null) noteRefused(port.refused, t, line, why);
  port.unreadable += !used && readings.length + rejected.length > 0 ? 1 : 0;
}

function formatOf({ ports = [] }: Header, id: string): PortFormat | undefined {
  for (const port of ports) if (port.id === id) return port.format;
  return undefined;
}

/** The probe behind a channel. A board names its channels in their order, so the one at the same `place` is likeliest. */
function probeOf({ probes = [] }: Header, port: string, channel: string, place: number): ProbeSetup | undefined {
  const likely = probes[place];
  if (likely !== undefined && likely.channel === channel && likely.port === port) return likely;
  for (const probe of probes) if (probe.channel === channel && probe.port === port) return probe;
  return undefined;
}

/** False where the number is none that anybody can have meant. `place` is the reading's in its line. */
function hearChannel(state: BoilState, port: string, reading: LineReading, place: number, t: number): boolean {
  const setup = probeOf(state.header, port, reading.channel, place);
  if (setup === undefined) return hearStray(state, port, reading, t);
  const read = probeCelsius(setup.sensor, reading, () => coldJunctionOf(state, setup, t));
  if (read === 'implausible') return hearImpossible(state, setup, reading, t);
  if (read === 'awaited') return true;
  const misfit = typeof read === 'string' ? read : isShorted(state, setup, read, t) ? 'shorted' : null;
  if (misfit !== null) sayOnce(state, setup, misfit, reading);
  hearProbe(state, setup, misfit === null ? (read as number | null) : { by: 'sensor' }, t);
  return true;
}

/** A thermocouple whose wires touch gives no millivolts of its tip: it is as warm as its plug, to so many °C. */
const AS_ITS_PLUG_C = 1.5;
/** No tip cools so far from one line to the next but by a short, °C: one taken out of a pan goes through what is between. */
const FALLS_AT_ONCE_C = 40;

function isShorted(state: BoilState, setup: ProbeSetup, celsius: number | null, t: number): boolean {
  if (celsius === null || setup.sensor?.kind !== 'thermocouple') return false;
  const cold = coldJunctionOf(state, setup, t);
  if (typeof cold === 'string' || Math.abs(celsius - cold) > AS_ITS_PLUG_C) return false;
  const { celsius: before } = state.probes[setup.id]!;
  return before !== null && before - cold > FALLS_AT_ONCE_C;
}

/** One is a glitch, as if the line had not named the channel; the same again is what a broken probe sends. */
function hearImpossible(state: BoilState, setup: ProbeSetup, { value, unit }: LineReading, t: number): boolean {
  if (!probeSendsImpossible(state.probes[setup.id]!) || value === null) return false;
  const wrote = setup.sensor?.kind === 'temperature' ? setup.sensor.unit : undefined;
  const written = Object.is(value, -0) ? '-0' : String(value);
  hearProbe(state, setup, { by: 'code', celsius: inCelsius[unit ?? wrote ?? 'C'](value), written }, t);
  return false;
}

function hearProbe(state: BoilState, setup: ProbeSetup, bare: number | BrokenBy | null, t: number): void {
  const track = state.probes[setup.id]!;
  if (needsLook(track, bare, t)) state.stirred = true;
  const wasBroken = track.brokenSince !== null;
  const celsius = probeHears(track, t, bare);
  if (track.brokenSince !== null && !wasBroken) lookSoon(state, t);
  const panId = state.probePan[setup.id];
  if (celsius === null || panId === null || panId === undefined) return;
  track.celsius = celsius + (setup.offset_c ?? 0);
  const pan = state.pans[panId]!;
  noteNumber(track.signs, t, celsius, pan.rateCPerMin);
  const { leftOut, overC } = track.beside;
  if (!leftOut) panHears(pan, t, celsius + state.corrections[setup.id]! - overC);
}

/** A channel that no probe names is kept to be offered, as the temperature that it then most likely is. */
function hearStray(state: BoilState, port: string, reading: LineReading, t: number): boolean {
  const celsius = temperatureCelsius(reading);
  if (celsius === 'implausible') return false;
  const name = channelName(port, reading.channel);
  if (!(name in state.coldJunctions)) probeHears((state.strays[name] ??= startProbe(port, t)), t, celsius);
  return true;
}

function coldJunctionOf(state: BoilState, { port, sensor }: ProbeSetup, t: number): number | NoTemperature {
  if (sensor?.kind !== 'thermocouple') return 'awaited';
  return coldJunctionCelsius(state.coldJunctions[channelName(port, sensor.cold_junction)]!, t);
}

/**
 * A probe that breaks, is whole again, speaks after a silence, or may have become believable: its pan is looked at in
 * the next second. A swap or a lifted tip shows in the blocks alone, which have their own looks.
 */
function needsLook(track: ProbeTrack, heard: number | BrokenBy | null, t: number): boolean {
  if ((typeof heard !== 'number') !== (track.brokenSince !== null) || heardState(track, t) !== 'ok') return true;
  return track.doubt !== null && (track.swap === null || track.signs.doubt !== null);
}

/** Each reason once a probe and setup: a bad contact would say it at every line. */
function sayOnce(state: BoilState, setup: ProbeSetup, misfit: Misfit, reading: LineReading): void {
  const { said } = state.probes[setup.id]!;
  if (said.includes(misfit)) return;
  said.push(misfit);
  state.notices.push({ t: state.now, sentence: misfitSentence(setup, misfit, reading) });
}
