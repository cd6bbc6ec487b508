// What the host answers of ports and boards: listed with what was kept of them, moved by hand, and found again after a restart.
import { realpathSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Host } from '../../src/host/host.ts';
import type { SystemPort } from '../../src/ingest/device-identity.ts';
import type { MovedPort, PortListing } from '../../src/protocol/probe-messages.ts';
import { ownFolder } from '../cli/program.ts';
import { pretendBoard, type PretendBoard } from '../ingest/pretend-board.ts';
import { until } from '../ingest/until.ts';

let own: ReturnType<typeof ownFolder>;
let boards: PretendBoard[] = [];
let host: Host | null = null;
/** What the system lists; how often it was asked. */
let listed: SystemPort[] = [];
let asked = 0;
let notices: string[] = [];

beforeEach(() => {
  own = ownFolder();
  [listed, asked, notices] = [[], 0, []];
});
afterEach(async () => {
  await host?.close();
  host = null;
  await Promise.all(boards.map((board) => board.remove()));
  boards = [];
  own.remove();
});

async function open(): Promise<Host> {
  const list = async (): Promise<SystemPort[]> => {
    asked += 1;
    return listed;
  };
  const listener = { notice: ({ sentence }: { sentence: string }) => void notices.push(sentence) };
  host = await createHost({ folder: own.path('data'), ports: { list }, listener });
  return host;
}

async function plugged(name: string): Promise<PretendBoard> {
  const board = pretendBoard();
  boards.push(board);
  await board.plugIn(name);
  return board;
}

const saying = (path: string, serialNumber: string, vendorId = 'F00D'): SystemPort => ({
  path,
  serialNumber,
  vendorId,
  productId: '0001',
});
const of = (board: PretendBoard): string => realpathSync(board.path);

async function dataOf<T>(command: object): Promise<T> {
  const answer = await host?.command({ ref: 'q', ...command });
  expect(answer).toMatchObject({ ok: true });
  return (answer as unknown as { data: T }).data;
}
const whyNot = async (command: object): Promise<string> => {
  const answer = await host?.command({ ref: 'q', ...command });
  return answer?.ok === false ? answer.why : '';
};

const setup = (...ports: { id: string; path: string; device?: string }[]) => ({
  name: 'Tarn Hollow, invented',
  ports,
  probes: ports.map(({ id }) => ({ id: `${id}/1`, port: id, channel: 'T1' })),
  pans: ports.map(({ id }) => ({ id: id.toLowerCase(), name: `Pan ${id}`, probe: `${id}/1` })),
});

/** States of a port's own entries so far. */
function states(port: string): unknown[] {
  const boil = host?.running?.boil ?? '';
  const entries = [...(host?.recordingOf(boil) ?? [])]
    .slice(1)
    .map((line) => JSON.parse(line) as Record<string, unknown>);
  return entries.flatMap((entry) => (entry['port'] === port && 'state' in entry ? [entry['state']] : []));
}
const opened = (port: string, times: number) =>
  until(`port ${port} to open`, () => states(port).filter((state) => state === 'open').length >= times);
const moved = () => dataOf<MovedPort[]>({ ports_moved: true });

test('what was kept of a board is told with it, and is forgotten when told to', async () => {
  listed = [saying('/dev/invented-0', 'TH-1'), { path: '/dev/invented-1' }];
  await open();
  const identity = 'serial/f00d:0001/TH-1';
  const known = { baud: 19200, format: { kind: 'pairs' } };
  expect(await dataOf({ device_known: { identity } })).toBeNull();
  await dataOf({ device_keep: { identity, known } });
  await dataOf({ device_keep: { identity: 'another', known: { baud: null, format: null } } });
  expect(await dataOf({ device_known: { identity } })).toEqual(known);
  const ports = await dataOf<PortListing[]>({ ports: true });
  expect(ports.map((port) => [port.path, port.identity, port.known])).toEqual([
    ['/dev/invented-0', identity, known],
    ['/dev/invented-1', null, null],
  ]);
  await dataOf({ device_keep: { identity, known: null } });
  expect(await dataOf({ device_known: { identity } })).toBeNull();
  expect(await dataOf({ device_known: { identity: 'another' } })).toEqual({ baud: null, format: null });
});

test('a port is used elsewhere only in a boil that has it', async () => {
  await open();
  expect(await whyNot({ port_use: { port: 'A', path: '/dev/x' } })).toBe('No boil is running.');
  const board = await plugged('one');
  await dataOf({ start: setup({ id: 'A', path: board.path }) });
  expect(await whyNot({ port_use: { port: 'Z', path: '/dev/x' } })).toBe('There is no port Z in this boil.');
});

test('when the answer comes that nothing is listened to, whoever watches was told so', async () => {
  const running = await open();
  const board = await plugged('one');
  let heard: (string | null)[] = [];
  running.subscribe((message) => {
    if (message.kind === 'now') heard = message.ports.map(({ path }) => path);
  });
  await dataOf({ listen: [{ path: board.path }] });
  await until('the port to be told', () => heard.length === 1);
  await dataOf({ listen: [] });
  expect(heard).toEqual([]);
});

test('a board that was only ever seen is found again after a restart under another name', async () => {
  await open();
  const board = await plugged('before');
  listed = [saying(of(board), 'TH-1')];
  await dataOf({ start: setup({ id: 'A', path: board.path }) });
  await opened('A', 1);
  await until('the board to be known', () => asked > 0);
  await host?.close();
  await board.pull();
  await board.plugIn('after');
  listed = [saying(of(board), 'TH-1')];
  await open();
  await opened('A', 2);
  expect(notices.join('\n')).toContain(`The board of port before is on ${of(board)} now`);
});

test('a board that moved by itself is still found when another port is moved by hand, and questions that are over are gone', async () => {
  await open();
  const [one, two, three] = [await plugged('one'), await plugged('two'), await plugged('three')];
  listed = [saying(of(one), 'TH-1'), saying(of(two), 'BE-1', 'BEEF'), saying(of(three), 'CA-1', 'CAFE')];
  await dataOf({
    start: setup({ id: 'A', path: one.path }, { id: 'B', path: two.path }, { id: 'C', path: three.path }),
  });
  for (const port of ['A', 'B', 'C']) await opened(port, 1);
  await until('all boards to be known', () => asked >= 3);
  // A comes back elsewhere as itself; B and C do as another of their make.
  // Nothing is listed meanwhile: under the old names, which the system gives again, they would be taken for themselves.
  listed = [];
  await Promise.all([one.pull(), two.pull(), three.pull()]);
  await Promise.all([one.plugIn('one-b'), two.plugIn('two-b'), three.plugIn('three-b')]);
  listed = [saying(of(one), 'TH-1'), saying(of(two), 'BE-2', 'BEEF'), saying(of(three), 'CA-2', 'CAFE')];
  await opened('A', 2);
  await until('both questions', () => notices.filter((one) => /use it if it is the same/.test(one)).length >= 2);
  expect((await moved()).map(({ port }) => port).toSorted()).toEqual(['B', 'C']);
  // C's own board is back just as B's port is chosen.
  listed = [saying(of(one), 'TH-1'), saying(of(two), 'BE-2', 'BEEF'), saying(of(three), 'CA-1', 'CAFE')];
  await dataOf({ port_use: { port: 'B', path: of(two) } });
  for (const [port, times] of [
    ['A', 3],
    ['B', 2],
    ['C', 2],
  ] as const)
    await opened(port, times);
  expect(await moved()).toEqual([]);
});
