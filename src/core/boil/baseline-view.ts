// Where the water point and a pan's rise come from, what is behind them, and how much of their uncertainty each part brings.
import { probeName, sapName, WATER } from '../pan/baseline.ts';
import type { Evidence } from '../pan/baseline.ts';
import { covarianceOf, sigmaOf, type Sum } from '../pan/joint-normal.ts';
import type { Measured, Origin, OriginKind } from '../quantities/measured.ts';
import { sapKey } from './sap-key.ts';
import type { BoilState } from './state.ts';
import { baseOf } from './surroundings.ts';
import { leadOf } from './tip-levels.ts';

const KIND: Record<Evidence['kind'], OriginKind> = {
  check: 'boiling-check',
  pot: 'reference-pot',
  pressure: 'pressure',
  density: 'density-reading',
};

/** The water point now with what it rests on; null while it is not known. */
export function explainWater(state: BoilState): Measured | null {
  const { celsius, sigmaC, evidence } = state.water;
  if (celsius === null) return null;
  const seen = latestOfKind(evidence.filter(({ kind }) => kind !== 'density'));
  const origins = seen.length === 0 ? [fromAltitude(state)] : [...seen.map(asOrigin), weatherSince(state)];
  return { value: celsius, sigma: sigmaC, origins };
}

/** A pan's rise now with what it rests on, °C; null while temperature or water point are not known. */
export function explainRise(state: BoilState, id: string): Measured | null {
  const pan = state.pans[id];
  if (pan === undefined || pan.course.riseC === null || state.water.celsius === null) return null;
  const probe = leadOf(state, id);
  const noise = (pan.track.noise ?? 0.1) / 3;
  const base = sigmaOf(state.water.joint, baseOf(state, id));
  const own: Origin = {
    kind: probe === null ? 'hand-reading' : 'probe',
    at: pan.track.times.at(-1) ?? pan.byHand?.at ?? null,
    sigma: noise,
    of: probe ?? undefined,
  };
  return { value: pan.course.riseC, sigma: Math.hypot(noise, base), origins: [own, ...baseOrigins(state, probe)] };
}

/** What the sum of water point and a probe's error rests on. */
function baseOrigins(state: BoilState, probe: string | null): Origin[] {
  const ofProbe = state.water.evidence.filter((seen) => seen.kind !== 'pressure' && seen.probe === probe);
  const pressures = latestOfEach(state.water.evidence.filter(({ kind }) => kind === 'pressure' || kind === 'pot'));
  if (ofProbe.length > 0) {
    return [...latestOfEach([...ofProbe, ...pressures]).map(asOrigin), weatherSince(state)];
  }
  const water = pressures.length > 0 ? [...pressures.map(asOrigin), weatherSince(state)] : [fromAltitude(state)];
  return [...water, probeItself(state, probe)];
}

/** By which share a pan's sap rises more than its sugars alone; null where nothing taught it. */
export function explainSap(state: BoilState, id: string): Measured | null {
  const key = sapKey(state.header.pans?.find((pan) => pan.id === id)?.sap);
  const name = sapName(key);
  const seen = state.water.evidence.filter((one) => one.kind === 'density' && one.sap === key);
  const earlier = state.header.learnt?.names.includes(name) === true;
  if (seen.length === 0 && !earlier) return null;
  const { sapShare, sapShareSigma } = state.around[id]!;
  const origins = latestOfEach(seen).map((one): Origin => ({ ...asOrigin(one), sigma: sapShareSigma }));
  return {
    value: sapShare,
    sigma: sapShareSigma,
    origins: earlier ? [...origins, { kind: 'earlier-boil', at: null, sigma: sapShareSigma }] : origins,
  };
}

/** The newest of each kind and probe, newest first. */
function latestOfEach(evidence: readonly Evidence[]): Evidence[] {
  const newest = new Map<string, Evidence>();
  for (const one of evidence) newest.set(`${one.kind} ${one.kind === 'pressure' ? '' : one.probe}`, one);
  return [...newest.values()].sort((a, b) => b.at - a.at);
}

/** The newest of each kind, whatever probe it came from, the surest first. */
function latestOfKind(evidence: readonly Evidence[]): Evidence[] {
  const newest = new Map(evidence.map((one) => [one.kind, one]));
  return [...newest.values()].sort((a, b) => a.sigmaC - b.sigmaC);
}

function asOrigin(seen: Evidence): Origin {
  const of = seen.kind === 'pressure' ? undefined : (seen.probe ?? undefined);
  return { kind: KIND[seen.kind], at: seen.at, sigma: seen.sigmaC, of };
}

function fromAltitude(state: BoilState): Origin {
  return { kind: 'altitude', at: null, sigma: state.water.sigmaC };
}

/** What the weather may have done since something was last seen, °C. */
function weatherSince(state: BoilState): Origin {
  const sum: Sum = [[WATER, 1]];
  const { joint, seen } = state.water;
  const grown = covarianceOf(joint, sum, sum) - covarianceOf(seen.joint, sum, sum);
  return { kind: 'weather', at: seen.at, sigma: Math.sqrt(Math.max(0, grown)) };
}

/** A probe that nothing of this boil has measured: what earlier boils taught, or what such probes are usually off by. */
function probeItself(state: BoilState, probe: string | null): Origin {
  const name = probeName(probe);
  const earlier = state.header.learnt?.names.includes(name) === true;
  const sigma = sigmaOf(state.water.joint, [[name, 1]]);
  return { kind: earlier ? 'earlier-boil' : 'assumed', at: null, sigma, of: probe ?? undefined };
}
