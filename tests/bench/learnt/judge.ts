// Plays the boils of one invented burner one after the other, each begun with what those before it taught, and judges the last.
import { learntOf } from '../../../src/core/boil/learnt.ts';
import type { Header, Learnt } from '../../../src/core/boil/entries.ts';
import { isBurnerName } from '../../../src/core/pan/burner.ts';
import { marginal } from '../../../src/core/pan/joint-normal.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { learntFor } from '../../../src/host/learnt.ts';
import type { Teaching } from '../../../src/notebook/contract.ts';
import { play, READING_MS } from '../forecast/play.ts';
import { witness, type Witnessed } from '../forecast/witness.ts';
import { beginningWith, boilOn, burnerKinds } from './burners.ts';

/** After so many boils the next one is judged; 0 begins with what is usual. */
export const AFTER_BOILS = [0, 1, 4] as const;
const TRAINED = 4;
/** Three minutes after it was filled, five after it came to its boil, and minutes before the finish. */
export const MOMENTS = ['cold', 'boils', 120, 60, 30, 15, 5] as const;
const COLD_MS = 180_000;
const BOILS_SINCE_MS = 300_000;

/** One moment of the judged boil, times in s. */
export interface Sample {
  kind: string;
  after: number;
  at: (typeof MOMENTS)[number];
  left: number;
  said: number | null;
  low: number | null;
  high: number | null;
}

export interface Judged {
  samples: Sample[];
  /** What the boils let expect of the steam, against the judged boil's own: logarithm of the ratio, and in how many σ. */
  steam: { kind: string; after: number; off: number; sigmas: number }[];
}

export interface Job {
  kind: string;
  seed: number;
}

export async function judgeBurner({ kind: name, seed }: Job): Promise<Judged> {
  const kind = burnerKinds.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`There is no burner "${name}".`);
  const teachings: Teaching[] = [];
  for (let number = 0; number < TRAINED; number += 1) {
    const { recording, header } = witness(boilOn(kind, seed, number, false));
    const { end } = await play(beginningWith(recording, burnersOnly(header, teachings)));
    const taught = learntOf(end);
    if (taught !== null) teachings.unshift(teachingOf(`boil ${number}`, header, taught));
  }
  const last = witness(boilOn(kind, seed, TRAINED, true));
  const judged: Judged = { samples: [], steam: [] };
  const own = truly(last);
  for (const after of AFTER_BOILS) {
    const learnt = burnersOnly(last.header, teachings.slice(0, after));
    const { readings } = await play(beginningWith(last.recording, learnt));
    judged.samples.push(...samplesOf(last, readings['p1'] ?? []).map((one) => ({ kind: name, after, ...one })));
    if (learnt === undefined || own === null) continue;
    const off = learnt.mean[0]! - own;
    judged.steam.push({ kind: name, after, off, sigmas: off / Math.sqrt(learnt.covariance[0]![0]!) });
  }
  return judged;
}

/** Probe and sap are drawn anew for each boil here, so only what is learnt of the burner may count. */
function burnersOnly(header: Header, teachings: readonly Teaching[]): Learnt | undefined {
  const learnt = learntFor(header, teachings);
  const burners = learnt === undefined ? undefined : marginal(learnt, learnt.names.filter(isBurnerName));
  return burners === undefined || burners.names.length === 0 ? undefined : burners;
}

function teachingOf(boil: string, { started, probes = [] }: Header, learnt: Learnt): Teaching {
  return { boil, name: boil, started, learnt, probes, forgotten: [] };
}

/** What truly boiled away each second at full flame, logarithm of kg/s, from the first boil to the finish. */
function truly({ samples, moments }: Witnessed): number | null {
  const finish = moments.find(({ what }) => what === 'reached-finish');
  const pan = samples['p1'] ?? [];
  const boiling = pan.filter(({ boiling, level, t }) => boiling && level === 1 && t < (finish?.t ?? 0));
  const first = boiling[0];
  const end = boiling.at(-1);
  if (first === undefined || end === undefined || end.t - first.t < 600_000) return null;
  return Math.log((1000 * (first.massKg - end.massKg)) / (end.t - first.t));
}

function samplesOf({ moments, samples }: Witnessed, readings: readonly PanReading[]): Omit<Sample, 'kind' | 'after'>[] {
  const finish = moments.find(({ what, pan }) => what === 'reached-finish' && pan === 'p1');
  if (finish === undefined || samples['p1']!.some(({ burned, t }) => burned && t < finish.t)) return [];
  const boils = samples['p1']!.find(({ boiling }) => boiling)?.t ?? finish.t;
  return MOMENTS.flatMap((at) => {
    const t = at === 'cold' ? COLD_MS : at === 'boils' ? boils + BOILS_SINCE_MS : finish.t - at * 60_000;
    const index = Math.round(t / READING_MS);
    const reading = readings[index];
    if (index < 0 || reading === undefined || (at !== 'cold' && t < boils)) return [];
    const { finish_in_s: said, finish_low_s: low, finish_high_s: high } = reading;
    return [{ at, left: (finish.t - index * READING_MS) / 1000, said, low, high }];
  });
}
