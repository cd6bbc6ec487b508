// What a person's mark does to the state of the boil, and how it is taken back.
import { addTo, type ContentsChange, unknownContents } from '../pan/contents.ts';
import { finishIsOver } from '../pan/finish.ts';
import { panProbeMoved } from '../pan/pan-model.ts';
import { beginAnew, type PanModel } from '../pan/pan-state.ts';
import type { Mark } from './entries.ts';
import { depth, drawOff, topUp, transfer } from './pours.ts';
import { density } from './density-noted.ts';
import { readInstrument } from '../physics/instruments.ts';
import { readByHand, waterCheck } from './readings-noted.ts';
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
    reminded: false,
  };
  state.marks.push(kept);
  act(state, kept, at, t);
}

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
      return topUp(state, kept, mark, at);
    case 'transfer':
      return transfer(state, kept, mark, at);
    case 'draw-off':
      return drawOff(state, kept, mark);
    case 'depth':
      return depth(state, kept, mark);
    case 'density':
      return density(state, kept, mark);
    case 'flame':
      return flame(state.pans[mark.pan], mark.level);
    case 'reading':
      return readByHand(state, mark, at);
    case 'move-probe':
      return moveProbe(state, mark, t);
    case 'water-check':
      return waterCheck(state, kept, mark);
    default:
  }
}

function flame(pan: PanModel | undefined, level: number): void {
  if (pan === undefined) return;
  pan.flame = level;
  pan.off = level === 0 || pan.emptied;
  if (pan.off) finishIsOver(pan);
}

function moveProbe(state: BoilState, mark: Mark & { kind: 'move-probe' }, t: number): void {
  if (!(mark.probe in state.probePan) || (mark.pan !== null && !(mark.pan in state.pans))) return;
  const left = state.probePan[mark.probe] ?? null;
  if (left === mark.pan) return;
  state.probePan[mark.probe] = mark.pan;
  placeProbes(state);
  for (const id of [left, mark.pan]) {
    const pan = id === null ? undefined : state.pans[id];
    if (pan !== undefined) panProbeMoved(pan, t);
  }
}

/** Takes a mark back: its changes are undone, and what it set goes back to what the marks before it said. */
function withdraw(state: BoilState, id: string, t: number): void {
  const kept = state.marks.find((one) => one.mark.id === id && !one.withdrawn);
  if (kept === undefined) return;
  kept.withdrawn = true;
  for (const one of kept.changes) undo(state, one);
  const { mark } = kept;
  if (mark.kind === 'flame') flame(state.pans[mark.pan], lastFlame(state, mark.pan));
  if (mark.kind === 'density') takeDensityBack(state, mark.pan);
  if (mark.kind === 'move-probe')
    moveProbe(state, { kind: 'move-probe', probe: mark.probe, pan: lastPlace(state, mark.probe) }, t);
  if (mark.kind === 'reading') takeHandReadingBack(state, mark.pan);
  if ((mark.kind === 'draw-off' || mark.kind === 'transfer') && mark.all === true)
    refill(state.pans[mark.kind === 'transfer' ? mark.from : mark.pan]);
}

/** The contents as they would be without this change: what came after it stays, and so does what boiled away. */
function undo(state: BoilState, undone: ContentsChange): void {
  const pan = state.pans[undone.pan];
  if (pan === undefined) return;
  if (undone.before === null) {
    addTo(pan.contents, -undone.sugarKg, -undone.waterKg);
    return;
  }
  const later = changesAfter(state, undone);
  if (later.some((one) => one.before !== null)) return;
  const sugarKg = later.reduce((sum, one) => sum + one.sugarKg, 0);
  const waterKg = later.reduce((sum, one) => sum + one.waterKg, 0);
  const boiledAway = pan.evaporatedKg - undone.evaporatedKg;
  const wasKnown = undone.before.sugarKg !== null;
  if (!wasKnown && sugarKg <= 0) pan.contents = unknownContents();
  else {
    pan.contents = { ...undone.before, sugarKg: undone.before.sugarKg ?? 0, waterKg: undone.before.waterKg ?? 0 };
    addTo(pan.contents, sugarKg, waterKg - boiledAway);
  }
}

/** Changes of the same pan by marks that stand, made after this one. */
function changesAfter(state: BoilState, undone: ContentsChange): ContentsChange[] {
  const all = state.marks.flatMap((kept) => (kept.withdrawn ? [] : kept.changes));
  const from = state.marks.findIndex((kept) => kept.changes.includes(undone));
  const before = state.marks.slice(0, from + 1).flatMap((kept) => kept.changes);
  return all.filter((one) => one.pan === undone.pan && !before.includes(one));
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

/** Below a boil the density readings that stand make the strength; else the joint estimate is weighed anew without it. */
function takeDensityBack(state: BoilState, id: string): void {
  const pan = state.pans[id];
  if (pan === undefined) return;
  const before = standing(state, 'density', (mark) => mark.pan === id);
  const read = before === null ? null : readInstrument(before, state.designs[id]!.shares);
  pan.densityBrix = read?.brix ?? null;
  beginAnew(pan);
}

function takeHandReadingBack(state: BoilState, id: string): void {
  const pan = state.pans[id];
  if (pan === undefined) return;
  pan.byHand = null;
  for (const { mark, at, withdrawn } of state.marks) {
    if (mark.kind === 'reading' && mark.pan === id && !withdrawn) readByHand(state, mark, at);
  }
}

function refill(pan: PanModel | undefined): void {
  if (pan === undefined) return;
  pan.emptied = false;
  pan.off = pan.flame === 0;
}
