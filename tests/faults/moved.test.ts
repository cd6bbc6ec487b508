// Fault 3: a board that comes back under another name, found again by what it says of itself, or asked about.
import { realpathSync } from 'node:fs';
import { afterEach, expect, test } from 'vitest';
import type { SystemPort } from '../../src/ingest/device-identity.ts';
import type { MovedPort } from '../../src/protocol/probe-messages.ts';
import type { PretendBoard } from '../ingest/pretend-board.ts';
import { until } from '../ingest/until.ts';
import { faultRig, type FaultRig } from './always-true.ts';

let rig: FaultRig;
afterEach(() => rig.remove());

/** What stands behind a link; null while it leads nowhere. */
function behind({ path }: PretendBoard): string | null {
  try {
    return realpathSync(path);
  } catch {
    return null;
  }
}

/** A system that lists the board with what `says` it says of itself just then, and counts how often it was asked. */
function system(says: () => Partial<SystemPort>) {
  const state = { asked: 0 };
  const list = (board: PretendBoard): SystemPort[] => {
    state.asked += 1;
    const path = behind(board);
    return path === null ? [] : [{ path, vendorId: 'F00D', productId: '0001', ...says() }];
  };
  return { list, state };
}

const stateOf = () => rig.now().ports.find((port) => port.id === 'A')?.state;
const states = () => rig.record().filter((entry) => entry['port'] === 'A' && 'state' in entry);
const asked = async (): Promise<MovedPort[]> => {
  const answer = await rig.host.command({ ref: 'q', ports_moved: true });
  return answer.ok ? (answer.data as MovedPort[]) : [];
};

async function pullAndComeBackAs(name: string): Promise<void> {
  await rig.board.pull();
  await until('the loss', () => stateOf() === 'lost');
  await rig.board.plugIn(name);
}

/** A line of the board reaches the same pans as before. */
async function samePansAreRead(): Promise<void> {
  await until('the port to be open', () => stateOf() === 'open');
  await rig.board.send('\nT1=96.4 T2=96.5 T3=96.6\n');
  await until('its pans to be read', () =>
    ['A/1', 'A/2', 'A/3'].every((probe, n) => rig.shown(probe).includes([96.4, 96.5, 96.6][n] ?? 0)),
  );
  const probes = rig.now().probes.filter(({ port }) => port === 'A');
  expect(probes.map(({ pan }) => pan)).toEqual(['a1', 'a2', 'a3']);
}

/** The time without the board is in the record, with nothing of it in between. */
function gapIsKept(): void {
  expect(states().map(({ state }) => state)).toEqual(['open', 'lost', 'open']);
  const [, lost, open] = states().map(({ t }) => t as number);
  const between = rig.record().filter((entry) => entry['port'] === 'A' && 'line' in entry);
  expect(between.filter(({ t }) => (t as number) > lost! && (t as number) < open!)).toEqual([]);
}

test('3: back under another name, known by its serial number', async () => {
  const { list, state } = system(() => ({ serialNumber: 'TH-1' }));
  rig = await faultRig({ list });
  await until('the board to be known', () => state.asked > 0);
  await rig.warmUp();
  const before = rig.board.path;
  await pullAndComeBackAs('another-name');
  await samePansAreRead();
  expect(rig.notices.join('\n')).toContain(`is on ${behind(rig.board)} now, no longer on ${before}`);
  expect(await asked()).toEqual([]);
  gapIsKept();
  await rig.alwaysTrue(3, 'another name, known by its serial number', 'same 3 pans');
});

test('3: another board of the same make, asked about', async () => {
  let serialNumber = 'TH-1';
  const { list, state } = system(() => ({ serialNumber }));
  rig = await faultRig({ list });
  await until('the board to be known', () => state.asked > 0);
  await rig.warmUp();
  const before = rig.board.path;
  serialNumber = 'TH-2';
  await pullAndComeBackAs('another-name');
  await until('the question', () =>
    rig.notices.some((one) => /A board of the same make is at .*: use it if/.test(one)),
  );
  const to = behind(rig.board) ?? '';
  expect(await asked()).toEqual([{ port: 'A', from: before, to, sentence: expect.stringContaining(to) as string }]);
  expect(stateOf()).toBe('lost');
  expect(await rig.host.command({ ref: 'use', port_use: { port: 'A', path: to } })).toMatchObject({ ok: true });
  await samePansAreRead();
  expect(await asked()).toEqual([]);
  gapIsKept();
  // The choice is kept with the boil, and with it what the board says of itself, so that it is found again too.
  const [chosen] = rig.record().flatMap(({ set }) => (set === undefined ? [] : [set as { ports: unknown[] }]));
  expect(chosen?.ports[0]).toMatchObject({ id: 'A', path: to, device: 'serial/f00d:0001/TH-2' });
  await rig.alwaysTrue(3, 'another of its make, asked about', '1 question');
});

test('3: another board in its place, left alone until its own is back', async () => {
  let vendorId = 'F00D';
  const { list, state } = system(() => ({ serialNumber: 'TH-1', vendorId }));
  rig = await faultRig({ list });
  await until('the board to be known', () => state.asked > 0);
  await rig.warmUp();
  vendorId = 'BEEF';
  await pullAndComeBackAs('port');
  await until('the sentence', () => rig.notices.some((one) => /has another board behind it now/.test(one)));
  await rig.board.send('\nT1=12.3 T2=12.3 T3=12.3\n');
  expect(stateOf()).toBe('lost');
  vendorId = 'F00D';
  await samePansAreRead();
  expect(rig.shown('A/1')).not.toContain(12.3);
  await rig.alwaysTrue(3, 'a strange board in its place', 'not opened');
});
