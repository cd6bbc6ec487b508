// Runs a whole kept boil through the fold at once, for what it calls and how strong each pan was believed to be.
import type { AlarmTransition } from '../../core/alarms/alarm.ts';
import type { Entry, Header } from '../../core/boil/entries.ts';
import { startBoil } from '../../core/boil/fold.ts';
import type { BoilState } from '../../core/boil/fold.ts';
import type { StrengthSeen } from '../../core/tuning/truth.ts';
import { foldTools } from '../fold-tools.ts';
import { Folding } from '../folding.ts';

export interface RunThrough {
  state: BoilState;
  /** What a replay prints as alarms: raised, escalated, cleared. */
  calls: AlarmTransition[];
  /** By pan, in order of t; empty where no interval was asked for. */
  seen: Map<string, StrengthSeen[]>;
}

const CONDITION_EVENTS: readonly string[] = ['raised', 'escalated', 'cleared'];

/** `lookEveryMs` is how often the strengths are looked at, ms of boil time; null for never. The same calls as `replay`. */
export function runThrough(header: Header, entries: readonly Entry[], lookEveryMs: number | null): RunThrough {
  const calls: AlarmTransition[] = [];
  const seen = new Map<string, StrengthSeen[]>();
  const folding = new Folding(
    startBoil(header),
    foldTools,
    {
      alarm: (transition) => void (CONDITION_EVENTS.includes(transition.event) && calls.push(transition)),
      readings: (t, readings) => {
        for (const { pan, brix } of readings) {
          if (brix === null) continue;
          const looks = seen.get(pan) ?? [];
          if (looks.length === 0) seen.set(pan, looks);
          looks.push({ t, brix });
        }
      },
    },
    lookEveryMs,
  );
  for (const entry of entries) folding.take(entry, '');
  const last = entries.at(-1);
  if (last !== undefined) folding.reach(last.t);
  return { state: folding.state, calls, seen };
}
