// Quiet that was asked for in a practice boil lasts as long for who hears it, however fast the boil is then let go on.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { HostMessage, Now } from '../../src/protocol/messages.ts';
import { HandClock } from './hand-clock.ts';

test.each([
  [60, 1],
  [60, 10],
  [1, 600],
])('two minutes at %i times stay two minutes at %i times', async (first, then) => {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  const host = await createHost({ folder, machine: new HandClock() });
  let now: Now | undefined;
  const stop = host.subscribe((message: HostMessage) => void (message.kind === 'now' && (now = message)));
  try {
    const asked = [
      { practice: { speed: first } },
      { answer: { silence: { seconds: 120 * first } } },
      { practice_speed: then },
      { settings: {} },
    ];
    for (const each of asked) expect(await host.command({ ref: 'r', ...each })).toMatchObject({ ok: true });
    expect(((now!.sound.silencedUntil ?? 0) - now!.t) / 1000 / then).toBeCloseTo(120, 0);
  } finally {
    stop();
    await host.close();
    rmSync(folder, { recursive: true });
  }
});
