// Keeps what a live boil teaches, and puts together what earlier ones taught: for the next boil's header, and as a list for a person.
import { isDeepStrictEqual } from 'node:util';
import type { Header, Learnt, Mark, ProbeSetup } from '../core/boil/entries.ts';
import { learntOf, sapKey } from '../core/boil/learnt.ts';
import type { BoilState } from '../core/boil/state.ts';
import { probeName, sapName } from '../core/pan/baseline.ts';
import { marginal, sigmaOf } from '../core/pan/joint-normal.ts';
import type { BoilSummary, Notebook, Teaching } from '../notebook/contract.ts';
import type { Setup } from '../protocol/header-schema.ts';
import type { LearntListing } from '../protocol/messages.ts';

const TEACHING_MARKS: readonly Mark['kind'][] = ['density', 'water-check', 'pressure', 'withdraw'];

/** Whether a mark can teach something of a probe or a sap, or take such a thing back. */
export function canTeach(mark: Mark): boolean {
  return TEACHING_MARKS.includes(mark.kind);
}

/**
 * Keeps what a live boil has taught so far for the boils after it; what a practice boil teaches is made up. Returns a
 * sentence when that failed, else null.
 */
export function keepLearnt(
  notebook: Pick<Notebook, 'keepLearnt'>,
  { boil, kind }: BoilSummary,
  state: BoilState,
): string | null {
  if (kind !== 'live') return null;
  try {
    notebook.keepLearnt(boil, learntOf(state), state.header.probes ?? []);
    return null;
  } catch (error) {
    return `What this boil taught could not be kept for the next one: ${(error as Error).message}.`;
  }
}

/**
 * What is known beforehand of exactly the probes and saps of the setup, or undefined for nothing. `teachings` come
 * newest first: the newest boil's joint distribution stands for the names that it holds, as it was begun with what
 * was known before it; older boils add only the names that are still missing, each boil's independent of the others'.
 */
export function learntFor(setup: Setup | Header, teachings: readonly Teaching[]): Learnt | undefined {
  const { probes = [], pans = [] } = setup as Header;
  const syrupPans = pans.filter(({ role }) => role !== 'reference');
  const wanted = new Set([
    ...probes.map(({ id }) => probeName(id)),
    ...syrupPans.map(({ sap }) => sapName(sapKey(sap))),
  ]);
  const blocks = teachings.map((teaching) => {
    const names = namesInUse(teaching).filter((name) => wanted.has(name) && !isOfAnotherProbe(name, teaching, probes));
    for (const name of names) wanted.delete(name);
    return marginal(teaching.learnt, names);
  });
  const learnt = sideBySide(blocks);
  return learnt.names.length === 0 ? undefined : learnt;
}

/** Each name once, as the newest boil that taught it has it; sorted by name. */
export function learntListings(teachings: readonly Teaching[]): LearntListing[] {
  const newest = new Map<string, LearntListing>();
  for (const teaching of teachings) {
    for (const name of namesInUse(teaching)) {
      if (!newest.has(name)) newest.set(name, listingOf(name, teaching));
    }
  }
  return [...newest.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
}

function namesInUse({ learnt, forgotten }: Teaching): string[] {
  return learnt.names.filter((name) => !forgotten.includes(name));
}

/** What was set up anew since (moved to another channel, given another offset) is taken as somebody's better knowledge. */
function isOfAnotherProbe(name: string, { probes }: Teaching, now: readonly ProbeSetup[]): boolean {
  const known = (list: readonly ProbeSetup[]): unknown => {
    const probe = list.find(({ id }) => probeName(id) === name);
    return probe && [probe.port, probe.channel, probe.offset_c ?? 0, probe.sensor ?? null];
  };
  return !isDeepStrictEqual(known(probes), known(now));
}

/** Independent distributions as one: nothing is known of how what one boil taught hangs on what another did. */
function sideBySide(blocks: readonly Learnt[]): Learnt {
  const names = blocks.flatMap((block) => block.names);
  const covariance = blocks.flatMap((block, place) => {
    const before = blocks.slice(0, place).reduce((sum, other) => sum + other.names.length, 0);
    const after = names.length - before - block.names.length;
    return block.covariance.map((row) => [...zeros(before), ...row, ...zeros(after)]);
  });
  return { names, mean: blocks.flatMap((block) => block.mean), covariance };
}

const zeros = (count: number): number[] => Array.from({ length: count }, () => 0);

const PROBE_PREFIX = probeName('');
const SAP_PREFIX = sapName('');

/** A probe's error is learnt of its bare number; a person sees the number with the offset that was set up. */
function listingOf(name: string, { learnt, probes, boil, name: title, started }: Teaching): LearntListing {
  const about = name.startsWith(PROBE_PREFIX) ? 'probe' : 'sap';
  const of = name.slice((about === 'probe' ? PROBE_PREFIX : SAP_PREFIX).length);
  const offsetC = about === 'probe' ? (probes.find(({ id }) => id === of)?.offset_c ?? 0) : 0;
  const value = (learnt.mean[learnt.names.indexOf(name)] ?? 0) + offsetC;
  return { name, about, of, value, sigma: sigmaOf(learnt, [[name, 1]]), boil, title, started };
}
