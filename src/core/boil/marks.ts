// What a person's mark does to the state of the boil, and how it is taken back.
import { forgetBlocksFrom, panProbeMoved } from '../pan/pan-model.ts';
import { forgetShownFrom } from '../pan/temperature-track.ts';
import type { Mark } from './entries.ts';
import { depth, drawOff, flame, inReach, setFlame, takeBack, topUp, transfer } from './pours.ts';
import { boilingOf, settingOf } from './settings.ts';
import { pourNotNoted, refuseNoMore, refusePour } from './unmarked-pours.ts';
import { density } from './density-noted.ts';
import { handHappens, readByHand, takenByHand, waterCheck } from './readings-noted.ts';
import { answersAmount, takeAnswer } from './questioned-amounts.ts';
import { standingMarks } from './standing-marks.ts';
import { type BoilState, type KeptMark, placeProbes } from './state.ts';

/** Notes a mark at t (ms) and lets it act on the pans. A mark that names a pan that is not there acts on nothing. */
export function noteMark(state: BoilState, mark: Mark, t: number): void {
  const at = Math.min(mark.happened ?? t, t);
  if (mark.kind === 'withdraw') {
    withdraw(state, mark.id, t);
    return;
  }
  const nobody = whatIsNotThere(state, mark);
  if (nobody !== null)
    state.notices.push({
      t,
      sentence: `A mark (${mark.kind}) at ${t} ms names ${nobody}, which is not there; it acts on nothing.`,
    });
  const kept: KeptMark = {
    t,
    at,
    mark,
    withdrawn: false,
    changes: [],
    evidence: null,
    questioned: false,
    doubted: false,
    wild: false,
    doubt: null,
    remark: null,
    refused: null,
    weighed: false,
    seenAs: null,
    countsAs: null,
    swell: null,
    reminded: false,
    corrections: [],
    takenC: null,
  };
  const asked = answersAmount(state, kept);
  if (asked !== null) takeAnswer(state, asked, kept);
  const twice = asked === null && isTwice(state, kept);
  state.marks.push(kept);
  state.standing = standingMarks(state.marks);
  if (!twice) {
    act(state, kept, kept.at, t);
    return;
  }
  kept.questioned = true;
  kept.doubt = TWICE;
  state.standing = standingMarks(state.marks);
  state.notices.push({ t, sentence: TWICE });
}

/** Marks that change how much is in a pan. */
const AMOUNTS: ReadonlySet<Mark['kind']> = new Set(['top-up', 'transfer', 'draw-off']);
/** The same again within this is most likely a second press of the button, ms. */
const TWICE_WITHIN_MS = 120_000;
const TWICE = 'The same was noted twice within two minutes and counts once. If it happened twice, note it once more.';

/** The same amount in the same pan just before, which was not itself such a second press. */
function isTwice(state: BoilState, { mark, at }: KeptMark): boolean {
  if (!AMOUNTS.has(mark.kind)) return false;
  const last = state.marks.findLast((one) => !one.withdrawn && isSame(one.mark, mark));
  return last !== undefined && !last.questioned && Math.abs(last.at - at) <= TWICE_WITHIN_MS;
}

const isSame = (one: Mark, other: Mark): boolean => sayWhat(one) === sayWhat(other);
const sayWhat = (mark: Mark): string =>
  JSON.stringify(Object.entries({ ...mark, id: 0, happened: 0 }).toSorted(([a], [b]) => (a < b ? -1 : 1)));

/** The pan or probe that a mark names and the header does not have; null when all are there. */
function whatIsNotThere(state: BoilState, mark: Mark): string | null {
  const named = mark as { pan?: string | null; from?: string; to?: string; probe?: string };
  const pans = [named.pan, named.from, named.to].filter((pan) => typeof pan === 'string');
  const pan = pans.find((one) => !(one in state.pans));
  if (pan !== undefined) return `the pan "${pan}"`;
  return named.probe !== undefined && !(named.probe in state.probes) ? `the probe "${named.probe}"` : null;
}

