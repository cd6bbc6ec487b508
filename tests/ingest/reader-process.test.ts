// The process that reads a port: ended when its reading never returns, given back when it is closed, gone with the program.
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ReaderPool } from '../../src/ingest/reader-pool.ts';
import { forkReader, ReaderProcess } from '../../src/ingest/reader-process.ts';
import { pretendBoard } from './pretend-board.ts';
import { until } from './until.ts';

const silent = { bytes: () => undefined, gone: () => undefined };

test('a read of nothing that never ends is noticed, its process ended, and the port said to be gone, once', async () => {
  const pool = new ReaderPool(
    () => new ReaderProcess(forkReader(fileURLToPath(new URL('spinning-reader.ts', import.meta.url)))),
  );
  let gone = 0;
  const opened = await pool.open('/dev/invented', 9600, { bytes: () => undefined, gone: () => (gone += 1) });
  await until('the port to be gone', () => gone > 0, 50_000);
  await opened.close();
  expect(gone).toBe(1);
  expect(pool.size).toBe(0);
});

test('one process serves one opening after the other, and two ports have one each', async () => {
  const boards = [pretendBoard(), pretendBoard()] as const;
  const pool = new ReaderPool();
  try {
    await Promise.all(boards.map((board) => board.plugIn()));
    for (let round = 0; round < 3; round++) await (await pool.open(boards[0].path, 9600, silent)).close();
    expect(pool.size).toBe(1);
    const both = await Promise.all(boards.map((board) => pool.open(board.path, 9600, silent)));
    expect(pool.size).toBe(2);
    await Promise.all(both.map((port) => port.close()));
    await expect(pool.open('/dev/tarn-hollow-none', 9600, silent)).rejects.toThrow(/No such file/);
    expect(pool.size).toBe(2);
  } finally {
    await Promise.all(boards.map((board) => board.remove()));
  }
});
