// Reads a boil's entries in order, stretch by stretch, wherever they stand: in packed blocks or in rows of their own.
import type { DatabaseSync } from 'node:sqlite';
import { blockAfter, blockAt, unpacked, type Block } from './blocks.ts';

/** Some entries in a row. */
export interface Stretch {
  /** The place of the first; places count from 1. */
  first: number;
  /** How many they should be. */
  entries: number;
  /** As they were kept; or why they cannot be had. */
  texts: string[] | { why: string };
  /** The t under which each was kept; of a block only the first and the last, of a part of one none. */
  ts: number[];
}

/** A line may hold 1 MB, so few are fetched at a time. */
const ROWS_AT_A_TIME = 200;

/**
 * The stretches up to the place `last`. Each is fetched by itself, so that a slow reader never holds the database open
 * between two of them; what is appended or put away into blocks meanwhile changes nothing of what is read. Places
 * that are nowhere are passed over.
 */
export function* stretches(database: DatabaseSync, boil: number, last: number): Generator<Stretch> {
  let place = 0;
  for (;;) {
    const stretch = nextStretch(database, boil, place, last);
    if (stretch === null || stretch.first > last) return;
    yield stretch;
    place = stretch.first + stretch.entries - 1;
  }
}

function nextStretch(database: DatabaseSync, boil: number, place: number, last: number): Stretch | null {
  const block = blockAt(database, boil, place + 1);
  if (block !== undefined) return ofBlock(block, place + 1, last);
  const rows = ofRows(database, boil, place, last);
  if (rows?.first === place + 1) return rows;
  // Another program may have put them away between the two looks.
  const sealed = blockAt(database, boil, place + 1) ?? blockAfter(database, boil, place);
  if (sealed === undefined || (rows !== null && rows.first < sealed.first)) return rows;
  return ofBlock(sealed, Math.max(place + 1, sealed.first), last);
}

function ofBlock(block: Block, from: number, last: number): Stretch {
  const texts = unpacked(block);
  const ts = [block.first_t, block.last_t];
  const isWhole = from === block.first && block.first + block.entries - 1 <= last;
  if (!Array.isArray(texts) || isWhole) return { first: block.first, entries: block.entries, texts, ts };
  const part = texts.slice(from - block.first, last - block.first + 1);
  return { first: from, entries: part.length, texts: part, ts: [] };
}

/** Rows that follow each other without a gap. */
function ofRows(database: DatabaseSync, boil: number, place: number, last: number): Stretch | null {
  const rows = database
    .prepare('SELECT place, t, text FROM entry WHERE boil = ? AND place > ? AND place <= ? ORDER BY place LIMIT ?')
    .all(boil, place, last, ROWS_AT_A_TIME) as unknown as { place: number; t: number; text: string }[];
  const first = rows[0]?.place;
  if (first === undefined) return null;
  const gap = rows.findIndex((row, index) => row.place !== first + index);
  const run = gap === -1 ? rows : rows.slice(0, gap);
  return { first, entries: run.length, texts: run.map(({ text }) => text), ts: run.map(({ t }) => t) };
}
