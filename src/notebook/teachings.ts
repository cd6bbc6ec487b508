// Keeps what each live boil taught about its probes and saps, and what of it a person wants forgotten; the caller brings the transaction.
import type { DatabaseSync } from 'node:sqlite';
import { z } from 'zod';
import type { Learnt, ProbeSetup } from '../core/boil/entries.ts';
import { learntSchema, probeSchema } from '../protocol/header-schema.ts';
import { problemSentence } from '../protocol/problem-sentence.ts';
import { boilRow } from './boil-table.ts';
import { NotebookProblem, type Teaching } from './contract.ts';

const textSchema = z.object({ learnt: learntSchema, probes: z.array(probeSchema) });

/**
 * Puts what the boil taught in the place of what it had taught before; null takes it away. Throws NotebookProblem
 * when it does not hold together, when the boil is over, or when it is no live one: what a practice boil teaches is
 * made up, and an imported one taught about another person's probes and trees.
 */
export function keepTeaching(
  database: DatabaseSync,
  id: string,
  learnt: Learnt | null,
  probes: readonly ProbeSetup[],
): void {
  const boil = boilRow(database, id);
  if (boil.kind !== 'live' || boil.running === 0) {
    throw new NotebookProblem(`the boil "${boil.id}" is no live boil that runs: it teaches the next ones nothing`, 2);
  }
  if (learnt === null) {
    database.prepare('DELETE FROM learnt WHERE boil = ?').run(boil.number);
    return;
  }
  const taught = { learnt, probes };
  const checked = textSchema.safeParse(taught);
  if (!checked.success) throw new NotebookProblem(`nothing can be learnt so: ${problem(checked.error, taught)}`, 1);
  database
    .prepare('INSERT OR REPLACE INTO learnt (boil, taught) VALUES (?, ?)')
    .run(boil.number, JSON.stringify(taught));
}

interface TeachingRow {
  number: number;
  id: string;
  name: string;
  started: string;
  taught: string;
}

/**
 * Newest first by the order in which the boils were begun, which no wrongly set clock can change. What does not hold
 * together is left out, so that the next boil can begin all the same: checking the notebook says it.
 */
export function teachings(database: DatabaseSync): Teaching[] {
  const forgotten = database.prepare('SELECT name FROM forgotten WHERE boil = ?');
  return teachingRows(database).flatMap(({ number, id, name, started, taught }) => {
    const checked = parsed(taught);
    if (typeof checked === 'string') return [];
    const names = forgotten.all(number).map((row) => String(row['name']));
    return [{ boil: id, name, started, ...checked, forgotten: names }];
  });
}

/**
 * Marks the name as forgotten in every boil that has taught something or still runs: one that runs may have begun
 * with what is to be forgotten. Boils that begin later teach it anew.
 */
export function forgetName(database: DatabaseSync, name: string): void {
  database
    .prepare(
      `INSERT OR IGNORE INTO forgotten (boil, name)
       SELECT number, ? FROM boil
       WHERE kind = 'live' AND (running = 1 OR number IN (SELECT boil FROM learnt))`,
    )
    .run(name);
}

/** A sentence for each boil whose teaching does not hold together. */
export function teachingFaults(database: DatabaseSync): string[] {
  return teachingRows(database).flatMap(({ id, taught }) => {
    const checked = parsed(taught);
    return typeof checked === 'string' ? [`Boil ${id}: what it taught does not hold together: ${checked}.`] : [];
  });
}

function teachingRows(database: DatabaseSync): TeachingRow[] {
  return database
    .prepare(
      'SELECT number, id, name, started, taught FROM learnt JOIN boil ON number = learnt.boil ORDER BY number DESC',
    )
    .all() as unknown as TeachingRow[];
}

/** What the text says, or why it does not hold together. */
function parsed(text: string): { learnt: Learnt; probes: ProbeSetup[] } | string {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return 'it is no JSON';
  }
  const checked = textSchema.safeParse(value);
  return checked.success ? (checked.data as { learnt: Learnt; probes: ProbeSetup[] }) : problem(checked.error, value);
}

function problem(error: z.ZodError, value: unknown): string {
  return problemSentence(error, value, 'it');
}
