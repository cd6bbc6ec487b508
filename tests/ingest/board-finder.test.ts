// A board is looked up in the system's list, through links as by-id names are, and where nothing can be listed.
import { mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { BoardFinder } from '../../src/ingest/board-finder.ts';
import type { SystemPort } from '../../src/ingest/device-identity.ts';

let folder = '';
let [real, link] = ['', ''];
beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'board-finder-')));
  [real, link] = [join(folder, 'ttyInvented0'), join(folder, 'by-id-invented')];
  writeFileSync(real, '');
  symlinkSync(real, link);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const board = (path: string, serialNumber = 'TH-1'): SystemPort => ({
  path,
  serialNumber,
  vendorId: 'F00D',
  productId: '0001',
});
const device = 'serial/f00d:0001/TH-1';
const finder = (ports: SystemPort[], taken: string[] = []) =>
  new BoardFinder(
    async () => ports,
    () => taken,
  );

test('a board is here though it was chosen by a link, and its link says what it is', async () => {
  expect(await finder([board(real)]).find(device, link)).toEqual({ kind: 'here' });
  expect(await finder([board(real)]).identityAt(link)).toBe(device);
  expect(await finder([board(real)]).identityAt(join(folder, 'none'))).toBeNull();
});

test('behind the link is another port now, and the board is where the list has it', async () => {
  const ports = [board(real, 'TH-2'), board('/dev/invented-1')];
  expect(await finder(ports).find(device, link)).toEqual({ kind: 'moved', path: '/dev/invented-1' });
});

test('a port that other pans are read from is not offered, one that is its own is', async () => {
  const ports = [board('/dev/invented-1', 'TH-2')];
  expect(await finder(ports, ['/dev/invented-1']).find(device, link)).toEqual({ kind: 'nowhere' });
  expect(await finder(ports, [link]).find(device, link)).toEqual({ kind: 'perhaps', path: '/dev/invented-1' });
  // Its own path is no other's: what stands there now may be it.
  const own = '/dev/invented-1';
  expect(await finder(ports, [own]).find(device, own)).toEqual({ kind: 'perhaps', path: own });
});

test('where ports cannot be listed a board is nowhere, and nothing is known of a path', async () => {
  const blind = new BoardFinder(
    () => Promise.reject(new Error('no udev')),
    () => [],
  );
  expect(await blind.find(device, link)).toEqual({ kind: 'nowhere' });
  expect(await blind.identityAt(link)).toBeNull();
});
