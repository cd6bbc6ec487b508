// A board is known by what it says of itself: under another path, beside its twin, and when another took its place.
import { expect, test } from 'vitest';
import { identityAmong, whereIs } from '../../src/ingest/device-identity.ts';
import type { SystemPort } from '../../src/ingest/device-identity.ts';
import { listPorts } from '../../src/ingest/list-ports.ts';

const board = (path: string, serialNumber?: string, locationId = `socket-of-${path}`): SystemPort => ({
  path,
  serialNumber,
  vendorId: 'F00D',
  productId: '0001',
  locationId,
});

test('the serial number goes before the by-id name, and that before the socket', () => {
  const all = { ...board('a', 'TH-1', '1-2'), pnpId: 'usb-invented-if00' };
  expect(identityAmong(all, [all])).toBe('serial/f00d:0001/TH-1');
  expect(identityAmong({ ...all, serialNumber: undefined }, [])).toBe('by-id/f00d:0001/usb-invented-if00');
  expect(identityAmong(board('a', undefined, '1-2'), [])).toBe('usb/f00d:0001/1-2');
  expect(identityAmong({ path: '/dev/ttyS0' }, [])).toBeNull();
});

test('two that give one serial number are told apart by the socket, and the person is told so', async () => {
  const { ports } = await listPorts(async () => [board('a', '0001', '1-1'), board('b', '0001', '1-2')]);
  expect(ports.map(({ identity, alike }) => [identity, alike])).toEqual([
    ['usb/f00d:0001/1-1', ['b']],
    ['usb/f00d:0001/1-2', ['a']],
  ]);
  expect(ports[0]?.note).toMatch(
    /^This board and the one at b give the same serial number: .*leave each in its own\.$/,
  );
});

const device = 'serial/f00d:0001/TH-1';
test.each([
  ['where it was', [board('a', 'TH-1')], [], { kind: 'here' }],
  ['under another path', [board('b', 'TH-1')], [], { kind: 'moved', path: 'b' }],
  [
    'under another path, another one at its own',
    [board('a', 'TH-2'), board('b', 'TH-1')],
    [],
    { kind: 'moved', path: 'b' },
  ],
  ['one of the same make', [board('b', 'TH-2')], [], { kind: 'perhaps', path: 'b' }],
  ['one of the same make that other pans have', [board('b', 'TH-2')], ['b'], { kind: 'nowhere' }],
  ['two that look like it', [board('b', 'TH-1'), board('c', 'TH-1')], [], { kind: 'alike', paths: ['b', 'c'] }],
  ['another make at its path', [{ ...board('a', 'X'), vendorId: 'BEEF' }], [], { kind: 'other-board' }],
  ['nothing', [], [], { kind: 'nowhere' }],
])('found: %s', (_name, ports, taken, place) => {
  expect(whereIs(device, 'a', ports, taken)).toEqual(place);
});
