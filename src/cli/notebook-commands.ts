// The commands around the notebook: list, take in, end, check.
import { createReadStream, existsSync } from 'node:fs';
import type { BoilSummary, Notebook } from '../notebook/contract.ts';
import { DamagedNotebook, openNotebook } from '../notebook/open-notebook.ts';
import { dataFolder } from '../host/data-folder.ts';
import { takeIn } from '../host/import/take-in.ts';
import { copyAfterBoil } from './backup-commands.ts';
import { CommandProblem, fileTrouble } from './failure.ts';
import { withFolder } from './folder-lock.ts';
import { clockText } from './plain-text.ts';
import { printer } from './printer.ts';

interface FolderOptions {
  data?: string;
  json?: boolean;
}

/** Lists the boils of a notebook, the newest first. */
export async function boils(options: FolderOptions): Promise<void> {
  await reading(options, (notebook) =>
    notebook.boils().map((boil) => (options.json ? boilLine(boil) : boilText(boil))),
  );
}

/** Changes nothing; the exit code is 1 when something is damaged. */
export async function check(options: FolderOptions): Promise<void> {
  const folder = dataFolder(options.data);
  // Elsewhere a folder that is not there is a notebook without boils; here that would say that all is well with it.
  if (!existsSync(folder)) {
    throw new CommandProblem(`There is no folder ${folder}: name the one of your notebook with --data.`, 2);
  }
  try {
    await reading(options, (notebook) => {
      const { damaged, findings } = notebook.check();
      if (damaged) process.exitCode = 1;
      return findings;
    });
  } catch (error) {
    // What cannot even be opened is what this command was asked to find.
    if (error instanceof DamagedNotebook) throw new CommandProblem(`${error.message}.`, 1);
    throw error;
  }
}

/** Takes a recording into the notebook; throws a CommandProblem for one that cannot be read. */
export async function importRecording(file: string, options: FolderOptions): Promise<void> {
  const pieces = createReadStream(file);
  await new Promise<void>((opened, failed) => {
    pieces.once('open', () => opened());
    pieces.once('error', (error) => failed(fileTrouble(file, error)));
  });
  await writing(options, 'A recording cannot be imported', async (notebook) => {
    const { boil, leftOut } = await takeIn(notebook, pieces, file).catch((error: unknown) => {
      throw (error as NodeJS.ErrnoException).syscall === 'read' ? fileTrouble(file, error) : error;
    });
    for (const sentence of leftOut) process.stderr.write(`${sentence}.\n`);
    return boilLine(boil);
  });
}

/** Ends a boil that was left running; throws a CommandProblem where it is over already. */
export async function end(boil: string, options: FolderOptions): Promise<void> {
  await writing(options, 'A boil cannot be ended', async (notebook) => {
    const found = notebook.find(boil);
    if (!found.running) throw new CommandProblem(`The boil "${found.boil}" is over already.`, 2);
    notebook.end(found.boil, Math.round(found.seconds * 1000));
    if (found.kind === 'live') copyAfterBoil(notebook);
    return options.json ? boilLine(notebook.find(found.boil)) : `${found.boil} is over.`;
  });
}

async function reading(
  options: FolderOptions,
  work: (notebook: Notebook) => string[] | Promise<string[]>,
): Promise<void> {
  const notebook = openNotebook(dataFolder(options.data), { readOnly: true });
  try {
    const out = printer();
    for (const remark of notebook.remarks) process.stderr.write(`${remark}\n`);
    for (const line of await work(notebook)) out.line(line);
    await out.flush();
  } finally {
    notebook.close();
  }
}

/** Takes the folder first: what is watched there is left alone. */
async function writing(
  options: FolderOptions,
  what: string,
  work: (notebook: Notebook) => Promise<string>,
): Promise<void> {
  const folder = dataFolder(options.data);
  await withFolder(folder, what, async () => {
    const notebook = openNotebook(folder);
    try {
      const out = printer();
      out.line(await work(notebook));
      await out.flush();
    } finally {
      notebook.close();
    }
  });
}

function boilLine({ boil, kind, name, started, seconds, entries, running }: BoilSummary): string {
  return JSON.stringify({
    kind: 'boil',
    boil,
    name,
    started,
    seconds,
    entries,
    running,
    practice: kind === 'practice',
  });
}

function boilText({ boil, kind, name, started, seconds, entries, running }: BoilSummary): string {
  const remark = [running ? 'running' : '', kind === 'practice' ? 'practice' : '']
    .filter((word) => word !== '')
    .join(', ');
  return `${boil}  ${started}  ${clockText(seconds * 1000)}  ${entries} entries  ${name}${remark === '' ? '' : `  (${remark})`}`;
}
