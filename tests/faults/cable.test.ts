// Faults 1, 2, 4, 5, 6: a board that falls silent, is pulled, comes back, and a port that cannot be had.
import { chmodSync, chownSync, readFileSync, realpathSync, symlinkSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterEach, expect, test, vi } from 'vitest';
import { openSerialPort } from '../../src/ingest/open-port.ts';
import { ReaderPool } from '../../src/ingest/reader-pool.ts';
import { forkReader, ReaderProcess } from '../../src/ingest/reader-process.ts';
import { until } from '../ingest/until.ts';
import { faultRig } from './always-true.ts';
import type { FaultRig } from './always-true.ts';
import { descriptors, readerDescriptors } from './turns.ts';

vi.mock('electron', () => import('../electron/electron-stand-in.ts'));
const { openInReader } = await import('../../electron/readers.ts');

let rig: FaultRig;
afterEach(() => rig.remove());

const stateOf = (id: string) => rig.now().ports.find((port) => port.id === id)?.state;
const lines = () => rig.record().filter((entry) => entry['port'] === 'A' && 'line' in entry);

test('1: a board that falls silent', async () => {
  rig = await faultRig();
  await rig.warmUp();
  await until('the call', () => rig.raised('probe-lost', 'a1').length > 0);
  const { board } = rig;
  const again = setInterval(() => void board.send('T1=98.1 T2=98.2 T3=98.3\n'), 100);
  try {
    await until('it to clear by itself', () =>
      rig.alarms.some(({ alarm, pan, event }) => alarm === 'probe-lost' && pan === 'a1' && event === 'cleared'),
    );
  } finally {
    clearInterval(again);
  }
  expect(rig.now().alarms.some(({ alarm, pan }) => alarm === 'probe-lost' && pan === 'a1')).toBe(true);
  await rig.alwaysTrue(1, 'silent, then heard again');
});

test('2 and 4: pulled in the middle of a line, and back in the middle of another', async () => {
  rig = await faultRig();
  await rig.warmUp();
  await rig.board.send('T1=10');
  await rig.board.pull();
  await until('the loss to be called', () => rig.raised('port-lost').length > 0);
  expect(rig.notices.join()).toMatch(/Port A .* went away: check the cable/);
  await rig.board.plugIn();
  await until('the port to be open again', () => stateOf('A') === 'open');
  await rig.board.send('4.9\nT1=98.7\n');
  await until('the whole line', () => lines().some(({ line }) => line === 'T1=98.7'));
  expect(lines().filter(({ line }) => /104|^4\.9|T1=10$/.test(String(line)))).toEqual([]);
  await until('the whole line to be shown', () => rig.shown('A/1').includes(98.7));
  expect(rig.shown('A/1').toSorted()).toEqual([98.1, 98.7]);
  expect(
    rig
      .record()
      .filter((entry) => entry['port'] === 'A' && 'state' in entry)
      .map(({ state }) => state),
  ).toEqual(['open', 'lost', 'open']);
  await rig.alwaysTrue(2, 'pulled and back in the middle of lines', 'and 4: 0 values of 2 half lines');
});

const PULLS = 100;
/** Faster than the program can open a port nothing is lost, so now and then it gets the time to. */
const OPENED_EVERY = 10;

test.each([
  ['Node', {}],
  ['the window’s runtime', { openPort: openInReader }],
])('5: gone and back a hundred times as fast as it can, read by a process of %s', async (whose, how) => {
  rig = await faultRig(how);
  await rig.warmUp();
  const before = descriptors();
  const readersBefore = readerDescriptors();
  const states = () => rig.record().filter((entry) => entry['port'] === 'A' && 'state' in entry);
  for (let round = 0; round < PULLS; round += 1) {
    const statesBefore = states().length;
    await rig.board.pull();
    await rig.board.plugIn();
    if (round % OPENED_EVERY === OPENED_EVERY - 1)
      await until('the port to be open', () => states().length > statesBefore && stateOf('A') === 'open');
  }
  const lineCount = lines().length;
  // The one that is open may still be the one before the last pull, where nobody hears what is said.
  await until('a line after it', () => {
    void rig.board.send('T1=98.1 T2=98.2 T3=98.3\n');
    return lines().length > lineCount;
  });
  await until('the descriptors to be given back', () => descriptors() <= before);
  const seen = states().map(({ state }) => state);
  const losses = seen.filter((state) => state === 'lost').length;
  expect(losses).toBeGreaterThanOrEqual(PULLS / OPENED_EVERY);
  expect(seen).toEqual(seen.map((_, n) => (n % 2 === 0 ? 'open' : 'lost')));
  expect(rig.raised('port-lost').length).toBeLessThanOrEqual(losses);
  expect(rig.now().alarms.filter(({ alarm }) => alarm === 'port-lost').length).toBe(1);
  const readers = readerDescriptors();
  // Those of the test before may still have been going when they were counted.
  expect(readers.size).toBeLessThanOrEqual(readersBefore.size);
  // One whose read never ended was killed, and another stands in its place, which may hold as many as one did before.
  const most = Math.max(...readersBefore.values());
  for (const [pid, count] of readers) expect(count).toBeLessThanOrEqual(readersBefore.get(pid) ?? most);
  await rig.alwaysTrue(
    5,
    `${PULLS} pulls as fast as it can${whose === 'Node' ? '' : ', in the window'}`,
    `${losses} losses seen, 1 alarm, ${descriptors() - before} descriptors more`,
  );
});

