// Gathers what each fault showed from all test files of a run, and prints it as one table at the end.
import { appendFileSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inject } from 'vitest';
import type { TestProject } from 'vitest/node';

export interface Row {
  fault: number;
  what: string;
  /** The longest turn of the event loop, ms of processor time, and a call's way, ms. */
  turnMs: number;
  callMs: number;
  /** Entries that the notebook gave back. */
  entries: number;
  /** Figures of this fault alone. */
  seen: string;
}

declare module 'vitest' {
  interface ProvidedContext {
    faultRows: string;
  }
}

export const addRow = (row: Row): void => appendFileSync(inject('faultRows'), `${JSON.stringify(row)}\n`);

/** Before all test files; what it gives back runs after them. */
export default function setup(project: TestProject): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-faults-'));
  const file = join(folder, 'rows.jsonl');
  project.provide('faultRows', file);
  return () => {
    if (existsSync(file)) console.log(table(readFileSync(file, 'utf8')));
    rmSync(folder, { recursive: true, force: true });
  };
}

function table(text: string): string {
  const rows = text
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Row)
    .sort((a, b) => a.fault - b.fault);
  const printed = rows.map(({ fault, what, turnMs, callMs, entries, seen }) => {
    const figures = `${turnMs.toFixed(0).padStart(6)} ms${callMs.toFixed(0).padStart(6)} ms${String(entries).padStart(8)}`;
    return `  ${String(fault).padStart(2)}  ${what.padEnd(46)}${figures}  ${seen}`.trimEnd();
  });
  return `\n   #  fault                                        longest    call   entries\n                                                        turn      of  readable\n${printed.join('\n')}\n`;
}
