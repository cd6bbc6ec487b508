// A folder of its own for a test, outside of the project, taken away when the test is over.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Notebook } from '../../src/notebook/contract.ts';
import { openNotebook } from '../../src/notebook/open-notebook.ts';

/** The folder in which a test may make what it likes. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'panwarden-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export function scratchNotebook(folder = scratchFolder(), options: { readOnly?: boolean } = {}): Notebook {
  const notebook = openNotebook(folder, options);
  onTestFinished(() => notebook.close());
  return notebook;
}
