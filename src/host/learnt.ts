// Keeps what a live boil teaches, and puts together what earlier ones taught: for the next boil's header, and as a list for a person.
import { isDeepStrictEqual } from 'node:util';
import type { Header, Learnt, Mark, PanSetup, ProbeSetup } from '../core/boil/entries.ts';
import { learntOf } from '../core/boil/learnt.ts';
import { sapKey } from '../core/boil/sap-key.ts';
import type { BoilState } from '../core/boil/state.ts';
import { probeName, sapName } from '../core/pan/baseline.ts';
import {
  burnerName,
  isBurnerName,
  panOfBurnerName,
  type ExpectedSteam,
  expectedSteam,
  type Steam,
} from '../core/pan/burner.ts';
import { usualSteam } from '../core/pan/filter/start.ts';
import { boiledOffKgPerS } from '../core/physics/heat.ts';
import { independent, marginal, sideBySide, sigmaOf } from '../core/pan/joint-normal.ts';
import { panDesign } from '../core/pan/setup.ts';
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
 * Of a burner each boil taught by itself, so all of them count.
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
  const learnt = sideBySide([...blocks, burnersFor(pans, teachings)]);
  return learnt.names.length === 0 ? undefined : learnt;
}

/** What all boils together let expect of each burner of the setup, each by itself. */
function burnersFor(pans: readonly PanSetup[], teachings: readonly Teaching[]): Learnt {
  const expected = new Map<string, ExpectedSteam>();
  for (const pan of pans) {
    const name = burnerName(pan);
    const steam =
      name === null
        ? null
        : expectedSteam(usualSteam(panDesign(pan)), pan.heat?.kind ?? 'other', steamsOf(name, teachings));
    if (name !== null && steam !== null) expected.set(name, steam);
  }
  return independent([...expected].map(([name, { lnKgPerS, share }]) => ({ name, mean: lnKgPerS, sigma: share })));
}

/** What each boil showed of the burner, the newest first. */
function steamsOf(name: string, teachings: readonly Teaching[]): Steam[] {
  return teachings.flatMap((teaching) => {
    if (!namesInUse(teaching).includes(name)) return [];
    const { mean, covariance } = marginal(teaching.learnt, [name]);
    return [{ lnKgPerS: mean[0]!, share: Math.sqrt(covariance[0]![0]!) }];
  });
}

/**
 * Each name once, as the newest boil that taught it has it, a burner as all its boils together; sorted by name. `headerOf`
 * gives the header of a kept boil.
 */
export function learntListings(teachings: readonly Teaching[], headerOf: (boil: string) => Header): LearntListing[] {
  const newest = new Map<string, LearntListing>();
  for (const teaching of teachings) {
    for (const name of namesInUse(teaching)) {
      if (newest.has(name)) continue;
      const listing = isBurnerName(name)
        ? burnerListing(name, teaching, steamsOf(name, teachings), panOfBurner(name, teaching, headerOf))
        : listingOf(name, teaching);
      if (listing !== null) newest.set(name, listing);
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

/** The pan as it was set up when its boil began, or as the name tells of it; null where neither does. */
function panOfBurner(name: string, { boil }: Teaching, headerOf: (boil: string) => Header): PanSetup | null {
  return headerOf(boil).pans?.find((pan) => burnerName(pan) === name) ?? panOfBurnerName(name);
}

/** Steam in kg/h and its share for the next boil. */
function burnerListing(
  name: string,
  { boil, name: title, started }: Teaching,
  boils: readonly Steam[],
  pan: PanSetup | null,
): LearntListing | null {
  if (pan === null) return null;
  const heat = pan.heat?.kind ?? 'other';
  const steam = expectedSteam(usualSteam(panDesign(pan)), heat, boils);
  if (steam === null) return null;
  const kgPerS = Math.exp(steam.lnKgPerS);
  const powerW = pan.heat?.power_w ?? null;
  const perWatt = boiledOffKgPerS(1, 100);
  const efficiency = powerW === null || powerW === 0 || perWatt === null ? null : kgPerS / (powerW * perWatt);
  const burner = { heat, power_w: powerW, efficiency, boils: steam.boils, spread: steam.spread };
  const of = pan.name ?? pan.id;
  return { name, about: 'burner', of, value: 3600 * kgPerS, sigma: steam.share, burner, boil, title, started };
}
