// Lines wait for less than a second, what a person did does not wait, and nothing is lost while writing fails.
import { expect, test } from 'vitest';
import { Recorder } from '../../src/host/recorder.ts';
import { HandClock } from './hand-clock.ts';

function recorderOn(disk: { full: boolean; texts: string[] }, mostHeld?: number) {
  const machine = new HandClock();
  const said: string[] = [];
  const recorder = new Recorder({
    append(texts) {
      if (disk.full) throw new Error('the disk is full');
      disk.texts.push(...texts);
      return disk.texts.length;
    },
    after: (milliseconds, call) => machine.after(milliseconds, call),
    kept: (entries) => said.push(`kept ${entries}`),
    failing: (why) => said.push(`failing: ${why}`),
    working: () => said.push('working'),
    overflowing: () => said.push('overflowing'),
    mostHeld,
  });
  return { recorder, machine, said };
}

test('lines are written together, within a second', () => {
  const disk = { full: false, texts: [] as string[] };
  const { recorder, machine, said } = recorderOn(disk);
  recorder.add('1');
  machine.run(500);
  recorder.add('2');
  expect(disk.texts).toEqual([]);
  machine.run(499);
  expect(disk.texts).toEqual(['1', '2']);
  expect(said).toEqual(['kept 2']);
});

test('a commit writes at once, with what came before it, in order', async () => {
  const disk = { full: false, texts: [] as string[] };
  const { recorder } = recorderOn(disk);
  recorder.add('line');
  recorder.add('mark');
  const outcome = recorder.commit();
  expect(disk.texts).toEqual(['line', 'mark']);
  expect(await outcome).toEqual({ ok: true });
});

test('while writing fails all is held, tried again each second, and whoever waits is told when it is on disk', async () => {
  const disk = { full: true, texts: [] as string[] };
  const { recorder, machine, said } = recorderOn(disk);
  recorder.add('mark');
  const outcome = recorder.commit();
  recorder.add('line');
  machine.run(3000);
  expect(said).toEqual(['failing: the disk is full']);
  disk.full = false;
  machine.run(1000);
  expect(disk.texts).toEqual(['mark', 'line']);
  expect(said).toEqual(['failing: the disk is full', 'kept 2', 'working']);
  expect(await outcome).toEqual({ ok: true });
});

test('who still waits at the end is told that it was not written down', async () => {
  const { recorder } = recorderOn({ full: true, texts: [] });
  recorder.add('mark');
  const outcome = recorder.commit();
  recorder.close();
  expect(await outcome).toEqual({ ok: false, why: 'It could not be written down: the disk is full.' });
});

test('a long failure is written down in pieces, so that nothing waits for all of it', async () => {
  const disk = { full: true, texts: [] as string[] };
  const { recorder, machine, said } = recorderOn(disk);
  const texts = Array.from({ length: 2500 }, (_, t) => String(t));
  for (const text of texts) recorder.add(text);
  const outcome = recorder.commit();
  machine.run(1000);
  disk.full = false;
  machine.run(1000);
  expect(said.filter((what) => what.startsWith('kept'))).toEqual(['kept 1000', 'kept 2000', 'kept 2500']);
  expect(disk.texts).toEqual(texts);
  expect(await outcome).toEqual({ ok: true });
});

test('when memory is full only lines are given up, it is said once, and a gap stands for them', () => {
  const disk = { full: true, texts: [] as string[] };
  const { recorder, machine, said } = recorderOn(disk, 10);
  recorder.add('line at 1000', 1000);
  recorder.add('line at 2000', 2000);
  recorder.add('mark at 2500');
  recorder.add('line at 3000', 3000);
  machine.run(2000);
  disk.full = false;
  machine.run(1000);
  recorder.add('line at 9000', 9000);
  machine.run(1000);
  expect(disk.texts).toEqual(['line at 1000', 'mark at 2500', '{"t":9000,"run":"gap","seconds":7}', 'line at 9000']);
  expect(said.filter((what) => what === 'overflowing')).toHaveLength(1);
});
