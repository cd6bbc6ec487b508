// Reads everything in the notebook and says, in sentences, whether it holds together; changes nothing.
import type { DatabaseSync } from 'node:sqlite';
import { parseEntry, parseHeader } from '../protocol/recording.ts';
import { boilRows, type BoilRow } from './boil-table.ts';
import { KeptCount, lostSentence } from './kept-count.ts';
import { writingFaults } from './pages.ts';
import { photoFaults } from './photos.ts';
import { stretches, type Stretch } from './stretches.ts';
import { teachingFaults } from './teachings.ts';

export interface CheckResult {
  damaged: boolean;
  findings: string[];
}

/** One bad page can spoil thousands of rows; these many are named for each boil. */
const MOST_FINDINGS = 10;

/** Looks at every page and row, and says what does not hold together; changes nothing. */
export function checkNotebook(database: DatabaseSync, folder: string): CheckResult {
  // Before the list of boils is read: a program that writes meanwhile adds to both.
  const counted = new KeptCount(folder).read();
  const findings: string[] = [];
  const attempt = (what: string, look: () => string[]) => findings.push(...findingsOf(what, look));
  attempt('The notebook', () => pageFindings(database));
  attempt('The notebook', () => strayFindings(database));
  let rows: BoilRow[] = [];
  attempt('The list of boils', () => {
    rows = boilRows(database);
    return [];
  });
  for (const boil of rows) attempt(`Boil ${boil.id}`, () => boilFindings(database, boil));
  const lost = lostSentence(counted, (id) => rows.find((row) => row.id === id)?.entries ?? null);
  if (lost !== null) findings.push(lost);
  for (const boil of rows) attempt(`The photos of boil ${boil.id}`, () => photoFaults(database, folder, boil));
  attempt('What boils taught', () => teachingFaults(database));
  attempt('What was written beside the boils', () => writingFaults(database));
  const damaged = findings.length > 0;
  const entries = rows.reduce((sum, boil) => sum + boil.entries, 0);
  const kept = `${rows.length} ${rows.length === 1 ? 'boil' : 'boils'} with ${entries} entries`;
  findings.push(
    damaged ? `The notebook is damaged; it lists ${kept}.` : `${kept} were read, and all of it holds together.`,
  );
  return { damaged, findings };
}

/** A damaged file can make any read fail; that too is a finding. */
function findingsOf(what: string, look: () => string[]): string[] {
  try {
    return look();
  } catch (error) {
    return [`${what} could not be read to its end: ${(error as Error).message}.`];
  }
}

function pageFindings(database: DatabaseSync): string[] {
  return database
    .prepare('PRAGMA integrity_check(20)')
    .all()
    .map((row) => String(row['integrity_check']))
    .filter((answer) => answer !== 'ok')
    .map((answer) => `The notebook's file does not hold together: ${answer}.`);
}

function strayFindings(database: DatabaseSync): string[] {
  const strays = database.prepare('PRAGMA foreign_key_check').all().length;
  return strays > 0 ? [`${strays} rows belong to no boil.`] : [];
}

function boilFindings(database: DatabaseSync, boil: BoilRow): string[] {
  const header = parseHeader(boil.header);
  const findings = header.ok ? [] : [`Boil ${boil.id}: its header does not hold together: ${header.why}.`];
  let reached = { place: 0, t: 0 };
  try {
    // Places beyond the count are looked at too: they would be entries that no list knows of.
    for (const stretch of stretches(database, boil.number, Number.MAX_SAFE_INTEGER)) {
      const { first, entries } = stretch;
      if (first !== reached.place + 1)
        findings.push(`Boil ${boil.id}: entries ${reached.place + 1} to ${first - 1} are missing.`);
      const read = stretchFindings(boil, stretch, reached.t);
      findings.push(...read.findings);
      reached = { place: first + entries - 1, t: read.lastT };
      if (findings.length >= MOST_FINDINGS)
        return [...findings.slice(0, MOST_FINDINGS), `Boil ${boil.id}: there may be more.`];
    }
  } catch (error) {
    const had = `its first ${reached.place} of ${boil.entries} entries can be read, and then none`;
    return [...findings, `Boil ${boil.id}: ${had}: ${(error as Error).message}.`];
  }
  return [...findings, ...countFindings(boil, reached.place, reached.t)];
}

function stretchFindings(boil: BoilRow, stretch: Stretch, after: number): { findings: string[]; lastT: number } {
  const { first, texts, ts } = stretch;
  if (!Array.isArray(texts)) {
    return { findings: [`Boil ${boil.id}: ${texts.why}.`], lastT: Math.max(after, ts.at(-1) ?? 0) };
  }
  let lastT = after;
  const findings = texts.flatMap((text, index) => {
    const keptT = keptUnder(stretch, index);
    const parsed = parseEntry(text);
    const fault = parsed.ok ? timeFault(parsed.entry.t, keptT, lastT) : parsed.why;
    lastT = Math.max(lastT, keptT ?? (parsed.ok ? parsed.entry.t : 0));
    return fault === null ? [] : [`Boil ${boil.id}, entry ${first + index}: ${fault}.`];
  });
  return { findings, lastT };
}

/** The t under which an entry was kept; null inside of a block, which says it only of its ends. */
function keptUnder({ ts, entries }: Stretch, index: number): number | null {
  if (ts.length === entries) return ts[index] ?? null;
  if (index === 0) return ts[0] ?? null;
  return index === entries - 1 ? (ts.at(-1) ?? null) : null;
}

function countFindings(boil: BoilRow, place: number, lastT: number): string[] {
  const findings: string[] = [];
  if (place !== boil.entries)
    findings.push(`Boil ${boil.id}: ${boil.entries} entries were kept, and ${place} are there.`);
  if (place > 0 && lastT !== boil.last_t)
    findings.push(`Boil ${boil.id}: it should end at t ${boil.last_t}, and ends at ${lastT}.`);
  return findings;
}

function timeFault(t: number, keptT: number | null, lastT: number): string | null {
  if (keptT !== null && t !== keptT) return `it was kept under t ${keptT}, and says ${t}`;
  return t < lastT ? `its t of ${t} steps back behind ${lastT}` : null;
}
