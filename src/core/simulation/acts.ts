// What an act does to the simulated pans, probes and ports, and the mark that a person would make of it.
import type { Mark } from '../boil/entries.ts';
import { litresAtTwenty, liquidOf, massKg, partOff, stirTogether } from './liquid.ts';
import { depthNoted, densityNoted, pressureNoted, readingNoted, waterCheckNoted } from './looks.ts';
import type { Act } from './scenario.ts';
import { panNamed, probeNamed, type PanState, type SimulationState } from './state.ts';
import { noteTruth } from './truth.ts';

type ActOf<K extends Act['act']> = Extract<Act, { act: K }>;

const toHundredth = (value: number): number => Math.round(value * 100) / 100;

/** Does the act now; gives the mark that belongs to it, null where there is nothing to note. */
export function perform(state: SimulationState, act: Act, t: number): Mark | null {
  switch (act.act) {
    case 'pour':
      return pour(state, act, t);
    case 'transfer':
      return transfer(state, act, t);
    case 'draw-off':
      return drawOff(state, act, t);
    case 'flame':
      panNamed(state, act.pan).level = act.level;
      return { kind: 'flame', pan: act.pan, level: act.level };
    case 'move-probe':
      probeNamed(state, act.probe).pan = act.pan;
      return { kind: 'move-probe', probe: act.probe, pan: act.pan };
    case 'read-pressure':
      return pressureNoted(state);
    case 'check-water':
      return waterCheckNoted(state, probeNamed(state, act.probe), act.errorCelsius);
    case 'measure-density':
      return densityNoted(state, panNamed(state, act.pan), act.instrument);
    case 'measure-depth':
      return depthNoted(state, panNamed(state, act.pan));
    case 'read-by-hand':
      return readingNoted(state, panNamed(state, act.pan));
    case 'note':
      return act.mark;
    case 'probe':
      return breakProbe(state, act, t);
    case 'port':
      return switchPort(state, act, t);
    case 'gap':
      return stopWriting(state, act, t);
  }
}

function pour(state: SimulationState, { pan: id, litres, brix, celsius }: ActOf<'pour'>, t: number): Mark {
  const pan = panNamed(state, id);
  fill(pan, liquidOf(litres, brix, celsius));
  noteTruth(state.truth, t, 'poured', pan);
  return { kind: 'top-up', pan: id, litres, brix, celsius };
}

function fill(pan: PanState, poured: PanState['liquid']): void {
  pan.liquid = massKg(pan.liquid) > 0 ? stirTogether(pan.liquid, poured) : poured;
  pan.off = false;
}

function transfer(state: SimulationState, { from, to, litres }: ActOf<'transfer'>, t: number): Mark | null {
  const source = panNamed(state, from);
  const target = panNamed(state, to);
  if (massKg(source.liquid) === 0) return null;
  fill(target, takeFrom(source, litres));
  noteTruth(state.truth, t, 'poured', target);
  if (source.off) noteTruth(state.truth, t, 'taken-off', source);
  return { kind: 'transfer', from, to, ...(litres === 'all' ? { all: true } : { litres }) };
}

function drawOff(state: SimulationState, { pan: id, litres }: ActOf<'draw-off'>, t: number): Mark | null {
  const pan = panNamed(state, id);
  const held = litresAtTwenty(pan.liquid);
  if (massKg(pan.liquid) === 0) return null;
  if (litres === 'all') noteTruth(state.truth, t, 'taken-off', pan);
  takeFrom(pan, litres);
  return {
    kind: 'draw-off',
    pan: id,
    litres: toHundredth(litres === 'all' ? held : litres),
    ...(litres === 'all' && { all: true }),
  };
}

/** A pan that is poured out is lifted off the heat. */
function takeFrom(pan: PanState, litres: number | 'all'): PanState['liquid'] {
  const { stays, taken } = partOff(pan.liquid, litres === 'all' ? Infinity : litres);
  pan.liquid = stays;
  if (massKg(stays) === 0) {
    pan.off = true;
    pan.boiling = false;
    pan.burned = false;
    pan.passed = { boiling: false, finish: false, shallow: false, ceiling: false, burned: false };
  }
  return taken;
}

function breakProbe(state: SimulationState, { probe: id, fault }: ActOf<'probe'>, t: number): null {
  const probe = probeNamed(state, id);
  const wasLost = probe.fault === 'open' || probe.fault === 'silent';
  const isLost = fault === 'open' || fault === 'silent';
  probe.fault = fault;
  if (wasLost !== isLost) state.truth.moments.push({ t, what: isLost ? 'probe-lost' : 'probe-back', probe: id });
  return null;
}

function switchPort(state: SimulationState, { port: id, state: next }: ActOf<'port'>, t: number): null {
  const port = state.ports.find((candidate) => candidate.id === id);
  if (port === undefined) throw new Error(`No port ${id} in this simulation.`);
  port.up = next === 'open';
  // A board that has just started takes a moment before its first line.
  if (port.up) port.nextLineAt = Math.max(port.nextLineAt, t + 1500);
  state.pending.push({ t, port: id, state: next });
  state.truth.moments.push({ t, what: port.up ? 'port-back' : 'port-lost', port: id });
  return null;
}

function stopWriting(state: SimulationState, { seconds }: ActOf<'gap'>, t: number): null {
  state.deafUntil = t + seconds * 1000;
  state.pending.push({ t: state.deafUntil, run: 'gap', seconds });
  for (const { id, up } of state.ports) {
    if (up) state.pending.push({ t: state.deafUntil, port: id, state: 'open' });
  }
  state.truth.moments.push({ t, what: 'gap' });
  return null;
}
