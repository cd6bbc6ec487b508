// What went into a pan, out of it and from one to another, as people note it.
import { addTo, brixOf, type Contents, contentsOfLitres, unknownContents } from '../pan/contents.ts';
import { learnFromVolume } from '../pan/evaporation.ts';
import { finishIsOver } from '../pan/finish.ts';
import { HOT_VOLUME } from '../pan/forecast.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { disturb, type PanModel } from '../pan/pan-state.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import type { Mark } from './entries.ts';
import type { BoilState, KeptMark } from './state.ts';

/** Sugar in sap where nobody measured it, °Bx (trade.md, extension services: maple about 2, birch about 1). */
const TYPICAL_SAP_BRIX = { maple: 2, birch: 1 } as const;

export function topUp(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'top-up' }, at: number): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined) return;
  const sap = mark.brix === undefined ? sapBrix(state, mark.pan) : { brix: mark.brix, guessed: false };
  pourIn(
    pan,
    mark.pan,
    kept,
    mark.litres === undefined ? null : contentsOfLitres(mark.litres, sap.brix),
    at,
    sap.guessed,
  );
}

/** Sap of a strength that was typed before in this boil, else what is usual for this kind. */
function sapBrix(state: BoilState, pan: string): { brix: number; guessed: boolean } {
  for (const kept of [...state.marks].reverse()) {
    if (kept.mark.kind === 'top-up' && kept.mark.brix !== undefined && !kept.withdrawn) {
      return { brix: kept.mark.brix, guessed: false };
    }
  }
  const birch = (state.designs[pan]?.shares.sucrose ?? 1) < 0.5;
  return { brix: birch ? TYPICAL_SAP_BRIX.birch : TYPICAL_SAP_BRIX.maple, guessed: true };
}

/** Something went into a pan; null where nobody knows how much, and then the contents are not known either. */
function pourIn(
  pan: PanModel,
  id: string,
  kept: KeptMark,
  poured: { sugarKg: number; waterKg: number } | null,
  at: number,
  guessed: boolean,
): void {
  if (at > pan.disturbedAt) disturb(pan, at);
  finishIsOver(pan);
  pan.pouredAt = Math.max(pan.pouredAt, at);
  const known = pan.contents.sugarKg !== null;
  const wasEmpty = pan.emptied || (!known && pan.phase === 'cold');
  pan.off = pan.off && !pan.emptied;
  pan.emptied = false;
  if (poured === null) replace(pan, id, kept, unknownContents());
  else if (known) change(pan, id, kept, poured.sugarKg, poured.waterKg);
  else if (wasEmpty) replace(pan, id, kept, { ...poured, sugarGuessed: guessed, nominalKg: 0, countedKg: 0 });
  // Emptied and filled anew, only what was poured counts.
  if (wasEmpty) pan.contents.sugarGuessed = guessed;
}

/** Contents change by so much, and the mark remembers by how much they really did. */
function change(pan: PanModel, id: string, kept: KeptMark, sugarKg: number, waterKg: number): void {
  const { evaporatedKg } = pan;
  kept.changes.push({ pan: id, ...addTo(pan.contents, sugarKg, waterKg), before: null, evaporatedKg });
}

/** Contents are something else from now on, and the mark remembers what they were. */
function replace(pan: PanModel, id: string, kept: KeptMark, contents: Contents): void {
  const { evaporatedKg, contents: before } = pan;
  const sugarKg = (contents.sugarKg ?? 0) - (before.sugarKg ?? 0);
  const waterKg = (contents.waterKg ?? 0) - (before.waterKg ?? 0);
  kept.changes.push({ pan: id, sugarKg, waterKg, before: { ...before }, evaporatedKg });
  pan.contents = contents;
}

/** What leaves a pan: all of it, or litres at its strength now; null where that is not known. */
function takeOut(pan: PanModel, id: string, kept: KeptMark, litres: number | undefined, all: boolean, brix?: number) {
  const strength = brix ?? pan.brix ?? brixOf(pan.contents);
  const { sugarKg, waterKg } = pan.contents;
  const whole = sugarKg === null || waterKg === null ? null : { sugarKg, waterKg };
  const part = litres === undefined || strength === null ? null : contentsOfLitres(litres, strength);
  const out = all ? (part ?? whole) : part;
  if (all) empty(pan);
  const gone = all ? whole : part;
  if (gone !== null && whole !== null) change(pan, id, kept, -gone.sugarKg, -gone.waterKg);
  return out;
}

function empty(pan: PanModel): void {
  pan.off = true;
  pan.emptied = true;
  finishIsOver(pan);
  pan.brix = null;
  pan.fit = null;
}

export function transfer(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'transfer' }, at: number): void {
  const from = state.pans[mark.from];
  const to = state.pans[mark.to];
  if (from === undefined || to === undefined || from === to) return;
  const moved = takeOut(from, mark.from, kept, mark.litres, mark.all === true);
  pourIn(to, mark.to, kept, moved, at, from.contents.sugarGuessed);
}

export function drawOff(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'draw-off' }): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined) return;
  takeOut(pan, mark.pan, kept, mark.litres, mark.all === true, mark.brix);
}

export function depth(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'depth' }): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  if (pan === undefined || design === undefined || design.vessel === null) return;
  const known = pan.brix ?? brixOf(pan.contents);
  const sap = known === null ? sapBrix(state, mark.pan) : { brix: known, guessed: pan.contents.sugarGuessed };
  const litres = litresAtDepth(design.vessel, mark.mm);
  const seen = litres === null ? null : contentsOfLitres(litres / HOT_VOLUME, sap.brix);
  if (seen === null) return;
  learnFromVolume(pan, design, seen.waterKg);
  const sugarGuessed = sap.guessed || (design.ceilingC === null && (known ?? 0) < THICKENING_BRIX);
  replace(pan, mark.pan, kept, { ...seen, sugarGuessed, nominalKg: 0, countedKg: 0 });
}
