// Kills the live program at a random moment of what it does, and looks whether all that it had acknowledged is there.
import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { fileURLToPath } from 'node:url';
import { openNotebook } from '../../src/notebook/open-notebook.ts';
import { ownFolder, Program } from './program.ts';
import type { Line } from './program.ts';

export const MOMENTS = ['start', 'alarm', 'checkpoint', 'migration', 'end and backup'] as const;
export type Moment = (typeof MOMENTS)[number];

/** An invented pot at Tarn Hollow; its port is not there, so that an alarm comes at once. */
const setup = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow',
  ports: [{ id: 'A', path: '/dev/panwarden-none' }],
  probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
  pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1' }],
};

export interface Round {
  moment: Moment;
  /** Effects that had been acknowledged, and what was not as it should be afterwards. */
  acknowledged: number;
  faults: string[];
}

/** `random` gives 0 to 1. The folder is used on from round to round, so that a boil goes on through many kills. */
export async function killRound(moment: Moment, folder: string, random: () => number): Promise<Round> {
  if (moment === 'migration') return migrationRound(random);
  const before = boilsOf(folder);
  const program = new Program('watch', '--json', '--every', '1', '--data', folder, '--setup', setupFile());
  // What was still to be said when it is killed reaches nobody.
  program.process.stdin?.on('error', () => {});
  if (moment !== 'start') {
    await program.line(({ kind }) => kind === 'watching');
    act(program, moment);
    await someAnswers(program, Math.floor(random() * (moment === 'checkpoint' ? 300 : 2)));
  }
  await wait(random() * (moment === 'start' ? 1200 : 60));
  await program.kill('SIGKILL');
  return { moment, ...look(folder, program.lines, before) };
}

const own = ownFolder();
function setupFile(): string {
  return own.write('setup.json', setup);
}

/** Takes away what the rounds have left. */
export function tidyUp(): void {
  own.remove();
}

function act(program: Program, moment: Moment): void {
  if (moment === 'alarm') {
    program.say({ ref: 'ack', answer: { acknowledge: { pan: null, alarm: 'port-lost', port: 'A' } } });
    program.say({ ref: 'note-0', mark: { kind: 'note', text: 'note-0', id: `a-${process.hrtime.bigint()}` } });
  } else if (moment === 'checkpoint') {
    const long = 'x'.repeat(3000);
    for (let index = 0; index < 400; index += 1) {
      program.say({ ref: `note-${index}`, mark: { kind: 'note', text: `note-${index} ${long}` } });
    }
  } else {
    program.say({ ref: 'end', end: true });
  }
}

async function someAnswers(program: Program, count: number): Promise<void> {
  await program.until(() => program.lines.filter(({ kind }) => kind === 'answered').length >= count);
}

function look(folder: string, lines: readonly Line[], before: Map<string, number>): Omit<Round, 'moment'> {
  const boil = String(lines.find(({ kind }) => kind === 'watching')?.['boil'] ?? '');
  const kept = Math.max(0, ...lines.filter(({ kind }) => kind === 'kept').map(({ entries }) => Number(entries)));
  const answered = lines.filter(({ kind, ok }) => kind === 'answered' && ok === true).map(({ ref }) => String(ref));
  const faults: string[] = [];
  if (existsSync(join(folder, 'notebook.sqlite'))) {
    const notebook = openNotebook(folder);
    const check = notebook.check();
    if (check.damaged) faults.push(...check.findings);
    faults.push(...notebook.remarks);
    const texts = boil === '' ? [] : [...notebook.entries(boil)];
    if (texts.length < kept) faults.push(`${kept} entries were kept, and ${texts.length} are there`);
    for (const [id, entries] of before) {
      if (notebook.find(id).entries < entries) faults.push(`${id} had ${entries} entries, and has fewer`);
    }
    faults.push(...answered.filter((ref) => !isThere(ref, texts)).map((ref) => `${ref} was answered and is not there`));
    notebook.close();
  } else if (before.size > 0 || boil !== '') faults.push('there is no notebook');
  return { acknowledged: answered.length + kept, faults: [...faults, ...copyFaults(folder)] };
}

function isThere(ref: string, texts: readonly string[]): boolean {
  if (ref === 'end') return texts.at(-1)?.includes('"ended"') ?? false;
  return texts.some((text) => text.includes(ref === 'ack' ? '"acknowledge"' : `"${ref}`));
}

function copyFaults(folder: string): string[] {
  const backups = join(folder, 'backups');
  if (!existsSync(backups)) return [];
  return readdirSync(backups)
    .filter((name) => name.endsWith('.sqlite'))
    .flatMap((name) => {
      const copy = new DatabaseSync(join(backups, name), { readOnly: true });
      const answer = String(copy.prepare('PRAGMA integrity_check').get()?.['integrity_check']);
      copy.close();
      return answer === 'ok' ? [] : [`the copy ${name}: ${answer}`];
    });
}

async function migrationRound(random: () => number): Promise<Round> {
  const place = ownFolder();
  try {
    mkdirSync(place.path('data'));
    const fixture = fileURLToPath(new URL('../../fixtures/notebooks/v1.sqlite', import.meta.url));
    copyFileSync(fixture, place.path('data/notebook.sqlite'));
    const program = new Program('watch', '--json', '--data', place.path('data'));
    await wait(200 + random() * 900);
    await program.kill('SIGKILL');
    const before = new Map([
      ['2027-04-17-first-run', 300],
      ['2027-04-18-sundays-run', 300],
    ]);
    return { moment: 'migration', ...look(place.path('data'), program.lines, before) };
  } finally {
    place.remove();
  }
}

function boilsOf(folder: string): Map<string, number> {
  if (!existsSync(join(folder, 'notebook.sqlite'))) return new Map();
  const notebook = openNotebook(folder, { readOnly: true });
  const boils = notebook.boils();
  notebook.close();
  return new Map(boils.map(({ boil, entries }) => [boil, entries]));
}

function wait(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
