// `watch` over pseudo terminals: what is said to be kept survives any kill, and the boil goes on.
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ownFolder, panwarden, Program } from './program.ts';
import type { Line } from './program.ts';
import { plugIn } from './pseudo-terminals.ts';
import type { Board } from './pseudo-terminals.ts';

let own: ReturnType<typeof ownFolder>;
let board: Board;
let running: Program[] = [];

beforeEach(async () => {
  own = ownFolder();
  board = await plugIn(own.path('A'));
});

afterEach(async () => {
  for (const program of running) if (program.process.exitCode === null) await program.kill('SIGKILL');
  running = [];
  await board.pull();
  own.remove();
});

const setup = (name = 'Tarn Hollow, invented') => ({
  name,
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A', path: own.path('A') }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' }],
});

function watchPans(...more: string[]): Program {
  const file = own.write('setup.json', setup());
  const program = new Program('watch', '--data', own.path('data'), '--setup', file, '--json', '--every', '1', ...more);
  running.push(program);
  return program;
}

function exported(): Line[] {
  const to = own.path('out.boil.jsonl');
  expect(panwarden('export', 'latest', '--to', to, '--data', own.path('data')).status).toBe(0);
  return readFileSync(to, 'utf8')
    .trimEnd()
    .split('\n')
    .slice(1)
    .map((line) => JSON.parse(line) as Line);
}

const isKind = (kind: string) => (line: Line) => line['kind'] === kind;
const kept = (program: Program) => (program.lines.findLast(isKind('kept'))?.['entries'] ?? 0) as number;

/** The port is open once its own entry is kept; the first line after that may be a cut one and is dropped. */
async function feed(program: Program, count: number): Promise<void> {
  const before = kept(program);
  board.feed('T1=96.0C');
  for (let index = 0; index < count; index += 1) board.feed(`T1=97.${index % 10}C`);
  await program.until(() => kept(program) >= before + count);
}

test('every entry that was kept is in the export after kill -9, round after round, as one boil', async () => {
  for (let round = 0; round < 10; round += 1) {
    const program = watchPans();
    const { entries } = await program.line(isKind('watching'));
    await program.until(() => kept(program) > (entries as number));
    await feed(program, 5);
    const count = kept(program);
    await program.kill('SIGKILL');
    const entriesNow = exported();
    expect(entriesNow.length).toBeGreaterThanOrEqual(count);
    expect(entriesNow.filter((entry) => entry['run'] === 'gap')).toHaveLength(round);
  }
  expect(panwarden('boils', '--json', '--data', own.path('data')).lines()).toMatchObject([{ running: true }]);
  const times = exported().map(({ t }) => t as number);
  expect(times).toEqual([...times].sort((a, b) => a - b));
});

test('a cable that is pulled is called once, and the boil goes on when it is back', async () => {
  const program = watchPans();
  await program.until(() => kept(program) > 0);
  await feed(program, 3);
  await board.pull();
  expect(await program.line((line) => line['alarm'] === 'port-lost')).toMatchObject({
    event: 'raised',
    pan: null,
    port: 'A',
  });
  board = await plugIn(own.path('A'));
  await program.line((line) => line['alarm'] === 'port-lost' && line['event'] === 'cleared');
  await feed(program, 3);
  expect(program.lines.filter((line) => line['alarm'] === 'port-lost' && line['event'] === 'raised')).toHaveLength(1);
  expect(await program.kill('SIGTERM')).toBe(0);
});

test('commands on standard input are answered when their effect is on disk', async () => {
  const program = watchPans();
  await program.line(isKind('watching'));
  program.say({ ref: 'a1', mark: { kind: 'pressure', hpa: 940 } });
  expect(await program.line(({ ref }) => ref === 'a1')).toMatchObject({ kind: 'answered', ok: true });
  expect(exported().some((entry) => 'mark' in entry)).toBe(true);
  program.say('[1');
  expect(await program.line(({ ref }) => ref === null)).toMatchObject({ ok: false });
  program.say({ ref: 'a2', set: { pans: [{ id: 'p1', probe: 'nope' }] } });
  expect(await program.line(({ ref }) => ref === 'a2')).toMatchObject({
    ok: false,
    why: expect.stringContaining('nope'),
  });
  program.say({ ref: 'a3', answer: { acknowledge: { pan: 'p1', alarm: 'finish' } } });
  expect(await program.line(({ ref }) => ref === 'a3')).toMatchObject({ ok: false });
  program.say({ ref: 'a4', end: true });
  expect(await program.line(({ ref }) => ref === 'a4')).toMatchObject({ ok: true });
  expect(await program.ended).toBe(0);
  expect(exported().at(-1)).toMatchObject({ run: 'ended' });
  expect(panwarden('end', 'latest', '--data', own.path('data'))).toMatchObject({ status: 2 });
});

