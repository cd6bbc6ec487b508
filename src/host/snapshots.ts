// Makes the snapshots that a screen is sent: of the live boil, of nothing running, and of a replay.
import { alarmHistory, startHistory } from '../core/boil/alarm-history.ts';
import type { Now } from '../protocol/messages.ts';
import type { BoilRun } from './boil-run.ts';
import { isoWithOffset } from './clock.ts';
import type { MachineClock } from './clock.ts';
import type { Listening } from './listening.ts';
import type { ReplayView } from './replay/replay-view.ts';

/** What is shown of the live boil, or of none, with what is listened to outside of it. */
export function liveNow(run: BoilRun | null, listening: Listening | null, machine: MachineClock): Now {
  const head = { kind: 'now', view: 'live', clock: isoWithOffset(machine.wallMs()) } as const;
  if (run === null) return { ...head, ...idle(), ...listening?.view() };
  const heard = run.isOver ? listening?.view() : undefined;
  return { ...head, mode: run.kind === 'practice' ? 'practice' : 'live', ...run.snapshot(), ...heard };
}

/** What is shown of a replay at the moment where it stands. */
export function replayNow(replay: ReplayView, machine: MachineClock): Now {
  return { kind: 'now', view: 'replay', mode: 'replay', clock: isoWithOffset(machine.wallMs()), ...replay.snapshot() };
}

function idle(): Omit<Now, 'kind' | 'view' | 'clock'> {
  return {
    mode: 'idle',
    boil: null,
    header: null,
    t: 0,
    speed: 1,
    ended: false,
    endedAt: null,
    readings: [],
    lastHeats: [],
    limits: [],
    water: { celsius: null, plusMinus: null, from: null },
    probes: [],
    ports: [],
    alarms: [],
    sound: { priority: null, silencedUntil: null },
    unanswered: null,
    history: alarmHistory(startHistory(), [], null),
    marks: [],
    next: { what: 'watch', pan: null, at: null, low: null, high: null, text: null },
    kept: null,
    pours: [],
    advice: [],
    unused: [],
    notices: [],
    powers: [],
    replay: null,
  };
}
