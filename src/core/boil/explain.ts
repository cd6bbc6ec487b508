// Answers "how do you know?" for any number of a boil at one moment, from the state alone.
import type { MarkKind } from './entries.ts';
import { explainWater } from './baseline-view.ts';
import { explainDepth, explainLitres, explainTopUp, lastVolume } from './explain-contents.ts';
import {
  explainRate,
  explainRiseNow,
  explainStrength,
  explainTemperature,
  heardAt,
  probeOf,
  sapFrom,
} from './explain-heat.ts';
import { explainFinish, explainFinishPoint, explainScorchPoint } from './explain-limits.ts';
import { bare, type Bare, type Explained, type Explanation, NOT_KNOWN, surest } from './explanation.ts';
import type { PanFacts } from './explanation.ts';
import type { Measured, Origin, OriginKind } from '../quantities/measured.ts';
import { counts } from './mark-flow.ts';
import { readingOf } from './readings.ts';
import type { BoilState } from './state.ts';
import { panLimits, waterFrom } from './view.ts';
import { correctionC } from './water.ts';

/**
 * What is behind a number at t (ms), which must not be before the last entry; null where the pan is not there.
 * The water point has no pan.
 */
export function explain(state: BoilState, pan: string | null, what: Explained, t: number): Explanation | null {
  if (what === 'water') return { ...aboutWater(state, t), pan: null, facts: null };
  if (pan === null || !(pan in state.pans)) return null;
  const told = aboutPan(state, pan, what, t);
  return {
    ...aboutWater(state, t),
    ...told,
    what,
    pan,
    surer: surest(told.parts, remediesFor(state, pan, what)),
    facts: factsOf(state, pan, t),
  };
}

function aboutWater(state: BoilState, t: number): Explanation {
  const water = explainWater(state);
  const told = water === null ? NOT_KNOWN : bare(water.value, water.sigma, withRest(water));
  return {
    what: 'water',
    pan: null,
    t,
    ...told,
    surer: surest(told.parts, waterRemedies((state.header.probes ?? []).length > 0, isChecked(state))),
    waterC: state.water.celsius,
    waterFrom: waterFrom(state.water),
    facts: null,
  };
}

function aboutPan(state: BoilState, pan: string, what: Explained, t: number): Bare {
  const reading = readingOf(state, pan, t);
  const limits = panLimits(state, pan);
  switch (what) {
    case 'temperature':
      return explainTemperature(state, reading);
    case 'rise':
      return explainRiseNow(state, reading);
    case 'rate':
      return explainRate(state, reading);
    case 'strength':
      return explainStrength(state, reading);
    case 'litres':
      return explainLitres(state, reading);
    case 'depth':
      return explainDepth(state, reading);
    case 'top-up':
      return explainTopUp(state, reading);
    case 'finish':
      return explainFinish(state, reading);
    case 'finish-point':
      return explainFinishPoint(state, pan, limits.finish_c);
    case 'scorch-point':
      return explainScorchPoint(state, pan, limits.scorch_c);
    case 'water':
      return NOT_KNOWN;
  }
}

/** A probe in boiling water tells the water point only as well as the probe is known; the rest is the altitude's. */
function withRest({ sigma, origins }: Measured): Origin[] {
  const parts = weighed(origins);
  const rest = sigma * sigma - parts.reduce((sum, part) => sum + part.sigma * part.sigma, 0);
  const isAltitude = parts.every(({ kind }) => kind === 'altitude');
  return rest > 0 && !isAltitude ? [...parts, { kind: 'altitude', at: null, sigma: Math.sqrt(rest) }] : parts;
}

/** What was seen of one thing in several ways is weighed by 1/σ², so that the surest makes most of what is left. */
function weighed(origins: readonly Origin[]): Origin[] {
  const seen = origins.filter(({ kind }) => kind !== 'weather');
  const variance = 1 / seen.reduce((sum, { sigma }) => sum + 1 / (sigma * sigma), 0);
  return origins.map((origin) => (origin.kind === 'weather' ? origin : { ...origin, sigma: variance / origin.sigma }));
}

type Remedies = Partial<Record<OriginKind, MarkKind | null>>;

/** A probe has been in boiling water: another check tells no more of the weather than the first did. */
const isChecked = (state: BoilState): boolean => state.water.evidence.some(({ kind }) => kind === 'check');

function waterRemedies(hasProbe: boolean, checked: boolean): Remedies {
  const mark = hasProbe ? 'water-check' : 'pressure';
  return { altitude: checked ? 'pressure' : mark, weather: mark, pressure: hasProbe ? mark : null };
}

/** Which mark helps against which part of a pan's number. */
function remediesFor(state: BoilState, pan: string, what: Explained): Remedies {
  const hasProbe = probeOf(state, pan) !== null;
  const needsSap = what === 'strength' || what === 'finish' || what === 'finish-point' || what === 'scorch-point';
  const density: MarkKind | null = needsSap ? 'density' : null;
  const contents: MarkKind | null = state.designs[pan]!.vessel === null ? null : 'depth';
  return {
    ...waterRemedies(hasProbe, isChecked(state)),
    assumed: 'water-check',
    'earlier-boil': density ?? (hasProbe ? 'water-check' : null),
    'boiling-check': density,
    'sugar-model': density,
    volume: contents,
    depth: contents,
    'nominal-power': contents,
  };
}

/** Whoever insists on a density against the thermometer has read that. */
function densityAlone({ marks, pans }: BoilState, pan: string): number | null {
  const last = marks.findLast((kept) => counts(kept) && kept.mark.kind === 'density' && kept.mark.pan === pan);
  if (last === undefined || last.evidence !== null || last.mark.sure === true || pans[pan]?.byHand === null)
    return null;
  return last.at;
}

function factsOf(state: BoilState, pan: string, t: number): PanFacts {
  const reading = readingOf(state, pan, t);
  const { minDepthMm, finishRiseC, ceilingC } = state.designs[pan]!;
  const { finish, scorch } = state.around[pan]!.limits;
  const probe = probeOf(state, pan);
  return {
    temperatureC: reading.temperature_c,
    riseC: reading.rise_c,
    brix: reading.brix,
    litres: reading.litres,
    depthMm: reading.depth_mm,
    leastDepthMm: minDepthMm,
    evaporationLPerH: reading.evaporation_l_per_h,
    finishBrix: finish.brix,
    finishRiseC,
    scorchBrix: scorch.brix,
    scorchInS: reading.scorch_in_s,
    ceilingC,
    probe,
    heardAt: heardAt(state, pan),
    correctionC: correctionC(state.water, probe),
    sapFrom: sapFrom(state, pan),
    densityAlone: probe === null && ceilingC === null ? densityAlone(state, pan) : null,
    volume: lastVolume(state, pan),
  };
}
