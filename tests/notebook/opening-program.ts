// A program for the tests to kill: says that it begins, then opens the notebook of a folder, and so brings it forward.
import { writeSync } from 'node:fs';
import { openNotebook } from '../../src/notebook/open-notebook.ts';

writeSync(1, 'opening\n');
openNotebook(process.argv[2] ?? '');
setInterval(() => {}, 1000);
