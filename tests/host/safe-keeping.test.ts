// The host copies the notebook after each boil, and takes a damaged one in its stride: set aside, salvaged, told, and watching goes on.
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import { HandClock } from './hand-clock.ts';

let folder: string;
let said: string[];
const machine = new HandClock();
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  said = [];
});
afterEach(() => rmSync(folder, { recursive: true }));

const setup = { name: 'Tarn Hollow, invented', pans: [{ id: 'p1', name: 'Back pot' }] };
const hostHere = (): Promise<Host> =>
  createHost({ folder, machine, listener: { notice: ({ sentence }) => said.push(sentence) } });
const copies = (where: string) => readdirSync(where).filter((name) => /^panwarden-.+\.sqlite$/u.test(name));

async function ranAndEnded(host: Host): Promise<void> {
  await host.command({ ref: '1', start: setup });
  await host.command({ ref: '2', mark: { kind: 'note', text: 'first steam' } });
  expect(await host.command({ ref: '3', end: true })).toMatchObject({ ok: true });
}

test('after each boil there is a copy, and a practice boil makes none', async () => {
  const host = await hostHere();
  for (let boil = 0; boil < 2; boil += 1) await ranAndEnded(host);
  await host.command({ ref: 'p', practice: { speed: 60 } });
  await host.command({ ref: 'e', end: true });
  await host.close();
  expect(copies(join(folder, 'backups'))).toHaveLength(2);
  expect(said).toEqual([]);
}, 30_000);

test('what came of a boil is in a copy too, made once when it is kept', async () => {
  const host = await hostHere();
  await ranAndEnded(host);
  const listed = (await host.command({ ref: 'b', boils: true })) as unknown as { data: { boil: string }[] };
  const name = listed.data[0]!.boil;
  const keep = (litres: number): Promise<unknown> =>
    host.command({ ref: 'k', keep_page: { boil: name, page: { syrup: { litres } } } } as Parameters<
      Host['command']
    >[0]);
  expect(await keep(1.2)).toMatchObject({ ok: true });
  expect(await keep(1.3)).toMatchObject({ ok: true });
  await host.close();
  expect(copies(join(folder, 'backups'))).toHaveLength(2);
}, 30_000);

test('copies go where the settings say, and a folder that is gone is a notice and stops nothing', async () => {
  const stick = join(folder, 'stick');
  const gone = join(folder, 'gone');
  const host = await hostHere();
  await host.command({ ref: 's', settings: { backup_folder: stick } });
  await ranAndEnded(host);
  await host.command({ ref: 's', settings: { backup_folder: gone } });
  // Another thing stands there since.
  rmSync(gone, { recursive: true, force: true });
  writeFileSync(gone, '');
  await ranAndEnded(host);
  expect(await host.command({ ref: '1', start: setup })).toMatchObject({ ok: true });
  await host.close();
  expect(copies(stick)).toHaveLength(1);
  expect(said).toEqual([
    expect.stringMatching(
      /^The boil is kept, but no copy of the notebook could be made in .+gone: .+ Is the disk or stick there/u,
    ),
  ]);
});

test('a folder for copies that cannot be is refused when it is named, and the one before stays', async () => {
  const stick = join(folder, 'stick');
  const host = await hostHere();
  await host.command({ ref: 's', settings: { backup_folder: stick } });
  const refused = (backup_folder: string) => host.command({ ref: 's', settings: { backup_folder } });
  expect(await refused(join(folder, 'no', 'such'))).toMatchObject({
    ok: false,
    why: `There is no folder ${join(folder, 'no')} to put copies in: make it, or plug in the disk or stick that it is on.`,
  });
  expect(await refused('copies')).toMatchObject({ ok: false, why: expect.stringContaining('only a part of one') });
  // A file, and what lies in one, can hold no copies.
  const file = join(folder, 'file');
  writeFileSync(file, '');
  for (const no of [file, join(file, 'copies')])
    expect(await refused(no)).toMatchObject({
      ok: false,
      why: expect.stringContaining(`No copy can be put into ${no}`),
    });
  await ranAndEnded(host);
  await host.close();
  expect(copies(stick)).toHaveLength(1);
});

test('garbage in place of the notebook is said, and a boil begins all the same', async () => {
  writeFileSync(join(folder, 'notebook.sqlite'), 'garbage');
  const host = await hostHere();
  expect(said[0]).toContain('It was set aside as notebook-damaged-');
  expect(await host.command({ ref: '1', start: setup })).toMatchObject({ ok: true });
  await host.close();
});

test('damage that shows only when the running boil is read sets the notebook aside too, and the boil goes on', async () => {
  const first = await hostHere();
  await first.command({ ref: '1', start: setup });
  for (let note = 0; note < 10; note += 1)
    await first.command({ ref: 'n', mark: { kind: 'note', text: `note ${note}` } });
  const { boil } = first.running!;
  await first.close();
  const database = new DatabaseSync(join(folder, 'notebook.sqlite'));
  database.exec(`INSERT INTO block SELECT boil, 1, 5, 0, t, 1, zeroblob(40) FROM entry WHERE place = 5;
    DELETE FROM entry WHERE place <= 5`);
  database.close();
  const second = await hostHere();
  expect(second.running?.boil).toBe(boil);
  expect(said[0]).toMatch(/was damaged \(the boil ".+": entries 1 to 5 cannot be unpacked/u);
  expect(said[1]).toMatch(new RegExp(`Salvaged into the new one: ${boil} with \\d+ of \\d+ entries`, 'u'));
  await second.close();
});
