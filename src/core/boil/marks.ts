// What a person's mark does to the state of the boil, and how it is taken back.
import {
  addTo,
  brixOf,
  type Contents,
  type ContentsChange,
  contentsOfLitres,
  unknownContents,
} from '../pan/contents.ts';
import { THICKENING_BRIX } from '../pan/pan-reading.ts';
import { HOT_VOLUME } from '../pan/forecast.ts';
import { addPoint, waterPerSugar } from '../pan/evaporation-line.ts';
import { disturb, finishIsOver, learnFromVolume, panProbeMoved, type PanModel } from '../pan/pan-model.ts';
import {
  brixFromBaume,
  brixFromSpecificGravity,
  trueBrixFromHydrometer,
  trueBrixFromRefractometer,
} from '../physics/instruments.ts';
import { riseFromStrength } from '../physics/sugar-solution.ts';
import type { Mark } from './entries.ts';
import { type BoilState, type KeptMark, placeProbes } from './state.ts';

/** Sugar in sap where nobody measured it, °Bx (trade.md, extension services: maple about 2, birch about 1). */
const TYPICAL_SAP_BRIX = { maple: 2, birch: 1 } as const;

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
  const kept: KeptMark = { t, at, mark, withdrawn: false, changes: [], reminded: false };
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
      return density(state, mark, at, t);
    case 'flame':
      return flame(state.pans[mark.pan], mark.level);
    case 'reading':
      return readByHand(state.pans[mark.pan], mark.celsius, at);
    case 'move-probe':
      return moveProbe(state, mark, t);
    case 'water-check':
      return questionCheck(state, kept, mark, t);
    default:
  }
}

function topUp(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'top-up' }, at: number): void {
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

function transfer(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'transfer' }, at: number): void {
  const from = state.pans[mark.from];
  const to = state.pans[mark.to];
  if (from === undefined || to === undefined || from === to) return;
  const moved = takeOut(from, mark.from, kept, mark.litres, mark.all === true);
  pourIn(to, mark.to, kept, moved, at, from.contents.sugarGuessed);
}

function drawOff(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'draw-off' }): void {
  const pan = state.pans[mark.pan];
  if (pan === undefined) return;
  takeOut(pan, mark.pan, kept, mark.litres, mark.all === true, mark.brix);
}

function depth(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'depth' }): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  if (pan === undefined || design === undefined || design.areaM2 === null) return;
  const known = pan.brix ?? brixOf(pan.contents);
  const sap = known === null ? sapBrix(state, mark.pan) : { brix: known, guessed: pan.contents.sugarGuessed };
  const seen = contentsOfLitres((design.areaM2 * mark.mm) / HOT_VOLUME, sap.brix);
  if (seen === null) return;
  learnFromVolume(pan, design, seen.waterKg);
  const sugarGuessed = sap.guessed || (design.ceilingC === null && (known ?? 0) < THICKENING_BRIX);
  replace(pan, mark.pan, kept, { ...seen, sugarGuessed, nominalKg: 0, countedKg: 0 });
}

/** True strength that an instrument's reading means, °Bx; null when it is out of range. */
export function strengthOfDensity(mark: Mark & { kind: 'density' }): number | null {
  const read =
    mark.brix ??
    (mark.baume === undefined ? null : brixFromBaume(mark.baume)) ??
    (mark.sg === undefined ? null : brixFromSpecificGravity(mark.sg));
  if (read === null) return null;
  if (mark.instrument === 'refractometer') {
    const reference = mark.reference_celsius ?? 20;
    return trueBrixFromRefractometer({
      readingBrix: read,
      sampleCelsius: mark.celsius ?? reference,
      compensated: mark.compensated ?? false,
    });
  }
  const reference = mark.reference_celsius ?? 15.56;
  return trueBrixFromHydrometer({
    readingBrix: read,
    sampleCelsius: mark.celsius ?? reference,
    referenceCelsius: reference,
  });
}

