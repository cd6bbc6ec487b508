// What went into a pan, out of it and from one to another, as people note it, told to the courses of the pans.
import { COLD_C } from '../pan/course-time.ts';
import { type Event, letHappen, takeOutOfPast } from '../pan/timeline.ts';
import { formatTyped } from '../quantities/format.ts';
import { rimMm } from '../quantities/rim.ts';
import { litresAtDepth } from '../physics/vessel.ts';
import type { Mark } from './entries.ts';
import { isMeant } from './left-out.ts';
import { sapBrix } from './sap-strength.ts';
import { boilingOf } from './settings.ts';
import { pouredNoted } from './unmarked-pours.ts';
import type { BoilState, KeptMark } from './state.ts';

/** Lets marks happen at their own time, and keeps what they did, so that it can be taken back at any time. */
export function happenByMark(state: BoilState, kept: KeptMark, events: Event[]): void {
  letHappen(boilingOf(state), events);
  kept.changes = events.flatMap(({ pan, one }) =>
    'added' in one && one.added !== null && one.added !== undefined ? [{ pan, ...one.added }] : [],
  );
}

const orderOf = (state: BoilState, kept: KeptMark): number => state.marks.indexOf(kept);

/** The name by which the courses of the pans know what a mark did, so that it can be taken back. */
export const keyOf = (state: BoilState, kept: KeptMark): string => String(state.marks.indexOf(kept));

/** Somebody poured into a pan; one that the boil does not have is left alone, as in all of these. */
export function topUp(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'top-up' }): void {
  if (!(mark.pan in state.pans)) return;
  pouredNoted(state, mark.pan, kept.at);
  happenByMark(state, kept, [pourOf(state, kept, mark)]);
}

/** What a noted pour does; `share` is to which its litres are known where that is not as usual. */
export function pourOf(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'top-up' }, share?: number): Event {
  const sap = mark.brix === undefined ? sapBrix(state, mark.pan) : { brix: mark.brix, guessed: false };
  return {
    pan: mark.pan,
    one: {
      t: kept.at,
      order: orderOf(state, kept),
      what: 'pour',
      key: keyOf(state, kept),
      litres: mark.litres ?? null,
      ...(share !== undefined && { share }),
      brix: sap.brix,
      guessed: sap.guessed,
      celsius: mark.celsius ?? COLD_C,
      added: null,
    },
  };
}

/**
 * Somebody poured from one pan into another: what leaves the one arrives in the other, with all that is known of it.
 */
export function transfer(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'transfer' }): void {
  if (!(mark.from in state.pans && mark.to in state.pans) || mark.from === mark.to) return;
  const when = { t: kept.at, order: orderOf(state, kept), key: keyOf(state, kept) };
  pouredNoted(state, mark.to, kept.at);
  happenByMark(state, kept, [
    {
      pan: mark.from,
      one: { ...when, what: 'take', litres: mark.litres ?? null, all: mark.all === true, brix: null, added: null },
    },
    { pan: mark.to, one: { ...when, order: when.order + 0.5, what: 'receive', added: null, moved: null } },
  ]);
}

/** Somebody took out of a pan, or emptied it. */
export function drawOff(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'draw-off' }): void {
  happenByMark(state, kept, [
    {
      pan: mark.pan,
      one: {
        t: kept.at,
        order: orderOf(state, kept),
        what: 'take',
        key: keyOf(state, kept),
        litres: mark.litres ?? null,
        all: mark.all === true,
        brix: mark.brix ?? null,
        added: null,
      },
    },
  ]);
}

/** Somebody set the flame under a pan, 0 (off) to 1 (full). */
export function flame(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'flame' }): void {
  const one = {
    t: kept.at,
    order: orderOf(state, kept),
    what: 'flame',
    key: keyOf(state, kept),
    level: mark.level,
  } as const;
  happenByMark(state, kept, [{ pan: mark.pan, one }]);
}

/** Whether a mark is young enough to be run again without it. */
export function inReach(state: BoilState, kept: KeptMark): boolean {
  const key = keyOf(state, kept);
  return Object.values(state.pans).some(({ past }) => past.happened.some((one) => 'key' in one && one.key === key));
}

