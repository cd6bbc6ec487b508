// The stretch of boil time that a chart shows, and how drag, wheel and keys change it.
import { HOUR_MS } from '../../core/quantities/time.ts';

/** ms of boil time. `follows` keeps the right edge at now. */
export interface TimeWindow {
  from: number;
  to: number;
  follows: boolean;
}

const SHORTEST_MS = 120_000;

/** What is shown at least: a young boil grows into a quarter of an hour, one that is over ends at its end. */
const leastShown = (isOver: boolean): number => (isOver ? SHORTEST_MS : HOUR_MS / 4);

/** How far what is expected is shown beyond now, ms: never for longer than the past beside it, an hour at least. */
export function shownAhead(now: number, aheadEnd: number | null): number {
  return aheadEnd === null ? 0 : Math.max(0, Math.min(aheadEnd - now, Math.max(HOUR_MS, now)));
}

/**
 * The last hour, and of what is expected (ms beyond now) an hour at most; of a younger boil a quarter of an hour at least,
 * and no more of what is expected than was seen: it is named for what was.
 */
export function lastHour(now: number, ahead = 0, isOver = false): TimeWindow {
  const to = Math.max(now + Math.min(ahead, HOUR_MS, now), leastShown(isOver));
  return { from: Math.max(0, now - HOUR_MS), to, follows: true };
}

/** From the first reading until the end: now, or that of what is expected. */
export function wholeBoil(end: number, isOver = false): TimeWindow {
  return { from: 0, to: Math.max(end, leastShown(isOver)), follows: true };
}

function within(from: number, length: number, end: number, isOver: boolean): TimeWindow {
  const longest = Math.max(end, leastShown(isOver));
  const kept = Math.min(longest, Math.max(SHORTEST_MS, length));
  const start = Math.min(Math.max(0, from), longest - kept);
  return { from: start, to: start + kept, follows: start + kept >= end };
}

/** Longer (factor above 1) or shorter, keeping the moment under `anchor` (0 left edge to 1 right edge) in its place. */
export function zoomed(window: TimeWindow, factor: number, anchor: number, end: number, isOver = false): TimeWindow {
  const length = (window.to - window.from) * factor;
  const moment = window.from + (window.to - window.from) * anchor;
  const kept = Math.max(SHORTEST_MS, length);
  return within(moment - kept * anchor, length, end, isOver);
}

/** Later by a share of its own length (earlier when negative). */
export function moved(window: TimeWindow, share: number, end: number, isOver = false): TimeWindow {
  const length = window.to - window.from;
  return within(window.from + length * share, length, end, isOver);
}

/** The window after boil time has reached `end`: one that follows keeps its start when it shows the whole. */
export function followed(window: TimeWindow, end: number, whole: boolean): TimeWindow {
  if (!window.follows) return window;
  if (whole) return wholeBoil(end);
  const length = window.to - window.from;
  const to = Math.max(end, length);
  return { from: to - length, to, follows: true };
}

/** Moments for the time axis: round steps of wall-clock time, at most `most` of them. */
export function tickMoments(fromWallMs: number, toWallMs: number, most: number): number[] {
  const steps = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440].map((minutes) => minutes * 60_000);
  const step = steps.find((each) => (toWallMs - fromWallMs) / each <= most) ?? 1440 * 60_000;
  const moments: number[] = [];
  for (let at = Math.ceil(fromWallMs / step) * step; at <= toWallMs; at += step) moments.push(at);
  return moments;
}
