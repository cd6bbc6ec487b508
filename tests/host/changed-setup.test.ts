// What was corrected of the pans while a live boil ran stands in the form of the next one; a practice corrects nothing.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Setup } from '../../src/protocol/header-schema.ts';
import { createHost } from '../../src/host/host.ts';
import { HandClock } from './hand-clock.ts';

type Host = Awaited<ReturnType<typeof createHost>>;

let folder: string;
beforeEach(() => void (folder = mkdtempSync(path.join(tmpdir(), 'panwarden-test-'))));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function asked(host: Host, command: Record<string, unknown>): Promise<unknown> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data;
}

const pan = (power_w: number) => ({ id: 'p1', name: 'Back pot', heat: { kind: 'propane', power_w } });
const powerNext = async (host: Host): Promise<number | undefined> =>
  ((await asked(host, { last_setup: true })) as Setup).pans?.[0]?.heat?.power_w;

test('a power that was corrected during a boil is in the next form, and what the boil began with stays known', async () => {
  const host = await createHost({ folder, machine: new HandClock() });
  await asked(host, { start: { name: 'Tarn Hollow', pans: [pan(17)] } });
  await asked(host, { set: { pans: [pan(17_000)] } });
  expect(await powerNext(host)).toBe(17_000);
  expect(host.lastSetup()?.pans?.[0]?.heat?.power_w).toBe(17);
  await asked(host, { end: true });
  expect(await powerNext(host)).toBe(17_000);
  await asked(host, { start: { name: 'Tarn Hollow', pans: [pan(9000)] } });
  expect(await powerNext(host)).toBe(9000);
  await host.close();
});