/** The flame is at a level from now on, whatever was noted. */
export function setFlame(state: BoilState, id: string, level: number, t: number): void {
  const course = state.pans[id]?.course;
  if (course === undefined) return;
  const one = { t: Math.max(t, course.t), order: state.marks.length, what: 'flame', key: '', level } as const;
  letHappen(boilingOf(state), [{ pan: id, one }]);
}

/**
 * A ruler in a boiling pan is read to this, mm, and the surface heaves by this share of its depth: a few millimetres in a
 * flat pan, half a centimetre in a pot (common practice; no source). The vessel's own size does not come to it: what is
 * noted as a depth is shown as one by the same size.
 */
const STICK_MM = 3;
const HEAVES_SHARE = 0.02;
/** Whoever measures a few millimetres reads them finer: a depth that counts is known to this share (judgement), under which amounts are said. */
const SHALLOW_SHARE = 0.25;

/**
 * Somebody measured a depth, mm. It tells litres by the vessel; without one, or where the vessel holds nothing there,
 * it tells nothing.
 */
export function depth(state: BoilState, kept: KeptMark, mark: Mark & { kind: 'depth' }): void {
  const vessel = state.designs[mark.pan]?.vessel ?? null;
  const { name } = state.designs[mark.pan] ?? { name: mark.pan };
  if (mark.mm === 0 && isUntold(state, mark.pan)) return foundEmpty(state, kept, mark.pan);
  const meant = isMeant(state, kept);
  const rim = vessel === null ? null : rimMm(vessel);
  if (rim !== null && mark.mm > rim + STICK_MM && !meant) {
    kept.questioned = true;
    kept.doubt = `${name}: ${formatTyped(mark.mm, 0)} mm is deeper than the vessel itself, which is ${rim.toFixed(0)} mm high.`;
    return;
  }
  kept.doubt = `${name}: ${formatTyped(mark.mm, 0)} mm is far from what went in and boiled away.`;
  const litres = vessel === null ? null : litresAtDepth(vessel, mark.mm);
  const less = vessel === null ? null : litresAtDepth(vessel, Math.max(0, mark.mm - STICK_MM));
  if (litres === null || less === null || litres <= 0) return;
  const share = Math.min(SHALLOW_SHARE, Math.hypot(1 - less / litres, HEAVES_SHARE));
  const one = {
    t: kept.at,
    order: orderOf(state, kept),
    what: 'volume' as const,
    key: keyOf(state, kept),
    litres,
    share,
    swell: null,
    meant,
    doubted: false,
    counted: null,
    taken: null,
  };
  happenByMark(state, kept, [{ pan: mark.pan, one }]);
}

/** Nothing was ever poured into it by what was noted, and nothing shows a boil in it. */
function isUntold({ pans }: BoilState, id: string): boolean {
  const course = pans[id]?.course;
  return course !== undefined && !course.told && course.phase === 'cold' && !course.reachedFinish;
}

/** A pot that stands empty on purpose: nothing is asked of it until something is in it (see `isEmptyNoMore`). */
function foundEmpty(state: BoilState, kept: KeptMark, pan: string): void {
  const when = { t: kept.at, order: orderOf(state, kept), key: keyOf(state, kept) };
  const one = { ...when, what: 'take', litres: null, all: true, brix: null, added: null } as const;
  happenByMark(state, kept, [{ pan, one }]);
}

/** Takes back what a mark did: run again without it, or, when that is too long ago, take out what it added. */
export function takeBack(state: BoilState, kept: KeptMark, t: number): void {
  const boiling = boilingOf(state);
  if (takeOutOfPast(boiling, keyOf(state, kept))) return;
  for (const { pan, sugarKg, waterKg } of kept.changes) {
    const course = state.pans[pan]?.course;
    if (course === undefined) continue;
    const one = {
      t: Math.max(t, course.t),
      order: state.marks.length,
      what: 'undo',
      key: '',
      added: { sugarKg, waterKg },
    } as const;
    letHappen(boiling, [{ pan, one }]);
  }
}
