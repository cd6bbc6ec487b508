// What a line of a port does to the boil: its channels are the numbers of probes, of cold junctions, or of nobody yet.
import { panHears } from '../pan/pan-model.ts';
import type { BrokenBy } from './broken-probe.ts';
import { channelName, coldJunctionCelsius, hearColdJunctions } from './cold-junction.ts';
import type { ProbeSetup } from './entries.ts';
import type { FoldTools, LineReading } from './line-reading.ts';
import { misfitSentence } from './misfit.ts';
import { noteNumber } from './probe-signs.ts';
import { probeHears, probeSendsImpossible, probeState, type ProbeTrack, startProbe } from './probe-track.ts';
import { inCelsius, type Misfit, type NoTemperature, probeCelsius, temperatureCelsius } from './probe-value.ts';
import { noteRefused } from './refused-lines.ts';
import { type BoilState, lookSoon, startPort } from './state.ts';

/** A line that came from a port at t (ms). */
export function hearLine(state: BoilState, portId: string, line: string, t: number, tools: FoldTools): void {
  const port = (state.ports[portId] ??= startPort());
  const setup = state.header.ports?.find((one) => one.id === portId);
  const { readings, rejected } = tools.readLine(line, setup?.format);
  hearColdJunctions(state.coldJunctions, portId, readings, t);
  let used = false;
  for (const reading of readings) used = hearChannel(state, portId, reading, t) || used;
  port.lines += 1;
  const why = rejected[0] ?? (used || readings.length === 0 ? null : 'no number that a probe can have meant');
  if (why !== null) noteRefused(port.refused, t, line, why);
  port.unreadable += !used && readings.length + rejected.length > 0 ? 1 : 0;
}

/** False where the number is none that anybody can have meant. */
function hearChannel(state: BoilState, port: string, reading: LineReading, t: number): boolean {
  const setup = state.header.probes?.find((probe) => probe.port === port && probe.channel === reading.channel);
  if (setup === undefined) return hearStray(state, port, reading, t);
  const read = probeCelsius(setup.sensor, reading, () => coldJunctionOf(state, setup, t));
  if (read === 'implausible') return hearImpossible(state, setup, reading, t);
  if (read === 'awaited') return true;
  const misfits = typeof read === 'string';
  if (misfits) sayOnce(state, setup, read, reading);
  hearProbe(state, setup, misfits ? { by: 'sensor' } : read, t);
  return true;
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
  panHears(pan, t, celsius + state.corrections[setup.id]!);
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

/** A probe that breaks, is whole again, or speaks after a silence: its pan is looked at in the next second. */
function needsLook(track: ProbeTrack, heard: number | BrokenBy | null, t: number): boolean {
  return (typeof heard !== 'number') !== (track.brokenSince !== null) || probeState(track, t) !== 'ok';
}

/** Each reason once a probe and setup: a bad contact would say it at every line. */
function sayOnce(state: BoilState, setup: ProbeSetup, misfit: Misfit, reading: LineReading): void {
  const { said } = state.probes[setup.id]!;
  if (said.includes(misfit)) return;
  said.push(misfit);
  state.notices.push({ t: state.now, sentence: misfitSentence(setup, misfit, reading) });
}