function act(state: BoilState, kept: KeptMark, at: number, t: number): void {
  const { mark } = kept;
  switch (mark.kind) {
    case 'top-up':
      return topUp(state, kept, mark);
    case 'transfer':
      return transfer(state, kept, mark);
    case 'draw-off':
      return drawOff(state, kept, mark);
    case 'depth':
      return depth(state, kept, mark);
    case 'density':
      return density(state, kept, mark);
    case 'flame':
      return flame(state, kept, mark);
    case 'no-top-up':
      kept.refused = refusePour(state, mark.pan, at);
      return;
    case 'reading':
      kept.takenC = takenByHand(state, mark);
      readByHand(state, mark, at);
      return handHappens(state, kept, mark);
    case 'move-probe':
      return moveProbe(state, mark, at, t);
    case 'water-check':
      return waterCheck(state, kept, mark);
    default:
  }
}

/** A person lifts a probe out, then looks at the clock; and a block is that long, ms. */
const LIFTED_MS = 5000;

/** The probe hangs in another pan since `at` (ms), which is noted at t. */
function moveProbe(state: BoilState, mark: Mark & { kind: 'move-probe' }, at: number, t: number): void {
  if (!(mark.probe in state.probePan) || (mark.pan !== null && !(mark.pan in state.pans))) return;
  const left = state.probePan[mark.probe] ?? null;
  if (left === mark.pan) return;
  state.probePan[mark.probe] = mark.pan;
  placeProbes(state);
  for (const id of [left, mark.pan]) {
    const pan = id === null ? undefined : state.pans[id];
    if (id === null || pan === undefined) continue;
    if (id === left) {
      forgetBlocksFrom(boilingOf(state), id, at - LIFTED_MS);
      if (state.panProbes[id]!.length === 0) forgetShownFrom(pan.track, at - LIFTED_MS);
    }
    panProbeMoved(pan, settingOf(state, id), t);
  }
}

/** The mark of that id that nobody has taken back. */
export const standingMark = (state: BoilState, id: string): KeptMark | null =>
  state.marks.find((one) => one.mark.id === id && !one.withdrawn) ?? null;

/** Takes a mark back: the pans are run again without it, and what it set goes back to what the marks before it said. */
function withdraw(state: BoilState, id: string, t: number): void {
  const kept = standingMark(state, id);
  if (kept === null) return;
  kept.withdrawn = true;
  state.standing = standingMarks(state.marks);
  const { mark } = kept;
  if (mark.kind === 'no-top-up' && kept.refused !== null) refuseNoMore(state, mark.pan, kept.refused);
  if (mark.kind === 'flame' && !inReach(state, kept)) setFlame(state, mark.pan, lastFlame(state, mark.pan), t);
  takeBack(state, kept, t);
  if (mark.kind === 'top-up') pourNotNoted(state, mark.pan, kept.at);
  if (mark.kind === 'transfer') pourNotNoted(state, mark.to, kept.at);
  if (mark.kind === 'move-probe')
    moveProbe(state, { kind: 'move-probe', probe: mark.probe, pan: lastPlace(state, mark.probe) }, t, t);
  if (mark.kind === 'reading') takeHandReadingBack(state, mark.pan);
}

function standing<K extends Mark['kind']>(
  state: BoilState,
  kind: K,
  fits: (mark: Mark & { kind: K }) => boolean,
): (Mark & { kind: K }) | null {
  for (const kept of [...state.marks].reverse()) {
    const mark = kept.mark as Mark & { kind: K };
    if (!kept.withdrawn && kept.mark.kind === kind && fits(mark)) return mark;
  }
  return null;
}

function lastFlame(state: BoilState, pan: string): number {
  return standing(state, 'flame', (mark) => mark.pan === pan)?.level ?? 1;
}

function lastPlace(state: BoilState, probe: string): string | null {
  const mark = standing(state, 'move-probe', (one) => one.probe === probe);
  if (mark !== null) return mark.pan;
  return (state.header.pans ?? []).find((pan) => [pan.probe ?? []].flat().includes(probe))?.id ?? null;
}

function takeHandReadingBack(state: BoilState, id: string): void {
  const pan = state.pans[id];
  if (pan === undefined) return;
  pan.byHand = null;
  for (const { mark, at, withdrawn } of state.marks) {
    if (mark.kind === 'reading' && mark.pan === id && !withdrawn) readByHand(state, mark, at);
  }
}
