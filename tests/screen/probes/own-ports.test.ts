// Which ports stand with the boards and which behind the door of the machine's own.
import { expect, test } from 'vitest';
import type { PortListing } from '../../../src/screen/client/types.ts';
import { partPorts } from '../../../src/screen/probes/own-ports.tsx';

const port = (path: string, own: boolean): PortListing => ({
  ...{ path, own, maker: null, serialNumber: null, identity: null, alike: [], note: null, known: null },
});
const list = [port('/dev/ttyUSB0', false), port('/dev/ttyS0', true), port('/dev/ttyS1', true)];
const paths = (isWanted?: (path: string) => boolean): string[][] => {
  const { boards, own } = partPorts(list, isWanted);
  return [boards, own].map((ports) => ports.map(({ path }) => path));
};

test('the machine’s own sockets stand behind the door, but for one that is listened to', () => {
  expect(paths()).toEqual([['/dev/ttyUSB0'], ['/dev/ttyS0', '/dev/ttyS1']]);
  expect(paths((path) => path === '/dev/ttyS1')).toEqual([['/dev/ttyUSB0', '/dev/ttyS1'], ['/dev/ttyS0']]);
});
