// Amounts that the thermometer contradicts: a noted pour that cooled its pan like half or twice as much is asked about.
import { LITRES_SHARE } from '../pan/course-mix.ts';
import { fullKgPerS, beliefOf } from '../pan/course-time.ts';
import { FIRE, LEVEL, SIZE, varianceOf } from '../pan/filter/belief.ts';
import { massOfLitres, steamForWarming } from '../pan/filter/liquid.ts';
import { COLD_C } from '../pan/course-time.ts';
import { median } from '../pan/robust-statistics.ts';
import { NOTED_AFTER_MS, NOTED_BEFORE_MS } from '../pan/pours-seen.ts';
import { takeOutOfPast } from '../pan/timeline.ts';
import type { Happening } from '../pan/course.ts';
import type { Mark } from './entries.ts';
import { happenByMark, keyOf, pourOf, takeBack } from './pours.ts';
import { boilingOf, settingOf } from './settings.ts';
import type { BoilState, KeptMark } from './state.ts';

/** A noted amount is asked about where the heat that it took is so many standard deviations from it. */
const DOUBTED_SIGMAS = 3;
/** What a fire gives and loses while it warms something cold is known to this share, beside its own. */
const HEAT_SHARE = 0.15;
/** When it fell and when it boiled again are seen to this, s; a boil is believed so much late, s. */
const SEEN_SIGMA_S = 20;
const BELIEVED_LATE_S = 20;
/** Warm sap hardly shows, °C; nor does a dip of less, °C. */
const WARM_C = 50;
const DIP_C = 0.8;
/** It boiled before, if these blocks did, ms and °C. */
const BEFORE_MS = 60_000;
const BOILED_C = -0.6;
const LEAST_BEFORE = 6;
/** Whoever was asked and says an amount again, within this, ms, alike to this share, means it. */
const AGAIN_WITHIN_MS = 20 * 60_000;
const ALIKE_SHARE = 0.2;

type TopUp = Mark & { kind: 'top-up'; litres: number };

/** Holds each noted pour against its dip, once its pan boils again. Call after the pans were stepped to t (ms). */
export function questionAmounts(state: BoilState, t: number): void {
  const { unweighed } = state.standing;
  if (unweighed.length === 0) return;
  for (const place of unweighed) {
    const kept = state.marks[place]!;
    if (kept.mark.kind !== 'top-up' || kept.weighed) continue;
    const { litres, sure, corrects } = kept.mark;
    // Who corrects a note, or says that it is so, has thought about it.
    const isMeant = sure === true || corrects !== undefined;
    if (litres === undefined || isMeant || t - kept.at > AGAIN_WITHIN_MS) kept.weighed = true;
    else weigh(state, kept, { ...kept.mark, litres }, t);
  }
  state.standing.unweighed = unweighed.filter((place) => !state.marks[place]!.weighed);
}

function weigh(state: BoilState, kept: KeptMark, mark: TopUp, t: number): void {
  const seen = litresOfDip(state, kept, mark);
  if (seen === null) return;
  kept.weighed = true;
  const off = Math.log(mark.litres / seen.litres);
  if (Math.abs(off) <= DOUBTED_SIGMAS * Math.hypot(LITRES_SHARE, seen.share)) return;
  kept.questioned = true;
  kept.seenAs = seen.litres;
  kept.countsAs = seen.litres * Math.exp(off * shareOfNote(off, seen.share));
  takeOutOfPast(boilingOf(state), keyOf(state, kept));
  happenByMark(state, kept, [pourOf(state, kept, { ...mark, litres: kept.countsAs }, seen.share)]);
  const { name } = state.designs[mark.pan]!;
  const [noted, cooled, counts] = [`${mark.litres} L`, `${seen.litres.toFixed(1)} L`, `${kept.countsAs.toFixed(1)} L`];
  const sentence = `${name}: you noted ${noted}, but it cooled as by about ${cooled}. If ${noted} is right, note it once more: that counts. Until then it counts as about ${counts}.`;
  kept.doubt = sentence;
  state.notices.push({ t, sentence });
}

/** How much of a contradicted note still counts, its error being as large as it must be for the two to agree: less, the further off it is. */
function shareOfNote(off: number, seenShare: number): number {
  const notedShare = Math.abs(off) / DOUBTED_SIGMAS;
  return seenShare ** 2 / (seenShare ** 2 + notedShare ** 2);
}

