// Whether a check in boiling water is due: none today, or the air pressure has moved since the last one.
import type { BoilState } from '../../core/boil/state.ts';
import type { KeptProbe } from '../../protocol/probe-setup-messages.ts';
import { errorOf, lastCheckOf } from './kept-probes.ts';

/** A water point that moved by so much since the check makes it worth another, °C: 4 hPa (common practice). */
const FRONT_C = 0.11;

/**
 * A sentence, or null where none is due. `boil` is the boil that runs; `wall` is now, ISO 8601 with offset. Whoever has no
 * probe is not asked.
 */
export function checkDue(kept: readonly KeptProbe[], boil: BoilState | null, wall: string): string | null {
  const own = boil === null ? [] : Object.keys(boil.probes);
  if (boil !== null && own.length === 0) return null;
  if (boil === null && kept.length === 0) return null;
  const checks = (boil?.water.evidence ?? []).filter(
    (seen) => (seen.kind === 'check' && seen.probe !== null) || seen.kind === 'pot',
  );
  const last = checks.at(-1);
  if (last === undefined) {
    const today = kept.some(
      (one) => errorOf(one.checks) !== null && lastCheckOf(one)?.slice(0, 10) === wall.slice(0, 10),
    );
    return today
      ? null
      : 'No probe has been checked in boiling water today. It takes a few minutes, and the finish is only as sure as that check.';
  }
  const moved = frontSince(boil!, last.at);
  if (moved === null) return null;
  return `The air pressure has moved since the last check: water now boils ${Math.abs(moved).toFixed(1)} °C ${moved > 0 ? 'higher' : 'lower'}. Check a probe in boiling water again.`;
}

/** How far the pressures noted since `at` (ms) moved the water point from those before it, °C; null for no news. */
function frontSince({ water }: BoilState, at: number): number | null {
  const pressures = water.evidence.filter(({ kind }) => kind === 'pressure');
  const before = pressures.findLast((one) => one.at <= at);
  const after = pressures.findLast((one) => one.at > at);
  if (before === undefined || after === undefined) return null;
  const moved = after.celsius - before.celsius;
  return Math.abs(moved) < FRONT_C ? null : moved;
}
