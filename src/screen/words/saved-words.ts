// Whether other choices would have called a pot in time: when it burnt or nearly did, and how long before the first call came and would come.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { isBurnt } from '../../core/quantities/burnt.ts';
import type { Call, ReplayDifferences } from '../../protocol/replay-messages.ts';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { timeOfDay } from './clock.ts';
import { panName } from './pan-words.ts';

/** A call further before than this was about something else, ms. */
const BEFORE_MS = 2 * 3_600_000;

/** When the pot first stood so hot that its syrup was lost, else when it was called about to burn, as it was; ms of boil time. */
export function lossOf(found: ReplayDifferences, pan: string): { at: number; burnt: boolean } | null {
  const strip = found.pans.find((each) => each.pan === pan)?.was ?? null;
  const column = strip?.high.findIndex((celsius) => isBurnt(celsius)) ?? -1;
  if (column >= 0) return { at: column * found.columnMs, burnt: true };
  const risk = found.calls.was.find((call) => call.pan === pan && call.alarm === 'scorch-risk');
  return risk === undefined ? null : { at: risk.raised, burnt: false };
}

/** How long before the loss the first call of the pot came, s; null where none did. */
function firstBefore(calls: readonly Call[], pan: string, at: number): number | null {
  const before = calls.filter((call) => call.pan === pan && call.raised <= at && call.raised > at - BEFORE_MS);
  return before.length === 0 ? null : (at - Math.min(...before.map(({ raised }) => raised))) / 1000;
}

/**
 * "Front pot burnt at 18:09. The first call came 23 min before; with these choices 38 min before: 15 min more to get
 * there." null where the pot was never near burning.
 */
export function savedWords(found: ReplayDifferences, pan: string, now: Now): string | null {
  const loss = lossOf(found, pan);
  if (loss === null) return null;
  const names = { pan: panName(now.header, pan), time: timeOfDay(now, loss.at) };
  const lost = loss.burnt ? say('saved.burnt', names) : say('saved.nearly', names);
  const [was, would] = [found.calls.was, found.calls.would].map((calls) => firstBefore(calls, pan, loss.at));
  return `${lost} ${difference(was ?? null, would ?? null)}`;
}

function difference(was: number | null, would: number | null): string {
  if (was === null)
    return would === null ? say('saved.never') : say('saved.only_would', { would: lengthOfTime(would) });
  const before = lengthOfTime(was);
  if (would === null) return say('saved.only_was', { was: before });
  const more = would - was;
  if (Math.abs(more) < 1) return say('saved.same', { was: before });
  const values = { was: before, would: lengthOfTime(would), more: lengthOfTime(Math.abs(more)) };
  return more > 0 ? say('saved.more', values) : say('saved.less', values);
}
