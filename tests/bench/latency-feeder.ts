// A process of its own that says the same line so many times a second into a pseudo terminal: PATH LINES_A_SECOND LINE.
import { openSync, writeSync } from 'node:fs';

const [, , path, rate, line] = process.argv;
if (path === undefined || rate === undefined || line === undefined) throw new Error('PATH LINES_A_SECOND LINE');
const TURN_MS = 10;

const end = openSync(path, 'w');
const startMs = performance.now();
let said = 0;
setInterval(() => {
  const due = Math.floor(((performance.now() - startMs) / 1000) * Number(rate));
  if (due > said) writeSync(end, `${line}\n`.repeat(due - said));
  said = due;
}, TURN_MS);
