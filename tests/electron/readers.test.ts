// Ports of the desktop window: each read in a process of its own, which is ended when its reading never returns.
import { fileURLToPath } from 'node:url';
import { expect, test, vi } from 'vitest';
import { ReaderProcess } from '../../src/ingest/reader-process.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { until } from '../ingest/until.ts';

vi.mock('electron', () => import('./electron-stand-in.ts'));
const { openInReader, startReader } = await import('../../electron/readers.ts');
const { utilityProcess } = await import('./electron-stand-in.ts');

test('what a board sends arrives, a pull is told once, and the port can be opened again', async () => {
  const board = pretendBoard();
  try {
    for (let round = 0; round < 2; round++) {
      await board.plugIn();
      let text = '';
      let gone = 0;
      const bytes = (chunk: Uint8Array): void => void (text += Buffer.from(chunk).toString());
      const port = await openInReader(board.path, 9600, { bytes, gone: () => (gone += 1) });
      await board.send('T1=98.25C\n');
      await until('the line', () => text === 'T1=98.25C\n');
      await board.pull();
      await until('the loss', () => gone === 1);
      await port.close();
    }
    await expect(openInReader('/dev/tarn-hollow-none', 9600, { bytes() {}, gone() {} })).rejects.toThrow(
      /No such file/,
    );
  } finally {
    await board.remove();
  }
});

test('a read of nothing that never ends is noticed, and its process ended, though it hears no request', async () => {
  const spinning = fileURLToPath(new URL('../ingest/spinning-reader.ts', import.meta.url));
  const forked = vi.spyOn(utilityProcess, 'fork');
  const reader = new ReaderProcess(startReader(spinning));
  const child = forked.mock.results[0]!.value as ReturnType<typeof utilityProcess.fork>;
  const ended = new Promise((resolve) => child.once('exit', resolve));
  let gone = 0;
  await reader.open('/dev/invented', 9600, { bytes: () => undefined, gone: () => (gone += 1) });
  await until('the port to be gone', () => gone === 1, 50_000);
  expect(reader.isDead).toBe(true);
  await ended;
});
