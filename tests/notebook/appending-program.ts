// A program for the tests to kill: takes the folder's lock, appends to a boil for ever, and prints the count after each commit.
import { writeSync } from 'node:fs';
import { lockFolder, openNotebook } from '../../src/notebook/open-notebook.ts';
import { tarnHollow } from './tarn-hollow.ts';

const folder = process.argv[2] ?? '';
const lock = lockFolder(folder);
if (lock === null) throw new Error('the folder is held');
const notebook = openNotebook(folder);
const { boil, entries } = notebook.running() ?? notebook.begin(tarnHollow, 'live');
for (let t = entries; ; t += 3) {
  const texts = [t, t + 1, t + 2].map((at) => JSON.stringify({ t: at, port: 'A', line: `T1=${at}` }));
  writeSync(1, `${notebook.append(boil, texts)}\n`);
}
