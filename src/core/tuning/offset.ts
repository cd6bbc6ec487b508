// How much a probe shows too much, by each boil's own evidence, and over many boils what to add to it and how sure that is.
import type { Header, ProbeSetup } from '../boil/entries.ts';
import type { BoilState } from '../boil/fold.ts';
import { priorsOf, waterFrom } from '../boil/water.ts';
import { probeName } from '../pan/baseline.ts';
import { marginal } from '../pan/joint-normal.ts';

/** What one boil says of one probe, whatever earlier boils said. */
export interface ProbeError {
  probe: string;
  /** The probe as it was set up then: another wire or sensor is another probe. */
  hardware: string;
  /** What the header added to its number, °C. */
  offsetC: number;
  /** How much its bare number was too high, °C, and the standard uncertainty. */
  errorC: number;
  sigmaC: number;
}

/** Nothing is presumed of a probe here, °C: each boil's evidence speaks for itself. */
const OPEN_SIGMA_C = 5;

export const hardwareOf = ({ id, port, channel, sensor }: ProbeSetup): string =>
  JSON.stringify([id, port, channel, sensor ?? null]);

/**
 * Of every probe that a boiling check, a pot of plain water or a density reading told of. `state` is the boil's at its
 * end, t ms; what was learnt from earlier boils is left out, so that no evidence counts twice.
 */
export function probeErrors(state: BoilState, t: number): ProbeError[] {
  const { evidence } = state.water;
  const told = new Set(evidence.flatMap((one) => (one.kind === 'pressure' ? [] : [one.probe])));
  const joint = waterFrom(evidence, openPriors(state.header), t).water.joint;
  return (state.header.probes ?? []).flatMap((probe): ProbeError[] => {
    if (!told.has(probe.id)) return [];
    const { mean, covariance } = marginal(joint, [probeName(probe.id)]);
    const [errorC, variance] = [mean[0], covariance[0]?.[0]];
    if (errorC === undefined || variance === undefined) return [];
    const offsetC = probe.offset_c ?? 0;
    return [{ probe: probe.id, hardware: hardwareOf(probe), offsetC, errorC, sigmaC: Math.sqrt(variance) }];
  });
}

function openPriors(header: Header): ReturnType<typeof priorsOf> {
  const { expected, ...rest } = priorsOf({ ...header, learnt: undefined });
  const probes = new Set((header.probes ?? []).map(({ id }) => probeName(id)));
  const open = expected.map((one) => (probes.has(one.name) ? { ...one, mean: 0, sigma: OPEN_SIGMA_C } : one));
  return { ...rest, expected: open };
}

export interface OffsetFound {
  probe: string;
  /** Boils that told of this probe. */
  truths: number;
  /** What to add to the probe's number, °C, with its standard uncertainty; null where that cannot be told. */
  offset_c: number | null;
  sigma_c: number | null;
  /** What the newest header adds, °C. */
  now_c: number;
  sentence: string;
}

/** Fewer boils than these may all have been off the same way (judgement). */
export const LEAST_BOILS = 3;
/** A probe drifts by so much from one boil to another, °C (practice; as in what a boil teaches the next). */
const DRIFT_C = 0.1;
/** Worse than this is no better than the probe's own class, °C. */
const USEFUL_SIGMA_C = 0.35;
/** Less than this is not worth a change, °C, nor is what may as well be nothing (in standard uncertainties). */
const TELLING_C = 0.1;
const TELLING_SIGMAS = 2;

/** `errors` are those of one probe, of boils of the same hardware, newest last; `probe` as it is set up now. */
export function offsetFrom(probe: ProbeSetup, errors: readonly ProbeError[]): OffsetFound {
  const now_c = probe.offset_c ?? 0;
  const head = { probe: probe.id, truths: errors.length, now_c };
  if (errors.length < LEAST_BOILS) return { ...head, offset_c: null, sigma_c: null, sentence: tooFew(errors.length) };
  const weights = errors.map(({ sigmaC }) => 1 / (sigmaC ** 2 + DRIFT_C ** 2));
  const all = weights.reduce((sum, one) => sum + one, 0);
  const mean = errors.reduce((sum, { errorC }, i) => sum + weights[i]! * errorC, 0) / all;
  // Boils that agree worse than they should make it less sure.
  const scatter = errors.reduce((sum, { errorC }, i) => sum + weights[i]! * (errorC - mean) ** 2, 0);
  const sigma = Math.sqrt(Math.max(1, scatter / (errors.length - 1)) / all);
  if (sigma > USEFUL_SIGMA_C)
    return { ...head, offset_c: null, sigma_c: sigma, sentence: tooWide(errors.length, sigma) };
  const offset_c = -mean;
  return { ...head, offset_c, sigma_c: sigma, sentence: words(now_c, offset_c, sigma, errors.length) };
}

const tooFew = (boils: number): string =>
  `${boils === 0 ? 'No boil tells' : boils === 1 ? 'Only one boil tells' : `Only ${boils} boils tell`} of this probe, and ${LEAST_BOILS} are needed: check it in boiling water, or read an instrument in its pan, and note it.`;

const tooWide = (boils: number, sigma: number): string =>
  `${boils} boils tell of this probe and do not agree: it may be off by ${sigma.toFixed(1)} °C either way. Look how it hangs in the pan.`;

function words(now: number, offset: number, sigma: number, boils: number): string {
  const signed = (celsius: number): string => `${celsius < 0 ? '−' : '+'}${Math.abs(celsius).toFixed(2)} °C`;
  const apart = Math.abs(offset - now);
  if (apart < TELLING_C || apart < TELLING_SIGMAS * sigma)
    return `What is added now, ${signed(now)}, fits: ${boils} boils say ${signed(offset)} ± ${sigma.toFixed(2)}.`;
  return `Add ${signed(offset)} (± ${sigma.toFixed(2)}) to this probe rather than ${signed(now)}: ${boils} boils say so.`;
}
