// By how much a probe shows too much, from all boils in which an instrument or boiling water told the truth, and how sure that is.
import type { ProbeSetup } from '../boil/entries.ts';
import type { BoilState } from '../boil/fold.ts';
import { priorsOf } from '../boil/water.ts';
import { type Evidence, type Expected, type Priors, probeName, sapName, see, startBaseline } from '../pan/baseline.ts';
import { type JointNormal, marginal, meanOf, sigmaOf } from '../pan/joint-normal.ts';
import { Z80 } from '../quantities/spread.ts';
import { NEAR_END_BRIX } from './truth.ts';

/** What one boil tells of its probes; plain data, so that a thread can hand it on. */
export interface OffsetFacts {
  probes: ProbeSetup[];
  priors: Priors;
  /** All that counted in the boil as it was recorded, in order of time. */
  evidence: Evidence[];
  /** Ids of the probes whose truth is known: an instrument near the finish, or plain boiling water. */
  told: string[];
}

/** What is known of one probe; null where it cannot be said, and then `why` says why. */
export interface ProbeOffset {
  probe: string;
  /** In how many boils its truth was known. */
  boils: number;
  /** How much it shows too much, with the offset that the newest boil had set, °C. */
  too_high_c: number | null;
  /** Middle 80 % of it, °C. */
  low_c: number | null;
  high_c: number | null;
  /** The `offset_c` that would make it right, to 0.1 °C. */
  offset_c: number | null;
  why: string | null;
}

/** Fewer boils than this could all have been wrong in the same way (common practice: measure thrice). */
const LEAST_BOILS = 3;
/** Known worse than this, °C (1 σ), it is called not known: it would move a finish by 1.5 °Bx. */
const USEFUL_SIGMA_C = 0.3;
/** Nothing is taken for usual of a probe's error, °C: the boils alone are to tell. */
const VAGUE_SIGMA_C = 5;

/** What a boil that was run through as it was recorded tells of its probes. */
export function offsetFacts(state: BoilState): OffsetFacts {
  const { evidence } = state.water;
  const told = evidence.flatMap((one) => {
    if (one.kind === 'pressure' || one.probe === null) return [];
    const finish = one.kind === 'density' ? state.designs[one.pan]?.finishBrix : undefined;
    return one.kind === 'density' && (finish === undefined || one.brix < finish - NEAR_END_BRIX) ? [] : [one.probe];
  });
  return {
    probes: state.header.probes ?? [],
    priors: { ...priorsOf(state.header), learnt: null },
    evidence: evidence.toSorted((a, b) => a.at - b.at),
    told: [...new Set(told)],
  };
}

/**
 * Every probe of the newest boil that was ever told the truth, from `boils` in their order, oldest first. The joint
 * estimate of the water point, the probes and the saps goes from boil to boil, aged each time as for a boil that begins:
 * a probe that drifts is followed, and a sap that nobody knows keeps its probe unsure. A boil in which a probe hung on
 * another channel or was of another sensor tells nothing of it.
 */
export function probeOffsets(boils: readonly OffsetFacts[]): ProbeOffset[] {
  const now = boils.at(-1)?.probes ?? [];
  let known: JointNormal | null = null;
  for (const boil of boils) known = wiser(known, boil, now);
  return now.flatMap((probe) => {
    const told = boils.filter(
      (boil) => boil.told.includes(probe.id) && boil.probes.some((one) => isSame(one, probe)),
    ).length;
    return known === null || told === 0 ? [] : [offsetOf(probe, known, told)];
  });
}

/** "Probe A/1 shows 0.6 °C too much (0.4 to 0.8), from 5 boils: offset_c -0.6 would make it right." */
export function offsetSentence({ probe, boils, too_high_c, low_c, high_c, offset_c, why }: ProbeOffset): string {
  if (too_high_c === null || low_c === null || high_c === null) return `Probe ${probe}: ${why}`;
  const range = `${low_c.toFixed(1)} to ${high_c.toFixed(1)}`;
  if (low_c <= 0 && high_c >= 0)
    return `Probe ${probe} shows no error that these ${boils} boils can tell from none (${range} °C).`;
  const size = Math.abs(too_high_c).toFixed(1);
  return `Probe ${probe} shows ${size} °C too ${too_high_c > 0 ? 'much' : 'little'} (${range}), from ${boils} boils: offset_c ${offset_c} would make it right.`;
}

