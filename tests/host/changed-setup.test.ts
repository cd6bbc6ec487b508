// What was corrected of the pans while a live boil ran stands in the form of the next one; a practice corrects nothing.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Setup } from '../../src/protocol/header-schema.ts';
import { createHost } from '../../src/host/create-host.ts';
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

test('a boil that was only tried out for minutes does not stand in the next form, where a real one came before it', async () => {
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  async function boil(power: number, minutes: number, poured: boolean): Promise<void> {
    await asked(host, { start: { name: 'Tarn Hollow', pans: [pan(power)] } });
    if (poured) await asked(host, { mark: { kind: 'top-up', pan: 'p1', litres: 10, id: `pour-${power}` } });
    machine.run(minutes * 60_000);
    await asked(host, { end: true });
    machine.run(60_000);
  }
  await boil(1000, 2, false);
  // There is none before it: what was set up is set up.
  expect(await powerNext(host)).toBe(1000);
  await boil(17_000, 4, true);
  expect(await powerNext(host)).toBe(17_000);
  await boil(2000, 9, false);
  await boil(3000, 1, false);
  expect(await powerNext(host)).toBe(17_000);
  // The command line begins with the last one, as it says.
  expect(host.lastSetup()?.pans?.[0]?.heat?.power_w).toBe(3000);
  await boil(9000, 10, false);
  expect(await powerNext(host)).toBe(9000);
  await host.close();
});

test('what was changed during a real boil stands in the next form though one was tried out since; a pour taken back is none', async () => {
  const machine = new HandClock();
  const host = await createHost({ folder, machine });
  await asked(host, { start: { name: 'Tarn Hollow', pans: [pan(17)] } });
  await asked(host, { set: { pans: [pan(17_000)] } });
  machine.run(3_600_000);
  await asked(host, { end: true });
  machine.run(60_000);
  await asked(host, { start: { name: 'Tarn Hollow', pans: [pan(2000)] } });
  expect(await powerNext(host)).toBe(2000);
  await asked(host, { mark: { kind: 'top-up', pan: 'p1', litres: 10, id: 'pour' } });
  await asked(host, { mark: { kind: 'withdraw', id: 'pour' } });
  machine.run(60_000);
  await asked(host, { end: true });
  expect(await powerNext(host)).toBe(17_000);
  await host.close();
});
