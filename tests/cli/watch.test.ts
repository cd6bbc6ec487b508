// `watch` over pseudo terminals: what is said to be kept survives any kill, and the boil goes on.
import { readFile } from 'node:fs/promises';
import { expect, test, type TestContext } from 'vitest';
import type { Header } from '../../src/core/boil/entries.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { ownFolder, Program, ranPanwarden } from './program.ts';
import type { Line } from './program.ts';
import { plugIn } from './pseudo-terminals.ts';

const setupOf = (path: string, name = 'Tarn Hollow, invented') => ({
  name,
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A', path }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' }],
});

/** A folder of its own with a board, for tests that run beside each other; all of it is taken away at the end. */
async function place({ onTestFinished }: TestContext) {
  const own = ownFolder();
  const running: Program[] = [];
  const data = ['--data', own.path('data')];
  let board = await plugIn(own.path('A'));
  onTestFinished(async () => {
    for (const program of running) if (program.process.exitCode === null) await program.kill('SIGKILL');
    await board.pull();
    own.remove();
  });
  const start = (...options: string[]): Program => {
    const program = new Program(...options, ...data, '--json');
    running.push(program);
    return program;
  };
  const setup = own.write('setup.json', setupOf(own.path('A')));
  return {
    own,
    data,
    start,
    watchPans: () => start('watch', '--setup', setup, '--every', '1'),
    pull: () => board.pull(),
    async plugIn() {
      board = await plugIn(own.path('A'));
    },
    /** The port is open once its own entry is kept; the first line after that may be a cut one and is dropped. */
    async feed(program: Program, count: number) {
      const before = kept(program);
      board.feed('T1=96.0C');
      for (let index = 0; index < count; index += 1) board.feed(`T1=97.${index % 10}C`);
      await program.until(() => kept(program) >= before + count);
    },
    async exported(): Promise<Line[]> {
      const to = own.path('out.boil.jsonl');
      expect(await ranPanwarden('export', 'latest', '--to', to, ...data)).toMatchObject({ status: 0 });
      return (await readFile(to, 'utf8')).trimEnd().split('\n').slice(1).map(lineOf);
    },
    /** What the notebook holds of its only boil, without a program. */
    entries(): Line[] {
      const notebook = openNotebook(own.path('data'));
      const entries = [...notebook.entries(notebook.boils()[0]?.boil ?? '')].map(lineOf);
      notebook.close();
      return entries;
    },
    /** A boil that was running when its program was killed. */
    leaveBoil() {
      const notebook = openNotebook(own.path('data'));
      const header = { recording: 'panwarden', version: 1, started: '2027-04-18T07:30:00-07:00' };
      const { boil } = notebook.begin({ ...header, ...setupOf(own.path('A')) } as Header, 'live');
      notebook.append(boil, ['{"t":0,"port":"A","state":"open"}', '{"t":900,"port":"A","line":"T1=97.1C"}']);
      notebook.close();
    },
  };
}

const lineOf = (text: string): Line => JSON.parse(text) as Line;
const isKind = (kind: string) => (line: Line) => line['kind'] === kind;
const kept = (program: Program) => (program.lines.findLast(isKind('kept'))?.['entries'] ?? 0) as number;

/** Two boils beside each other, each killed so often. */
const ROUNDS = 5;

test.concurrent.for(['one', 'another'])(
  'every entry of %s boil that was kept is there after kill -9, round after round',
  async (_, context) => {
    const { watchPans, feed, entries, exported, data } = await place(context);
    for (let round = 0; round < ROUNDS; round += 1) {
      const program = watchPans();
      const { entries: before } = await program.line(isKind('watching'));
      await program.until(() => kept(program) > (before as number));
      await feed(program, 5);
      const count = kept(program);
      await program.kill('SIGKILL');
      const entriesNow = entries();
      expect(entriesNow.length).toBeGreaterThanOrEqual(count);
      expect(entriesNow.filter((entry) => entry['run'] === 'gap')).toHaveLength(round);
    }
    expect(await exported()).toEqual(entries());
    expect((await ranPanwarden('boils', '--json', ...data)).lines()).toMatchObject([{ running: true }]);
    const times = entries().map(({ t }) => t as number);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  },
);

test.concurrent('a cable that is pulled is called once, and the boil goes on when it is back', async (context) => {
  const { watchPans, feed, pull, plugIn } = await place(context);
  const program = watchPans();
  await program.until(() => kept(program) > 0);
  await feed(program, 3);
  await pull();
  expect(await program.line((line) => line['alarm'] === 'port-lost')).toMatchObject({
    event: 'raised',
    pan: null,
    port: 'A',
  });
  await plugIn();
  await program.line((line) => line['alarm'] === 'port-lost' && line['event'] === 'cleared');
  await feed(program, 3);
  expect(program.lines.filter((line) => line['alarm'] === 'port-lost' && line['event'] === 'raised')).toHaveLength(1);
  expect(await program.kill('SIGTERM')).toBe(0);
});