test('a folder that is watched is left alone by others, and a different setup is refused while its boil runs', async () => {
  const program = watchPans();
  await program.line(isKind('watching'));
  const data = ['--data', own.path('data')];
  const second = panwarden('watch', ...data);
  expect(second).toMatchObject({ status: 2, stderr: expect.stringContaining('another program watches') });
  for (const command of [
    ['end', 'latest'],
    ['import', own.write('x.boil.jsonl', 'x')],
  ]) {
    expect(panwarden(...command, ...data)).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('while a boil is watched'),
    });
  }
  expect(await program.kill('SIGINT')).toBe(0);
  const other = panwarden('watch', ...data, '--setup', own.write('other.json', setup('Another')));
  expect(other).toMatchObject({ status: 2, stderr: expect.stringContaining('another setup') });
  const before = exported();
  expect(panwarden('end', 'latest', ...data).status).toBe(0);
  expect(exported()).toEqual([...before, { t: before.at(-1)?.['t'], run: 'ended' }]);
});

test('a port that is not there is said, called and waited for', async () => {
  await board.pull();
  const program = watchPans();
  expect(await program.line((line) => line['alarm'] === 'port-lost')).toMatchObject({
    event: 'raised',
    priority: 'high',
  });
  expect(program.stderr).toContain(own.path('A'));
  board = await plugIn(own.path('A'));
  await program.line((line) => line['alarm'] === 'port-lost' && line['event'] === 'cleared');
});

test('the practice boil calls its finish and ends up in the notebook as a practice boil', async () => {
  const program = new Program('practice', '--data', own.path('data'), '--speed', '600', '--json', '--every', '600');
  running.push(program);
  await program.line((line) => line['alarm'] === 'finish' && line['event'] === 'raised');
  expect(await program.kill('SIGTERM')).toBe(0);
  expect(panwarden('boils', '--json', '--data', own.path('data')).lines()).toMatchObject([
    { running: false, practice: true },
  ]);
  expect(exported()).toHaveLength(kept(program));
});

test('a refused practice boil leaves the boil that was running as it was', async () => {
  const program = watchPans();
  await program.until(() => kept(program) > 0);
  await program.kill('SIGKILL');
  const before = exported();
  const refused = panwarden('practice', '--data', own.path('data'), '--json');
  expect([refused.status, refused.stdout]).toEqual([2, '']);
  expect(refused.stderr).toContain('end it first');
  expect(exported()).toEqual(before);
});

test('a damaged notebook makes check end with 1 and a sentence', async () => {
  const program = watchPans();
  await program.until(() => kept(program) > 0);
  await program.kill('SIGTERM');
  own.write('data/notebook.sqlite', 'garbage, not a notebook, long enough to be looked at as one'.repeat(200));
  const checked = panwarden('check', '--data', own.path('data'));
  expect(checked.status).toBe(1);
  expect(checked.stderr).toContain(own.path('data'));
});

test('an emptied notebook is no new one, and a file is no data folder: both are said', () => {
  own.write('emptied/notebook.sqlite', '');
  const checked = panwarden('check', '--data', own.path('emptied'));
  expect([checked.status, checked.stdout]).toEqual([1, expect.stringContaining('is an empty file')]);
  const listed = panwarden('boils', '--data', own.write('file', 'x'));
  expect([listed.status, listed.stderr]).toEqual([2, expect.stringContaining('is a file')]);
});

test('a folder that is not there cannot be checked, is named, and is not made', () => {
  const missing = own.path('not-there');
  for (let look = 0; look < 2; look += 1) {
    const checked = panwarden('check', '--data', missing);
    expect([checked.status, checked.stdout]).toEqual([2, '']);
    expect(checked.stderr).toBe(`There is no folder ${missing}: name the one of your notebook with --data.\n`);
  }
});
