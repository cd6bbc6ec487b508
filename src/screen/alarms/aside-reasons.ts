// The reasons that are offered for putting an alarm aside.
import type { AlarmView } from '../client/types.ts';
import { type MessageKey, say } from '../language/say.ts';

const STAND_BESIDE: MessageKey = 'aside.beside';
const REASONS: readonly MessageKey[] = [STAND_BESIDE, 'aside.probe', 'aside.somebody', 'aside.can_wait'];

/** The reason that is likeliest for an alarm stands first and is chosen; where no probe is, none is being changed. */
export function reasonsFor(alarm: AlarmView['alarm'], hasProbes: boolean): string[] {
  const likeliest: Partial<Record<AlarmView['alarm'], MessageKey>> = {
    'probe-lost': 'aside.probe',
    'probe-suspect': 'aside.probe',
    'port-lost': 'aside.board',
    'no-sound': 'aside.in_sight',
    'power-low': 'aside.plugged',
    'not-recording': 'aside.disk',
    reminder: 'aside.not_now',
  };
  const first = likeliest[alarm] ?? STAND_BESIDE;
  return [first, ...REASONS.filter((reason) => reason !== first && (hasProbes || reason !== 'aside.probe'))].map(
    (reason) => say(reason),
  );
}
