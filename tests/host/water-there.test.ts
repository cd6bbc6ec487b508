// What water boils at in a place is told before any boil there, by its height alone, with how far the weather may move it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { WaterThere } from '../../src/protocol/look-messages.ts';
import { HandClock } from './hand-clock.ts';

test('by the height: the standard atmosphere (ISO 2533) and the steam table (IAPWS-IF97), nothing where nobody boils', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'panwarden-test-'));
  const host = await createHost({ folder, machine: new HandClock() });
  const at = async (altitude_m: number): Promise<WaterThere | null> => {
    const answer = await host.command({ ref: 'r', water_at: { altitude_m } });
    if (!answer.ok) throw new Error(answer.why);
    return answer.data as WaterThere | null;
  };
  // Boiling points by height as handbooks of cooking and of engineering print them, rounded to 0.1 °C (from memory).
  for (const [altitudeM, celsius] of [
    [0, 100],
    [1000, 96.7],
    [1500, 95],
  ] as const)
    expect(Math.abs((await at(altitudeM))!.celsius - celsius)).toBeLessThan(0.1);
  const { celsius, low, high } = (await at(640))!;
  // Weather of ± 0.6 °C at 95 % (practice) is ± 0.4 °C for the middle 80 %.
  expect(high - celsius).toBeCloseTo(0.38, 1);
  expect(celsius - low).toBeCloseTo(high - celsius, 6);
  expect(await at(50_000)).toBeNull();
  await host.close();
  rmSync(folder, { recursive: true, force: true });
});