/** What is known of the probes of now and of all saps after one more boil. */
function wiser(known: JointNormal | null, boil: OffsetFacts, now: readonly ProbeSetup[]): JointNormal {
  const { priors, evidence } = asNow(boil, now);
  const isAsked = (name: string): boolean => now.some(({ id }) => probeName(id) === name);
  const own = priors.expected.map((one) => (isAsked(one.name) ? vague(one.name) : one));
  const carried = (known?.names ?? []).filter((name) => own.every((one) => one.name !== name));
  let baseline = startBaseline({ ...priors, expected: [...own, ...carried.map(vague)], learnt: known });
  for (const seen of evidence) baseline = see(baseline, seen);
  const { joint } = baseline;
  return marginal(
    joint,
    joint.names.filter((name) => isAsked(name) || name.startsWith(SAP_PREFIX)),
  );
}

const SAP_PREFIX = sapName('');
const vague = (name: string): Expected => ({ name, mean: 0, sigma: VAGUE_SIGMA_C });

/** The boil with every probe that is another one than now under another name, so that it teaches nothing of this one. */
function asNow(boil: OffsetFacts, now: readonly ProbeSetup[]): OffsetFacts {
  const others = new Set(boil.probes.filter((probe) => !now.some((one) => isSame(one, probe))).map(({ id }) => id));
  const renamed = (id: string): string => `${id}, another one`;
  const rename = <T extends Evidence>(seen: T): T =>
    'probe' in seen && seen.probe !== null && others.has(seen.probe) ? { ...seen, probe: renamed(seen.probe) } : seen;
  const names = new Map([...others].map((id) => [probeName(id), probeName(renamed(id))]));
  const expected = boil.priors.expected.map((one) => ({ ...one, name: names.get(one.name) ?? one.name }));
  return { ...boil, priors: { ...boil.priors, expected }, evidence: boil.evidence.map(rename) };
}

/** The bare number is judged, so another offset makes no other probe. */
function isSame(one: ProbeSetup, other: ProbeSetup): boolean {
  const sensor = (probe: ProbeSetup): string => JSON.stringify(probe.sensor ?? null);
  return (
    one.id === other.id && one.port === other.port && one.channel === other.channel && sensor(one) === sensor(other)
  );
}

function offsetOf(probe: ProbeSetup, known: JointNormal, boils: number): ProbeOffset {
  const error = [[probeName(probe.id), 1]] as const;
  const sigma = sigmaOf(known, error);
  const high = meanOf(known, error);
  const why = whyNot(boils, sigma);
  const nothing = { too_high_c: null, low_c: null, high_c: null, offset_c: null };
  if (why !== null) return { probe: probe.id, boils, ...nothing, why };
  const tooHigh = high + (probe.offset_c ?? 0);
  return {
    probe: probe.id,
    boils,
    too_high_c: hundredths(tooHigh),
    low_c: hundredths(tooHigh - Z80 * sigma),
    high_c: hundredths(tooHigh + Z80 * sigma),
    offset_c: Math.round(-high * 10) / 10 + 0,
    why: null,
  };
}

function whyNot(boils: number, sigma: number): string | null {
  if (boils < LEAST_BOILS) {
    return `its error cannot be told from ${boils === 1 ? 'one boil' : `${boils} boils`} with a density reading near the finish or a boiling check; it takes ${LEAST_BOILS}.`;
  }
  if (sigma <= USEFUL_SIGMA_C) return null;
  const spread = (Z80 * sigma).toFixed(1);
  return `its error is known only to ±${spread} °C from ${boils} boils, for the water point or the sap is not known better; a pressure and a boiling check in each boil would tell it.`;
}

const hundredths = (celsius: number): number => Math.round(celsius * 100) / 100 + 0;
