// The last half hour of every pan, kept so that what is noted late, or taken back, ends as if it had been known in time.
import { copyCourse, type Course, type Happening, type Moved } from './course.ts';
import { happen } from './course-happens.ts';
import { passTo, type Setting } from './course-time.ts';

/** How the courses stood, and what has happened since the oldest of them, in order. */
export interface Past {
  stood: Course[];
  happened: Happening[];
}

/** A course is kept so often, ms, and so many of them: half an hour, under 100 KB a pan. */
const KEEP_EVERY_MS = 240_000;
const KEPT = 8;

/** Blocks come after all that somebody noted in the same moment, and what is known anew of the water after them. */
export const BLOCK_ORDER = 9e9;
export const BASE_ORDER = 9.5e9;

/** A pan as it can be run again. */
export interface Runnable {
  course: Course;
  past: Past;
}

/** All pans of a boil with what their courses need to know: a pour from one to the other ties them together. */
export interface Boiling {
  pans: Record<string, Runnable>;
  settingOf: (pan: string) => Setting;
}

export interface Event {
  pan: string;
  one: Happening;
}

/** Nothing has happened yet. */
export const startPast = (): Past => ({ stood: [], happened: [] });

/** Something happened now or, within the last half hour, before: then everything since is run again. */
export function letHappen(boiling: Boiling, events: readonly Event[]): void {
  const known = events.filter(({ pan }) => pan in boiling.pans);
  const late = known.filter(({ pan, one }) => one.t < boiling.pans[pan]!.course.t);
  for (const { pan } of known) keepFirst(boiling.pans[pan]!);
  if (late.length > 0) {
    for (const { pan, one } of known) insert(boiling.pans[pan]!.past, one);
    runAgain(
      boiling,
      known.map(({ pan }) => pan),
      Math.min(...late.map(({ one }) => one.t)),
    );
    return;
  }
  const moved = new Map<string, Moved | null>();
  for (const { pan, one } of known) happenNow(boiling.pans[pan]!, boiling.settingOf(pan), one, moved);
}

const NOTHING_MOVED = new Map<string, Moved | null>();

/** One thing that happens at or after the pan's own moment. */
export function happenNow(
  pan: Runnable,
  setting: Setting,
  one: Happening,
  moved: Map<string, Moved | null> = NOTHING_MOVED,
): void {
  keepFirst(pan);
  pan.past.happened.push(one);
  happen(pan.course, setting, one, moved);
  if (one.what === 'block') keepNow(pan, KEEP_EVERY_MS);
  // Where no thermometer hangs the weather goes on, and may happen twice with no harm when it is run again.
  else if (one.what === 'weather') keepNow(pan, 2 * KEEP_EVERY_MS);
}

/** The pan before anything happened to it; nothing has changed in it since the boil began, so it stands for then. */
function keepFirst({ course, past }: Runnable): void {
  if (past.stood.length > 0) return;
  past.stood.push({ ...copyCourse(course), t: course.belief === null ? -1 : course.t - 1 });
}

function keepNow({ course, past }: Runnable, everyMs: number): void {
  if (course.t - past.stood.at(-1)!.t < everyMs) return;
  past.stood.push(copyCourse(course));
  if (past.stood.length <= KEPT) return;
  past.stood.splice(0, past.stood.length - KEPT);
  const oldest = past.stood[0]!.t;
  past.happened = past.happened.filter(({ t, order }) => t > oldest || (t === oldest && order > BLOCK_ORDER));
}

/** In its place; what is older than all that is kept counts from there on. */
function insert(past: Past, one: Happening): void {
  const oldest = past.stood[0]?.t ?? -1;
  if (one.t <= oldest) one.t = oldest + 1;
  const after = past.happened.findIndex((other) => other.t > one.t || (other.t === one.t && other.order > one.order));
  past.happened.splice(after < 0 ? past.happened.length : after, 0, one);
}

/** Takes what a mark did out of the last half hour; false where it is older than that. */
export function takeOutOfPast(boiling: Boiling, key: string): boolean {
  let from = Infinity;
  const pans: string[] = [];
  for (const [id, { past }] of Object.entries(boiling.pans)) {
    const gone = past.happened.filter((one) => 'key' in one && one.key === key);
    for (const one of gone) from = Math.min(from, one.t);
    if (gone.length === 0) continue;
    past.happened = past.happened.filter((one) => !gone.includes(one));
    pans.push(id);
  }
  if (from === Infinity) return false;
  runAgain(boiling, pans, from);
  return true;
}

/** The pans, and all that were poured into from them since a moment (ms), by way of others too: their contents are no other. */
function withFollowing({ pans }: Boiling, first: readonly string[], from: number): Set<string> {
  const ids = new Set(first);
  for (const id of ids) {
    for (const one of pans[id]!.past.happened) {
      if (one.what !== 'take' || one.t < from) continue;
      for (const [other, { past }] of Object.entries(pans)) {
        if (past.happened.some((into) => into.what === 'receive' && into.key === one.key)) ids.add(other);
      }
    }
  }
  return ids;
}

/** Runs pans, and those that follow from them, again from before a moment, ms, in the order in which things happened. */
export function runAgain(boiling: Boiling, changed: readonly string[], from: number): void {
  const ends = new Map<string, number>();
  const all: Event[] = [];
  for (const id of withFollowing(boiling, changed, from)) {
    const pan = boiling.pans[id]!;
    ends.set(id, pan.course.t);
    const last = pan.past.stood.findLastIndex(({ t }) => t < from);
    const stood = pan.past.stood[Math.max(0, last)];
    if (stood === undefined) continue;
    pan.past.stood.splice(Math.max(0, last) + 1);
    pan.course = copyCourse(stood);
    const isLater = ({ t, order }: Happening): boolean => t > stood.t || (t === stood.t && order > BLOCK_ORDER);
    const again = pan.past.happened.filter(isLater);
    pan.past.happened = pan.past.happened.filter((one) => !isLater(one));
    all.push(...again.map((one) => ({ pan: id, one })));
  }
  all.sort((a, b) => a.one.t - b.one.t || a.one.order - b.one.order);
  const moved = new Map<string, Moved | null>();
  for (const { pan, one } of all) happenNow(boiling.pans[pan]!, boiling.settingOf(pan), one, moved);
  for (const [id, t] of ends) passTo(boiling.pans[id]!.course, boiling.settingOf(id), t);
}