/** What the fire had to warm until it boiled again, as litres of such sap; null while or where that cannot be told. */
function litresOfDip(state: BoilState, kept: KeptMark, mark: TopUp): { litres: number; share: number } | null {
  const celsius = mark.celsius ?? COLD_C;
  const pan = state.pans[mark.pan];
  if (pan === undefined || celsius > WARM_C) return null;
  const { course } = pan;
  if (course.phase !== 'boiling' || course.belief === null || course.boilingFrom <= kept.at - NOTED_BEFORE_MS)
    return null;
  if (hasCompany(state, kept, mark.pan)) return null;
  const fellAt = fallNear(state, mark.pan, kept.at);
  if (fellAt === null || course.boilingFrom <= fellAt) return null;
  const setting = settingOf(state, mark.pan);
  const belief = beliefOf(course, setting);
  const seconds = (course.boilingFrom - fellAt) / 1000 - BELIEVED_LATE_S;
  if (seconds <= 2 * SEEN_SIGMA_S || course.flame <= 0) return null;
  const brix = mark.brix ?? setting.sapBrix;
  const warming = steamForWarming(brix, celsius, setting.around.waterC ?? 100);
  const fire = new Array<number>(SIZE).fill(0);
  fire[LEVEL] = fire[FIRE] = 1;
  return {
    litres: (fullKgPerS(belief) * course.flame * seconds) / warming / massOfLitres(1, brix),
    share: Math.hypot(Math.sqrt(varianceOf(belief, fire)), SEEN_SIGMA_S / seconds, HEAT_SHARE),
  };
}

/** Another change of the same pan near it: one dip is then of both. */
function hasCompany(state: BoilState, kept: KeptMark, pan: string): boolean {
  return state.marks.some(({ mark, at, withdrawn }, i) => {
    if (withdrawn || state.marks[i] === kept || Math.abs(at - kept.at) > NOTED_BEFORE_MS + NOTED_AFTER_MS) return false;
    if (mark.kind === 'transfer') return mark.from === pan || mark.to === pan;
    return (mark.kind === 'top-up' || mark.kind === 'draw-off' || mark.kind === 'flame') && mark.pan === pan;
  });
}

/** When a boiling pan fell, near a noted pour, ms; null where it did not boil before or did not fall. */
function fallNear(state: BoilState, pan: string, at: number): number | null {
  const blocks = blocksBetween(state, pan, at - NOTED_BEFORE_MS - BEFORE_MS, at + NOTED_AFTER_MS);
  let from = 0;
  for (const [i, { t, riseC }] of blocks.entries()) {
    while (blocks[from]!.t < t - BEFORE_MS) from += 1;
    if (t <= at - NOTED_BEFORE_MS || i - from < LEAST_BEFORE) continue;
    const usual = median(blocks.slice(from, i).map((one) => one.riseC));
    if (usual >= BOILED_C && riseC < usual - DIP_C) return t;
  }
  return null;
}

type Block = Extract<Happening, { what: 'block' }>;

/** A pan's blocks from `from` up to before `to` (ms), in order: what happened stands in order of its time. */
function blocksBetween(state: BoilState, pan: string, from: number, to: number): Block[] {
  const { happened } = state.pans[pan]!.past;
  const blocks: Block[] = [];
  for (let i = happened.length - 1; i >= 0 && happened[i]!.t >= from; i -= 1) {
    const one = happened[i]!;
    if (one.what === 'block' && one.t < to) blocks.push(one);
  }
  return blocks.reverse();
}

/** Somebody who was asked how much it was says it again: the first word counts no more. */
export function answersAmount(state: BoilState, { mark, at, t }: KeptMark): KeptMark | null {
  if (mark.kind !== 'top-up' || mark.litres === undefined) return null;
  const { pan, litres } = mark;
  const asked = state.marks.findLast(
    (one) => one.countsAs !== null && !one.withdrawn && one.mark.kind === 'top-up' && one.mark.pan === pan,
  );
  if (asked === undefined || t - asked.t > AGAIN_WITHIN_MS) return null;
  const typedAgain = mark.happened === undefined || Math.abs(at - asked.at) < NOTED_BEFORE_MS;
  const said = [asked.countsAs!, asked.seenAs!, (asked.mark as TopUp).litres];
  return typedAgain && said.some((one) => Math.abs(Math.log(litres / one)) < ALIKE_SHARE) ? asked : null;
}

/** The first word is taken out, and the new one stands in its time. */
export function takeAnswer(state: BoilState, asked: KeptMark, kept: KeptMark): void {
  takeBack(state, asked, kept.t);
  asked.countsAs = null;
  asked.seenAs = null;
  kept.at = asked.at;
  kept.weighed = true;
}
