// Keeps what a person writes down beside the boils: the page of each boil and the collected sap; the caller brings the transaction.
import type { DatabaseSync } from 'node:sqlite';
import type { z } from 'zod';
import type { BoilPage, Collection } from '../core/season/records.ts';
import { problemSentence } from '../protocol/problem-sentence.ts';
import { boilPageSchema, collectionSchema } from '../protocol/season-schemas.ts';
import { boilRow } from './boil-table.ts';
import { NotebookProblem } from './contract.ts';
import { replacePageWords } from './search.ts';

/** Empty when nothing was written. */
export function pageOf(database: DatabaseSync, boil: string): BoilPage {
  const row = database.prepare('SELECT page FROM page WHERE boil = ?').get(boilRow(database, boil).number);
  return row === undefined ? {} : checked(boilPageSchema, JSON.parse(String(row['page'])), 'the page of the boil');
}

/** The whole page in place of the one before. Throws NotebookProblem (2) naming the field that is wrong. */
export function keepPage(database: DatabaseSync, boil: string, page: BoilPage): void {
  const { number } = boilRow(database, boil);
  const sound = checked(boilPageSchema, page, 'the page of the boil');
  database.prepare('INSERT OR REPLACE INTO page (boil, page) VALUES (?, ?)').run(number, JSON.stringify(sound));
  replacePageWords(database, number, sound);
}

/** Newest day first; of one day, in the order of their ids. */
export function collections(database: DatabaseSync): Collection[] {
  return database
    .prepare('SELECT collection FROM collection ORDER BY day DESC, id')
    .all()
    .map((row) => checked(collectionSchema, JSON.parse(String(row['collection'])), 'the collected sap'));
}

/** A new one, or in place of the one with its id. Throws NotebookProblem (2) naming the field that is wrong. */
export function keepCollection(database: DatabaseSync, collection: Collection): void {
  const sound = checked(collectionSchema, collection, 'the collected sap');
  database
    .prepare('INSERT OR REPLACE INTO collection (id, day, collection) VALUES (?, ?, ?)')
    .run(sound.id, sound.day, JSON.stringify(sound));
}

/** Takes collected sap out of the list; nothing happens where it is not there. */
export function dropCollection(database: DatabaseSync, id: string): void {
  database.prepare('DELETE FROM collection WHERE id = ?').run(id);
}

/** A sentence for each page and collection that does not hold together. */
export function writingFaults(database: DatabaseSync): string[] {
  const pages = database.prepare('SELECT id, page AS text FROM page JOIN boil ON number = page.boil').all();
  const gathered = database.prepare('SELECT id, collection AS text FROM collection').all();
  return [
    ...pages.flatMap((row) => faultOf(boilPageSchema, String(row['text']), `Boil ${String(row['id'])}: its page`)),
    ...gathered.flatMap((row) => faultOf(collectionSchema, String(row['text']), `Collection ${String(row['id'])}`)),
  ];
}

function faultOf(schema: z.ZodType, text: string, what: string): string[] {
  const value: unknown = JSON.parse(text);
  const parsed = schema.safeParse(value);
  return parsed.success ? [] : [`${what} does not hold together: ${problemSentence(parsed.error, value, 'it')}.`];
}

function checked<Value>(schema: z.ZodType<Value>, value: unknown, what: string): Value {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new NotebookProblem(`${what} cannot be so: ${problemSentence(parsed.error, value, 'it')}`, 2);
}
