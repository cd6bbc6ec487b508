// The list of ports: boards first, and a system that cannot list says so instead of ending the program.
import { expect, test } from 'vitest';
import { listPorts } from '../../src/ingest/list-ports.ts';

test('boards that tell their maker or serial number come first', async () => {
  const listed = await listPorts(async () => [
    { path: '/dev/ttyS0' },
    { path: '/dev/ttyUSB1', manufacturer: 'Invented Works', serialNumber: 'TH-2' },
    { path: '/dev/ttyUSB0', serialNumber: 'TH-1' },
  ]);
  expect(listed.why).toBeNull();
  expect(listed.ports).toMatchObject([
    { path: '/dev/ttyUSB0', maker: null, serialNumber: 'TH-1', identity: 'serial/:/TH-1', alike: [], note: null },
    { path: '/dev/ttyUSB1', maker: 'Invented Works', serialNumber: 'TH-2' },
    { path: '/dev/ttyS0', maker: null, serialNumber: null, identity: null },
  ]);
});

test('the machine\u2019s own sockets come last and are told as that, a board that tells no name is none of them', async () => {
  const listed = await listPorts(async () => [
    { path: 'COM1', manufacturer: '(Standard port types)', pnpId: 'ACPI\\PNP0501\\1' },
    { path: '/dev/ttyS0' },
    { path: '/dev/ttyUSB7', vendorId: '1a86', productId: '7523', locationId: '1-2' },
    { path: '/dev/ttyUSB0', manufacturer: 'Invented Works' },
  ]);
  expect(listed.ports.map(({ path, own }) => [path, own])).toEqual([
    ['/dev/ttyUSB0', false],
    ['/dev/ttyUSB7', false],
    ['/dev/ttyS0', true],
    ['COM1', true],
  ]);
});

test('where udev is absent the real list is empty, with a reason', async () => {
  const path = process.env['PATH'];
  process.env['PATH'] = '/nowhere';
  try {
    const listed = await listPorts();
    expect(listed.ports).toEqual([]);
    expect(listed.why).toMatch(
      /^The serial ports cannot be listed on this system \(.*udevadm.*\): type the port's path/,
    );
  } finally {
    process.env['PATH'] = path;
  }
});
