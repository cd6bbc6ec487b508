// A practice that somebody learns with goes slower while a call waits for them, and on as it was chosen behind it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { ListedAlarm } from '../../src/core/alarms/alarm.ts';
import { createHost } from '../../src/host/create-host.ts';
import { CALLED_SPEED, practicePace, WAITS_MS } from '../../src/host/practice-pace.ts';
import type { HostMessage, Now } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

const call: ListedAlarm = {
  ...{ alarm: 'near-finish', pan: 'front', port: null, priority: 'medium', condition: 'active', answered: false },
  ...{ since: 0, asideUntil: null, asideReason: null, why: '' },
};
const pace = (chosen: number, change: Partial<ListedAlarm> = {}, t = 0): number =>
  practicePace(chosen, [{ ...call, ...change }], t);

test('a call slows it until it is seen, one that asks for a deed until it is over, and none makes it faster', () => {
  const { medium, high } = CALLED_SPEED;
  expect(practicePace(600, [], 0)).toBe(600);
  expect([pace(600), pace(60), pace(10), pace(1)]).toEqual([medium, medium, 10, 1]);
  expect(pace(600, { answered: true })).toBe(600);
  expect(pace(600, { alarm: 'low-level', answered: true })).toBe(medium);
  const finish = { alarm: 'finish', priority: 'high' } as const;
  expect([pace(600, finish), pace(600, { ...finish, answered: true })]).toEqual([high, high]);
  expect(practicePace(600, [call, { ...call, ...finish }], 0)).toBe(high);
  expect(pace(600, { ...finish, condition: 'over' })).toBe(600);
  expect(pace(600, { asideUntil: 1000 })).toBe(600);
  expect(pace(600, { priority: 'low' })).toBe(600);
  expect(pace(600, { alarm: 'no-sound', pan: null })).toBe(600);
});

test('whoever only watches does not wait for long', () => {
  expect([pace(60, {}, WAITS_MS - 1), pace(60, {}, WAITS_MS)]).toEqual([CALLED_SPEED.medium, 60]);
});

test('at 600 times a learner has a moment for the first call, goes on once it is answered, and quiet stays as long', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  let now: Now | undefined;
  const stop = host.subscribe((message: HostMessage) => void (message.kind === 'now' && (now = message)));
  const obeyed = async (command: object): Promise<void> =>
    expect(await host.command({ ref: 'r', ...command })).toMatchObject({ ok: true });
  const called = (): Now['alarms'] => now!.alarms.filter(({ condition }) => condition === 'active');
  try {
    await obeyed({ practice: { speed: 600, slow_for_calls: true } });
    await obeyed({ settings: {} });
    expect(now).toMatchObject({ speed: 600 });
    expect(now).not.toHaveProperty('chosenSpeed');
    for (let i = 0; i < 100 && called().length === 0; i += 1) machine.run(100);
    machine.run(300);
    expect(called()).toMatchObject([{ alarm: 'low-level', pan: 'middle' }]);
    expect(now).toMatchObject({ speed: CALLED_SPEED.medium, chosenSpeed: 600 });
    // It was called as it came, however much was due by the clock by then.
    expect(now!.t - now!.alarms[0]!.since).toBeLessThan(500 * CALLED_SPEED.medium);
    const before = now!.t;
    machine.run(1000);
    expect(now!.t - before).toBeLessThan(1500 * CALLED_SPEED.medium);
    await obeyed({ answer: { silence: { seconds: 120 * CALLED_SPEED.medium } } });
    await obeyed({ mark: { kind: 'top-up', pan: 'middle', litres: 6, brix: 2 } });
    machine.run(300);
    expect(called()).toEqual([]);
    expect(now).toMatchObject({ speed: 600 });
    expect(((now!.sound.silencedUntil ?? 0) - now!.t) / 1000 / 600).toBeGreaterThan(118);
  } finally {
    stop();
    await host.close();
    rmSync(folder, { recursive: true });
  }
});

test('a practice that nobody learns with goes as fast as was asked, whatever is called', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  let now: Now | undefined;
  const stop = host.subscribe((message: HostMessage) => void (message.kind === 'now' && (now = message)));
  try {
    expect(await host.command({ ref: 'r', practice: { speed: 600 } })).toMatchObject({ ok: true });
    for (let i = 0; i < 100 && (now?.alarms.length ?? 0) === 0; i += 1) machine.run(100);
    expect(now).toMatchObject({ speed: 600, alarms: [{ condition: 'active' }] });
  } finally {
    stop();
    await host.close();
    rmSync(folder, { recursive: true });
  }
});
