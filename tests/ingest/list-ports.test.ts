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