test('6: a port that another program holds', async () => {
  rig = await faultRig();
  await rig.board.pull();
  await until('the loss', () => stateOf('A') === 'lost');
  await rig.board.plugIn();
  // Another program may be quicker than the next try, or slower; where it is slower it is refused itself.
  await openSerialPort(rig.board.path, 9600, { bytes: () => undefined, gone: () => undefined }).then(
    async (held) => {
      await until('the sentence', () =>
        rig.notices.some((sentence) => /is held by another program: close/.test(sentence)),
      );
      await held.close();
    },
    (error: Error) => expect(error.message).toMatch(/lock/i),
  );
  await until('it to open when it is let go', () => stateOf('A') === 'open');
  await rig.alwaysTrue(6, 'held by another program');
});

/** Plugs it in with a device that only `mode` lets anybody use, and of this group, before the program can see it. */
async function plugInForbidden(mode: number, gid: number | null): Promise<void> {
  const { path } = rig.board;
  await rig.board.plugIn('made-ready');
  chmodSync(rig.board.path, mode);
  if (gid !== null) chownSync(rig.board.path, 0, gid);
  symlinkSync(realpathSync(rig.board.path), path);
}

const isRoot = process.getuid?.() === 0;

/** A named group of this system that its root is not in. */
function someGroup(): { name: string; gid: number } {
  const own = process.getgroups?.() ?? [];
  const groups = readFileSync('/etc/group', 'utf8').split('\n');
  const named = groups.map((line) => line.split(':')).map(([name = '', , gid]) => ({ name, gid: Number(gid) }));
  return named.find(({ gid }) => gid > 0 && !own.includes(gid)) ?? { name: 'none', gid: 0 };
}

/** Where tests run as root, to whom no port is forbidden, the reader alone runs as a user who may do nothing. */
async function forbidden(mode: number, gid: number | null): Promise<{ path: string; sentence: string }> {
  const reader = fileURLToPath(new URL('powerless-reader.ts', import.meta.url));
  const pool = new ReaderPool(() => new ReaderProcess(forkReader(reader)));
  rig = await faultRig({ openPort: pool.open, mode: 0o666 });
  const { path } = rig.board;
  await rig.board.pull();
  await until('the loss', () => stateOf('A') === 'lost');
  await plugInForbidden(mode, gid);
  const isIt = (sentence: string): boolean => sentence.startsWith(`Port A (${path}) may not be opened by this user`);
  await until('the sentence', () => rig.notices.some(isIt));
  return { path, sentence: rig.notices.find(isIt) ?? '' };
}

const as = isRoot ? 'as another user' : 'as this user';

test('6: a port that nobody may open', async () => {
  const { path, sentence } = await forbidden(0o000, null);
  expect(sentence).toContain(`nor by the group "`);
  expect(sentence).toContain(`type "sudo chmod a+rw ${path}" in a terminal`);
  chmodSync(path, 0o666);
  await until('it to open once it may be', () => stateOf('A') === 'open');
  await rig.alwaysTrue(6, 'no permission, mode 000', as);
});

// Only root can give a device to a group that this user is not in.
test.runIf(isRoot)('6: a port that only a group may open', async () => {
  const { name, gid } = someGroup();
  const { path, sentence } = await forbidden(0o060, gid);
  expect(sentence).toContain(`the group "${name}" owns it; type "sudo usermod -aG ${name} $USER" in a terminal`);
  expect(sentence).toContain('Sign out and in again');
  chmodSync(path, 0o666);
  await until('it to open once it may be', () => stateOf('A') === 'open');
  await rig.alwaysTrue(6, 'no permission, for a group alone', `${as}, group ${name} named`);
});
