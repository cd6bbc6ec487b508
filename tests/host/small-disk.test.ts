// A disk that fills in the middle of a boil, is freed again, goes away and comes back costs nothing that was read meanwhile.
import { closeSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { exportRecording } from '../../src/notebook/export-recording.ts';
import { smallDisk } from './small-disk.ts';
import { tarnBoil } from './tarn-boil.ts';

const disk = smallDisk();
disk?.remove();

/** Writes until there is no room at all. */
function fill(path: string): void {
  const file = openSync(path, 'w');
  for (let size = 65_536; size >= 1; size = Math.floor(size / 2)) {
    try {
      for (;;) writeSync(file, Buffer.alloc(size, 1));
    } catch {
      continue;
    }
  }
  closeSync(file);
}

test.skipIf(disk === null)(
  'a full disk is called, watching goes on, and all is written when there is room again',
  async () => {
    const small = smallDisk()!;
    onTestFinished(small.remove);
    const boil = tarnBoil(join(small.folder, 'data'));
    const seconds = (count: number) => {
      for (let second = 0; second < count; second += 1) {
        boil.line(90 + (boil.machine.monotonicMs() % 7000) / 1000);
        boil.machine.run(1000);
      }
    };
    seconds(20);
    const before = boil.summary().entries;
    fill(join(small.folder, 'ballast'));
    seconds(300);
    const raised = boil.heard.alarms.find(({ alarm }) => alarm === 'not-recording');
    expect(raised).toMatchObject({
      event: 'raised',
      why: expect.stringContaining('the disk is full: make room on it'),
    });
    const kept = boil.summary().entries;
    expect(kept).toBeLessThan(before + 300);
    expect(boil.heard.readings.length).toBeGreaterThan(25);
    rmSync(join(small.folder, 'ballast'));
    seconds(10);
    expect(boil.heard.alarms.filter(({ alarm }) => alarm === 'not-recording').map(({ event }) => event)).toEqual([
      'raised',
      'cleared',
    ]);
    const lines = boil.entries().filter((entry) => 'line' in entry);
    expect(lines.map(({ t }) => t)).toEqual(
      Array.from({ length: lines.length }, (_, index) => lines[0]!.t + index * 1000),
    );
    expect(lines.length).toBeGreaterThanOrEqual(329);
    expect(
      boil
        .entries()
        .filter((entry) => 'called' in entry)
        .map(({ called }) => called),
    ).toContainEqual(expect.objectContaining({ alarm: 'not-recording', event: 'cleared' }));
    expect(boil.notebook.check().damaged).toBe(false);
    expect([...exportRecording(boil.notebook, boil.boil)]).toHaveLength(boil.summary().entries + 1);
    await boil.close();
  },
);

test('a folder that goes away and comes back is written to again, with what memory held', async () => {
  const boil = tarnBoil();
  boil.line(95);
  boil.machine.run(1000);
  renameSync(boil.folder, `${boil.folder}-away`);
  boil.line(96);
  boil.machine.run(3000);
  expect(boil.heard.alarms.at(-1)).toMatchObject({ alarm: 'not-recording', event: 'raised' });
  renameSync(`${boil.folder}-away`, boil.folder);
  boil.machine.run(2000);
  expect(boil.heard.alarms.at(-1)).toMatchObject({ alarm: 'not-recording', event: 'cleared' });
  expect(
    boil
      .entries()
      .filter((entry) => 'line' in entry)
      .map(({ line }) => line),
  ).toEqual(['T1=95', 'T1=96']);
  await boil.close();
});
