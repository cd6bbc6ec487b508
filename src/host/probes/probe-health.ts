// How well each probe does, from the state of a boil or of what is listened to: for the Probes screen.
import type { BoilState } from '../../core/boil/state.ts';
import { probeName } from '../../core/pan/baseline.ts';
import { meanOf, sigmaOf } from '../../core/pan/joint-normal.ts';
import { median } from '../../core/pan/robust-statistics.ts';
import { noiseOf, recentSince, stepOf } from '../../core/probes/recent.ts';
import { isOnPort } from '../../protocol/probe-setup-messages.ts';
import type { KeptProbe, ProbeError, ProbeHealth } from '../../protocol/probe-setup-messages.ts';
import type { ProbeTrack } from '../../core/boil/probe-track.ts';
import { lastCheckOf } from './kept-probes.ts';

export interface Looked {
  state: BoilState;
  /** ms of its time */
  t: number;
  /** Turns a time of the boil into the wall clock, ISO 8601. */
  wallAt(t: number): string;
}

/** Everything of the probes at t; `kept` is what was checked outside of a boil. */
export function probeHealth({ state, t, wallAt }: Looked, kept: readonly KeptProbe[]): ProbeHealth {
  const { header } = state;
  const known = (header.probes ?? []).map((setup) => {
    const track = state.probes[setup.id]!;
    const pan = state.probePan[setup.id] ?? null;
    const port = header.ports?.find(({ id }) => id === setup.port);
    const own = keptOf(kept, { path: port?.path ?? setup.port, device: port?.device }, setup.channel);
    const checked = checkedOf(state, setup.id, own, wallAt);
    return {
      id: setup.id,
      channel: setup.channel,
      port: setup.port,
      pan,
      ...ofTrack(track),
      ...checked,
      isReference: pan !== null && state.designs[pan]?.role === 'reference',
    };
  });
  const strays = Object.entries(state.strays).map(([id, track]) => {
    const channel = id.slice(id.indexOf(' ') + 1);
    const port = header.ports?.find((each) => each.id === track.port);
    const one = keptOf(kept, { path: port?.path ?? track.port, device: port?.device }, channel);
    const checked = { error: one?.error ?? null, driftC: null, checkedAt: one === undefined ? null : lastCheckOf(one) };
    return { id, channel, port: track.port, pan: null, ...ofTrack(track), ...checked, isReference: false };
  });
  return {
    probes: [...known, ...strays],
    together: togetherOf(state, t),
    refused: Object.entries(state.ports).flatMap(([port, { refused }]) => {
      const reasons = Object.entries(refused.byReason).map(([reason, count]) => ({ reason, count }));
      return reasons.length === 0 ? [] : [{ port, reasons, last: refused.last }];
    }),
  };
}

const keptOf = (
  kept: readonly KeptProbe[],
  port: Parameters<typeof isOnPort>[1],
  channel: string,
): KeptProbe | undefined => kept.find((one) => one.channel === channel && isOnPort(one, port));

function ofTrack(track: ProbeTrack) {
  return {
    noiseC: noiseOf(track.recent),
    stepC: track.signs.stepC > 0 ? track.signs.stepC : stepOf(track.recent),
    lagS: track.lagS,
    losses: track.losses,
    lostSeconds: track.lostMs / 1000,
    doubt: track.doubt?.why ?? null,
  };
}

/** What this boil's checks say of a probe's error; where there are none, what was kept. Drift is against the one before. */
function checkedOf(
  state: BoilState,
  id: string,
  kept: KeptProbe | undefined,
  wallAt: (t: number) => string,
): { error: ProbeError | null; driftC: number | null; checkedAt: string | null } {
  const seen = state.water.evidence.filter((one) => one.kind !== 'pressure' && one.probe === id);
  const last = seen.findLast(({ kind }) => kind === 'check' || kind === 'pot');
  const before = kept?.error ?? null;
  if (seen.length === 0) {
    return { error: before, driftC: null, checkedAt: kept === undefined ? null : lastCheckOf(kept) };
  }
  const sum = [[probeName(id), 1]] as const satisfies readonly [string, number][];
  const error = { tooHighC: meanOf(state.water.joint, [...sum]), sigmaC: sigmaOf(state.water.joint, [...sum]) };
  const keptAt = kept === undefined ? null : lastCheckOf(kept);
  return {
    error,
    driftC: before === null ? null : error.tooHighC - before.tooHighC,
    checkedAt: last === undefined ? keptAt : wallAt(last.at),
  };
}

/** What is compared is the middle of so much, ms, where so many numbers came. */
const LOOKED_AT_MS = 30_000;
const ENOUGH_NUMBERS = 5;

/** The tips of each pan that are heard, with what the boil itself makes of them: which are at odds, and what the pan is read by. */
function togetherOf(state: BoilState, t: number): ProbeHealth['together'] {
  return Object.entries(state.panProbes).flatMap(([pan, probes]) => {
    const heard = probes.flatMap((probe) => {
      const { recent, signs, beside } = state.probes[probe]!;
      const { values } = recentSince(recent, t - LOOKED_AT_MS);
      if (values.length < ENOUGH_NUMBERS) return [];
      const isOdd = beside.odd !== null || signs.doubt !== null || state.tips[pan]?.perhaps === probe;
      return [{ probe, celsius: median(values) + (state.corrections[probe] ?? 0), isOdd, isRead: !beside.leftOut }];
    });
    if (heard.length < 2) return [];
    const all = heard.map(({ celsius }) => celsius);
    const read = heard.some(({ isRead }) => isRead) ? heard.filter(({ isRead }) => isRead) : heard;
    const odd = heard.filter(({ isOdd }) => isOdd).map(({ probe }) => probe);
    return [
      {
        pan,
        probes,
        meanC: read.reduce((sum, { celsius }) => sum + celsius, 0) / read.length,
        apartC: Math.max(...all) - Math.min(...all),
        odd,
      },
    ];
  });
}