test.concurrent('commands on standard input are answered when their effect is on disk', async (context) => {
  const { watchPans, exported, data } = await place(context);
  const program = watchPans();
  await program.line(isKind('watching'));
  program.say({ ref: 'a1', mark: { kind: 'pressure', hpa: 940 } });
  expect(await program.line(({ ref }) => ref === 'a1')).toMatchObject({ kind: 'answered', ok: true });
  expect((await exported()).some((entry) => 'mark' in entry)).toBe(true);
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
  expect((await exported()).at(-1)).toMatchObject({ run: 'ended' });
  expect(await ranPanwarden('end', 'latest', ...data)).toMatchObject({ status: 2 });
});

test.concurrent('a folder that is watched is left alone by others, and a different setup is refused while its boil runs', async (context) => {
  const { own, watchPans, entries, exported, data } = await place(context);
  const program = watchPans();
  await program.line(isKind('watching'));
  const file = own.write('x.boil.jsonl', 'x');
  const others = [['watch'], ['end', 'latest'], ['import', file]].map((words) => ranPanwarden(...words, ...data));
  const [second, ...refused] = await Promise.all(others);
  expect(second).toMatchObject({ status: 2, stderr: expect.stringContaining('another program watches') });
  for (const one of refused) {
    expect(one).toMatchObject({ status: 2, stderr: expect.stringContaining('while a boil is watched') });
  }
  expect(await program.kill('SIGINT')).toBe(0);
  const other = own.write('other.json', setupOf(own.path('A'), 'Another'));
  expect(await ranPanwarden('watch', ...data, '--setup', other)).toMatchObject({
    status: 2,
    stderr: expect.stringContaining('another setup'),
  });
  const before = entries();
  expect((await ranPanwarden('end', 'latest', ...data)).status).toBe(0);
  expect(await exported()).toEqual([...before, { t: before.at(-1)?.['t'], run: 'ended' }]);
});

test.concurrent('a port that is not there is said, called and waited for', async (context) => {
  const { own, watchPans, pull, plugIn } = await place(context);
  await pull();
  const program = watchPans();
  expect(await program.line((line) => line['alarm'] === 'port-lost')).toMatchObject({
    event: 'raised',
    priority: 'high',
  });
  expect(program.stderr).toContain(own.path('A'));
  await plugIn();
  await program.line((line) => line['alarm'] === 'port-lost' && line['event'] === 'cleared');
});

test.concurrent('the practice boil calls its finish and ends up in the notebook as a practice boil', async (context) => {
  const { start, entries, data } = await place(context);
  const program = start('practice', '--speed', '600', '--every', '600');
  await program.line((line) => line['alarm'] === 'finish' && line['event'] === 'raised');
  expect(await program.kill('SIGTERM')).toBe(0);
  expect((await ranPanwarden('boils', '--json', ...data)).lines()).toMatchObject([{ running: false, practice: true }]);
  expect(entries()).toHaveLength(kept(program));
});

test.concurrent('a refused practice boil leaves the boil that was running as it was', async (context) => {
  const { leaveBoil, entries, data } = await place(context);
  leaveBoil();
  const before = entries();
  const refused = await ranPanwarden('practice', ...data, '--json');
  expect([refused.status, refused.stdout]).toEqual([2, '']);
  expect(refused.stderr).toContain('end it first');
  expect(entries()).toEqual(before);
});

test.concurrent('a damaged notebook makes check end with 1 and a sentence', async (context) => {
  const { own, leaveBoil, data } = await place(context);
  leaveBoil();
  own.write('data/notebook.sqlite', 'garbage, not a notebook, long enough to be looked at as one'.repeat(200));
  const checked = await ranPanwarden('check', ...data);
  expect(checked.status).toBe(1);
  expect(checked.stderr).toContain(own.path('data'));
});

test.concurrent('an emptied notebook is no new one, and a file is no data folder: both are said', async (context) => {
  const { own } = await place(context);
  own.write('emptied/notebook.sqlite', '');
  const checked = await ranPanwarden('check', '--data', own.path('emptied'));
  expect([checked.status, checked.stdout]).toEqual([1, expect.stringContaining('is an empty file')]);
  const listed = await ranPanwarden('boils', '--data', own.write('file', 'x'));
  expect([listed.status, listed.stderr]).toEqual([2, expect.stringContaining('is a file')]);
});

test.concurrent('a folder that is not there cannot be checked, is named, and is not made', async (context) => {
  const { own } = await place(context);
  const missing = own.path('not-there');
  for (let look = 0; look < 2; look += 1) {
    const checked = await ranPanwarden('check', '--data', missing);
    expect([checked.status, checked.stdout]).toEqual([2, '']);
    expect(checked.stderr).toBe(`There is no folder ${missing}: name the one of your notebook with --data.\n`);
  }
});
