// What a host says about invented pans at Tarn Hollow, as far as the window looks at it.
import { alarmHistory, startHistory } from '../../src/core/boil/alarm-history.ts';
import type { AlarmView, Now } from '../../src/protocol/messages.ts';

export function alarm(change: Partial<AlarmView> = {}): AlarmView {
  return {
    alarm: 'scorch-risk',
    pan: 'p1',
    port: null,
    priority: 'high',
    condition: 'active',
    answered: false,
    since: 60_000,
    asideUntil: null,
    asideReason: null,
    why: 'about 2 min until it burns',
    title: 'Will burn soon',
    means: 'Too little is left over this heat.',
    todo: 'Take it off the heat.',
    ...change,
  };
}

export function now(change: Partial<Now> = {}): Now {
  return {
    kind: 'now',
    view: 'live',
    mode: 'live',
    boil: '2027-04-18-tarn-hollow',
    header: {
      recording: 'panwarden',
      version: 1,
      started: '2027-04-18T07:30:00-07:00',
      pans: [{ id: 'p1', name: 'Back pot' }],
    },
    t: 90_000,
    clock: '2027-04-18T07:31:30-07:00',
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
    kept: 12,
    pours: [],
    advice: [],
    unused: [],
    notices: [],
    powers: [],
    replay: null,
    ...change,
  };
}