/** An instrument further than this from the probe is questioned, not believed, °Bx. */
const WILD_BRIX = 6;
/** An instrument's own spread, as water per sugar is built from it, °Bx. */
const INSTRUMENT_BRIX = 0.5;
/** A density typed later than this after it was taken says nothing of the rise now, ms. */
const CORRECTS_WITHIN_MS = 10 * 60_000;

function density(state: BoilState, mark: Mark & { kind: 'density' }, at: number, t: number): void {
  const pan = state.pans[mark.pan];
  const design = state.designs[mark.pan];
  const brix = strengthOfDensity(mark);
  if (pan === undefined || design === undefined || brix === null || brix <= 0) return;
  pan.density = { brix, at };
  if (design.ceilingC !== null) {
    addPoint(pan.line, waterPerSugar(brix), (100 / (brix * brix)) * INSTRUMENT_BRIX);
    if (brix >= design.finishBrix) pan.reachedFinish = true;
    return;
  }
  if (pan.brix === null || pan.riseC === null || t - at > CORRECTS_WITHIN_MS) return;
  if (Math.abs(brix - pan.brix) > WILD_BRIX) {
    const sentence = `${design.name}: the instrument said ${brix.toFixed(1)} °Bx and the probe ${pan.brix.toFixed(1)}; please read it once more.`;
    state.notices.push({ t, sentence });
    return;
  }
  const pressure = state.water.pressureHpa ?? 1013.25;
  const meant = riseFromStrength(brix, design.shares, pressure);
  const said = riseFromStrength(pan.brix, design.shares, pressure);
  if (meant === null || said === null) return;
  pan.riseCorrectionC += meant - said;
  const { phase } = pan;
  disturb(pan, pan.disturbedAt);
  pan.phase = phase;
  pan.brix = brix;
}

function flame(pan: PanModel | undefined, level: number): void {
  if (pan === undefined) return;
  pan.flame = level;
  pan.off = level === 0 || pan.emptied;
  if (pan.off) finishIsOver(pan);
}

function readByHand(pan: PanModel | undefined, celsius: number, at: number): void {
  if (pan === undefined || (pan.byHand !== null && pan.byHand.at > at)) return;
  pan.byHand = { celsius, at };
}

/** A boiling check this far from the water point is no plain boiling water, °C: unchecked probes are off by 2 at most. */
const WILD_CHECK_C = 2.5;
/** A check that is what the pan itself reads, so far over the water point, was taken in the pan, °C. */
const SAME_AS_PAN_C = 0.4;

/** A check in syrup would move the water point up and every call with it: it is questioned, and acts on nothing. */
function questionCheck(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'water-check' }, t: number): void {
  const id = state.probePan[mark.probe] ?? null;
  const pan = id === null || state.designs[id]?.role === 'reference' ? undefined : state.pans[id];
  const there = pan?.track.blockValues.at(-1);
  const inThePan =
    there !== undefined && (pan?.brix ?? 0) >= THICKENING_BRIX && Math.abs(there - mark.celsius) < SAME_AS_PAN_C;
  const wild = state.water.celsius !== null && Math.abs(mark.celsius - state.water.celsius) > WILD_CHECK_C;
  if (!inThePan && !wild) return;
  kept.withdrawn = true;
  const why = inThePan
    ? 'this is what the probe reads in its pan'
    : `${mark.celsius.toFixed(1)} °C is far from where water boils here`;
  const sentence = `A check in boiling water needs plain water: ${why}, so it was left out. Take the probe out of the pan first.`;
  state.notices.push({ t, sentence });
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

function takeDensityBack(state: BoilState, id: string): void {
  const pan = state.pans[id];
  if (pan === undefined) return;
  pan.density = null;
  pan.riseCorrectionC = 0;
  const { phase } = pan;
  disturb(pan, pan.disturbedAt);
  pan.phase = phase;
}

function takeHandReadingBack(state: BoilState, id: string): void {
  const pan = state.pans[id];
  if (pan !== undefined) pan.byHand = null;
}

function refill(pan: PanModel | undefined): void {
  if (pan === undefined) return;
  pan.emptied = false;
  pan.off = pan.flame === 0;
}
