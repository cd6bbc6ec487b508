// The clock of a simulated boil: second by second weather, hands, heat, truth and lines, handed over as entries.
import type { Entry, Mark } from '../boil/entries.ts';
import { perform } from './acts.ts';
import { doDueDeeds } from './deeds.ts';
import { burnerWatts, heatForOneSecond } from './heating.ts';
import { massKg } from './liquid.ts';
import { portLine, warmTip } from './probe-line.ts';
import type { Act } from './scenario.ts';
import type { PanState, PortState, ProbeState, SimulationState } from './state.ts';
import { watchPan } from './truth.ts';
import { moveFoam, moveSuperheat } from './tip-surroundings.ts';
import { moveAir, moveFire } from './weather.ts';

/**
 * The entries up to and including toT (ms), in order of t; later calls give only later ones.
 * The state moves on; once the boil has ended there are no more entries and `state.ended` is true.
 */
export function stepSimulation(state: SimulationState, toT: number): Entry[] {
  while (!state.ended && state.second * 1000 <= toT) {
    oneSecond(state);
    state.second += 1;
  }
  const due = state.pending.filter(({ t }) => t <= toT);
  state.pending = state.pending.filter(({ t }) => t > toT);
  return due;
}

function oneSecond(state: SimulationState): void {
  const t = state.second * 1000;
  const { scenario, air, random } = state;
  if (t >= scenario.endsAt && !isWaitedFor(state, t)) {
    // What somebody would still have typed after the end is never typed.
    state.pending = [...state.pending.filter((entry) => entry.t < t), { t, run: 'ended' }];
    state.ended = true;
    return;
  }
  moveAir(air, scenario.air, t, random.weather);
  doDueDeeds(state, t);
  for (const pan of state.pans) heatPan(state, pan, t);
  for (const pan of state.pans) moveFoam(pan, random.tips);
  for (const probe of state.probes) {
    moveSuperheat(probe, random.tips);
    warmTip(probe, panUnder(state, probe), air);
  }
  for (const port of state.ports) sendLines(state, port, t + 1000);
  // A stable sort: what was put in first stays first within one millisecond.
  state.pending.sort((a, b) => a.t - b.t);
}

/** Somebody poured on, so that a pan is not there yet when the boil was to end. */
function isWaitedFor({ scenario, pans }: SimulationState, t: number): boolean {
  const isOn = ({ off, level, liquid }: PanState): boolean => !off && level > 0 && massKg(liquid) > 0;
  return t < (scenario.waitsUntil ?? 0) && pans.some(isOn);
}

function heatPan(state: SimulationState, pan: PanState, t: number): void {
  moveFire(pan.fire, pan.heatKind, state.second, state.random.weather, pan.firePlan);
  if (pan.off || massKg(pan.liquid) === 0) return;
  const watts = burnerWatts(pan.hearth, pan.level, pan.fire.strength, state.air);
  const after = heatForOneSecond(pan, pan.hearth, watts, state.air);
  Object.assign(pan, after, { evaporatedKg: pan.evaporatedKg + after.evaporatedKg });
  if (pan.role === 'syrup') watchPan(state.truth, pan, t, watts);
}

const panUnder = (state: SimulationState, probe: ProbeState): PanState | undefined =>
  state.pans.find(({ id }) => id === probe.pan);

function sendLines(state: SimulationState, port: PortState, before: number): void {
  for (; port.nextLineAt < before; port.nextLineAt += port.periodMs) {
    const line = portLine(port, state.probes, (probe) => panUnder(state, probe), state.random.probes);
    const t = port.nextLineAt;
    if (line !== null && port.up && t >= state.deafUntil) state.pending.push({ t, port: port.id, line });
  }
}

/** What a person pours when the mark gives no figure: about a jug of cold sap. */
const jug = { litres: 2, brix: 2, celsius: 5 };

/**
 * A person's own mark changes the simulated pan: a top-up is poured in, a draw-off or transfer taken out,
 * the flame set, a probe moved. It takes effect now, whenever it is said to have happened; other entries,
 * and marks for pans that are not simulated, change nothing.
 */
export function hearMark(state: SimulationState, entry: Entry): void {
  if (!('mark' in entry)) return;
  const act = actOf(entry.mark);
  if (act === null || !namesHold(state, act)) return;
  perform(state, act, state.second * 1000);
}

function actOf(mark: Mark): Act | null {
  switch (mark.kind) {
    case 'top-up':
      return {
        act: 'pour',
        pan: mark.pan,
        litres: mark.litres ?? jug.litres,
        brix: mark.brix ?? jug.brix,
        celsius: mark.celsius ?? jug.celsius,
      };
    case 'transfer':
      return {
        act: 'transfer',
        from: mark.from,
        to: mark.to,
        litres: mark.all === true ? 'all' : (mark.litres ?? 'all'),
      };
    case 'draw-off':
      return { act: 'draw-off', pan: mark.pan, litres: mark.all === true ? 'all' : (mark.litres ?? 'all') };
    case 'flame':
      return { act: 'flame', pan: mark.pan, level: mark.level };
    case 'move-probe':
      return { act: 'move-probe', probe: mark.probe, pan: mark.pan };
    default:
      return null;
  }
}

function namesHold(state: SimulationState, act: Act): boolean {
  const hasPan = (name: string | null): boolean => name === null || state.pans.some(({ id }) => id === name);
  if (act.act === 'transfer') return act.from !== act.to && hasPan(act.from) && hasPan(act.to);
  if (act.act === 'move-probe') return hasPan(act.pan) && state.probes.some(({ setup }) => setup.id === act.probe);
  return !('pan' in act) || hasPan(act.pan);
}

/** A whole boil, second after second; minute by minute, so that little is pending at a time. */
export function* runSimulation(state: SimulationState): Generator<Entry> {
  for (let t = 0; !state.ended; t += 60_000) yield* stepSimulation(state, t);
}
