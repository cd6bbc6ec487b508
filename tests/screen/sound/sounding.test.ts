// When bursts are handed to the audio, by its own clock: their spacing, their end, the call of a lost host, the minute's tick.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { HostMessage, Now } from '../../../src/screen/client/types.ts';
import { metric, moment } from '../moment.ts';

interface Played {
  startsAt: number;
  loop: boolean;
  seconds: number;
  level: number;
  stoppedAt: number | null;
}

/** The audio of a browser whose clock the test moves. */
class PretendAudio {
  static latest: PretendAudio;
  state = 'running';
  currentTime = 0;
  sampleRate = 8000;
  destination = {};
  played: Played[] = [];
  constructor() {
    PretendAudio.latest = this;
  }
  createBuffer(_channels: number, length: number, sampleRate: number) {
    return { length, sampleRate, copyToChannel: () => {} };
  }
  createGain() {
    const gain = { value: 1, setTargetAtTime: () => {} };
    return { gain, connect: <T>(to: T) => to, disconnect: () => {} };
  }
  createBufferSource() {
    const { played, sampleRate } = this;
    let level = { gain: { value: 1 } };
    let made: Played | null = null;
    return {
      buffer: { length: 0 },
      loop: false,
      connect(to: typeof level) {
        level = to;
        return to;
      },
      start(startsAt: number) {
        const seconds = this.buffer.length / sampleRate;
        made = { startsAt, loop: this.loop, seconds, level: level.gain.value, stoppedAt: null };
        played.push(made);
      },
      stop(at: number) {
        if (made !== null) made.stoppedAt = at;
      },
    };
  }
}

const still = { priority: null, silencedUntil: null };
let say: (message: HostMessage) => void;
let second: number;

/** The page as it starts, with a host behind it. */
beforeEach(async () => {
  vi.useFakeTimers();
  vi.resetModules();
  vi.stubGlobal('AudioContext', PretendAudio);
  second = 0;
  const { connect } = await import('../../../src/screen/client/store.ts');
  const { allowSound } = await import('../../../src/screen/sound/player.ts');
  const { soundTheCalls } = await import('../../../src/screen/sound/sounding.ts');
  connect({
    send: () => true,
    hand: async () => ({ ok: false, why: '' }),
    listen(hear) {
      say = (message) => hear({ kind: 'message', message });
      return () => {};
    },
  });
  await allowSound();
  soundTheCalls();
});
afterEach(() => {
  vi.clearAllTimers();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** Seconds in which the host says the same once a second; null: it says nothing. */
function pass(seconds: number, now: Partial<Now> | null): void {
  for (let quarter = 0; quarter < 4 * seconds; quarter += 1) {
    if (now !== null && quarter % 4 === 0) say({ ...moment, ...now, t: moment.t + 1000 * second++ });
    PretendAudio.latest.currentTime += 0.25;
    vi.advanceTimersByTime(250);
  }
}

/** What was or will be heard: what was not stopped before it began. */
const heard = (): Played[] =>
  PretendAudio.latest.played.filter(({ startsAt, stoppedAt }) => stoppedAt === null || stoppedAt > startsAt);
const bursts = (): Played[] => heard().filter(({ loop }) => !loop);
const calling = (priority: 'high' | 'medium' | 'low') => ({ sound: { priority, silencedUntil: null } });

test.each([
  ['high', 2.5, 15],
  ['medium', 2.5, 30],
  ['low', 15, 60],
] as const)('%s: burst after burst, with the pause of its pattern between them', (priority, least, greatest) => {
  pass(90, calling(priority));
  expect(bursts().length).toBeGreaterThanOrEqual(4);
  for (const [i, burst] of bursts().entries()) {
    const before = bursts()[i - 1];
    if (before === undefined) continue;
    expect(burst.startsAt - before.startsAt - before.seconds).toBeGreaterThanOrEqual(least);
    expect(burst.startsAt - before.startsAt - before.seconds).toBeLessThanOrEqual(greatest);
  }
});

test('a worse call is heard at once, and an answer stops the sound at once', () => {
  pass(3, calling('medium'));
  const escalatedAt = PretendAudio.latest.currentTime;
  pass(1, calling('high'));
  expect(bursts().at(-1)?.startsAt).toBeLessThan(escalatedAt + 0.1);
  const answeredAt = PretendAudio.latest.currentTime;
  pass(20, { sound: still });
  expect(bursts().at(-1)?.stoppedAt).toBeLessThan(answeredAt + 0.1);
  expect(bursts().filter(({ startsAt }) => startsAt > answeredAt)).toEqual([]);
});

test('while it is silenced nothing sounds', () => {
  pass(30, { sound: { priority: 'high', silencedUntil: Number.MAX_SAFE_INTEGER } });
  expect(bursts()).toEqual([]);
});

test('a host that says nothing any more is called within 5 s, on and on, and the calls of before stop', () => {
  pass(10, calling('medium'));
  expect(heard().filter(({ loop }) => loop)).toHaveLength(1);
  const saidLastAt = PretendAudio.latest.currentTime - 1;
  pass(30, null);
  const [call, ...more] = heard().filter(({ loop }) => loop);
  expect(more).toEqual([]);
  expect(call?.startsAt).toBeLessThan(saidLastAt + 5);
  expect(call?.stoppedAt).toBe(null);
  expect(bursts().filter(({ startsAt }) => startsAt > saidLastAt + 5.5)).toEqual([]);
});

test('the call of a lost host ends when somebody has seen it, and when the host is back', async () => {
  const { quietLoss } = await import('../../../src/screen/sound/sounding.ts');
  pass(5, { sound: still });
  pass(10, null);
  quietLoss();
  const loops = () => heard().filter(({ loop }) => loop);
  expect(loops()[0]?.stoppedAt).not.toBe(null);
  pass(5, { sound: still });
  pass(10, null);
  expect(loops().filter(({ stoppedAt }) => stoppedAt === null)).toHaveLength(1);
  pass(1, { sound: still });
  // Only the one that the host puts off each second is left.
  expect(
    loops().filter(({ stoppedAt, startsAt }) => stoppedAt === null && startsAt < PretendAudio.latest.currentTime),
  ).toEqual([]);
});

test.each([
  ['nothing is watched', { mode: 'idle' as const }],
  ['the boil is over', { ended: true }],
])('where %s, a lost host calls nobody', (_what, now) => {
  pass(5, now);
  pass(20, null);
  expect(heard()).toEqual([]);
});

test('the tick of the minute is heard where it was chosen, while all is well, and is quieter than any call', () => {
  pass(130, { sound: still });
  expect(bursts()).toEqual([]);
  say({ kind: 'settings', settings: { ...metric, minute_tick: true } });
  pass(170, { sound: still });
  const ticks = bursts();
  expect(ticks.length).toBe(3);
  for (const tick of ticks) expect(tick.seconds).toBeLessThan(0.1);
  pass(1, calling('high'));
  expect(bursts().at(-1)?.level).toBeGreaterThan(2 * (ticks[0]?.level ?? 1));
});
