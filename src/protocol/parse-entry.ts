// Reads one line of a recording: the header, or an entry; and writes an entry as a line.
import type { Answer, Called, Entry, Header, Mark } from '../core/boil/entries.ts';
import { answerSchema, calledSchema, markKinds, markSchema } from './entry-schemas.ts';
import { checkHeader } from './header-schema.ts';
import { problemSentence, shown } from './problem-sentence.ts';
import { DAY_MS } from '../core/quantities/time.ts';

/** Longest line of a recording that is read, in UTF-16 units here and in bytes where bytes are read. */
export const LONGEST_LINE = 1_000_000;
/** 400 days: a `t` beyond it is a fault, not a boil. */
const LARGEST_T = 400 * DAY_MS;
/** Deeper values are refused, so that no recursive step behind this can run out of stack. */
const DEEPEST_NESTING = 64;

export type ParsedEntry = { ok: true; entry: Entry } | { ok: false; why: string };
export type ParsedHeader = { ok: true; header: Header } | { ok: false; why: string };

type Fields = Record<string, unknown>;

/**
 * The entry that a line holds, or a sentence without a full stop that says why it holds none. What this
 * version does not know is `{t, unknown: true}`: kept in the record by its text, ignored by the fold.
 */
export function parseEntry(text: string): ParsedEntry {
  const value = parseObject(text);
  if (typeof value === 'string') return refused(value);
  const t = value['t'];
  if (typeof t !== 'number' || !Number.isInteger(t) || t < 0 || t > LARGEST_T) return refused(badT(t));
  const port = value['port'];
  const line = value['line'];
  // Nearly all of a recording is lines of a port: they pass here, without a schema.
  if (typeof port === 'string' && typeof line === 'string') return { ok: true, entry: { t, port, line } };
  if (port !== undefined && typeof port !== 'string') return refused(`port must be text, but is ${shown(port)}`);
  if (port !== undefined && line !== undefined) return refused(`line must be text, but is ${shown(line)}`);
  return parseRare(text, t, value);
}

/** The header that line 1 holds, or a sentence without a full stop that names the field. */
export function parseHeader(text: string): ParsedHeader {
  const value = parseObject(text);
  if (typeof value === 'string') return { ok: false, why: value };
  if (tooDeep(text)) return { ok: false, why: TOO_DEEP };
  return checkHeader(value);
}

/** The line of an entry, without its line end. What is unknown has only the text that it came with. */
export function entryText(entry: Entry): string {
  if ('unknown' in entry) throw new TypeError('an unknown entry is kept by the text that it came with');
  return JSON.stringify(entry);
}

function parseRare(text: string, t: number, value: Fields): ParsedEntry {
  if (value['mark'] !== undefined) return tooDeep(text) ? refused(TOO_DEEP) : parseMark(t, value['mark']);
  if (value['set'] !== undefined) return tooDeep(text) ? refused(TOO_DEEP) : parseSet(t, value['set']);
  if (value['answer'] !== undefined) return tooDeep(text) ? refused(TOO_DEEP) : parseAnswer(t, value['answer']);
  if (value['called'] !== undefined && !tooDeep(text)) return parseCalled(t, value['called']);
  if (value['run'] !== undefined) return parseRun(t, value);
  return parsePortState(t, value);
}

function parseMark(t: number, value: unknown): ParsedEntry {
  const mark = asFields(value);
  if (mark === null) return refused(`mark must be an object, but is ${shown(value)}`);
  const kind = mark['kind'];
  if (typeof kind !== 'string') return refused(`mark.kind must be text, but is ${shown(kind)}`);
  if (!markKinds.has(kind) || saysNothing(kind, mark)) return unknown(t);
  const result = markSchema.safeParse(mark);
  if (!result.success) return refused(`mark of kind ${kind}: ${problemSentence(result.error, mark, 'it')}`);
  const { happened } = result.data;
  if (happened !== undefined && happened > t) {
    return refused(`mark of kind ${kind}: happened is ${happened}, which is after its t of ${t}`);
  }
  return { ok: true, entry: { t, mark: result.data as Mark } };
}

/** These marks are one figure; recording.md lets the figure be left out, and then nothing is said. */
const ONLY_QUANTITY: Readonly<Record<string, string>> = {
  pressure: 'hpa',
  'water-check': 'celsius',
  depth: 'mm',
  reading: 'celsius',
  fuel: 'kg',
  remind: 'seconds',
};

function saysNothing(kind: string, mark: Fields): boolean {
  const quantity = ONLY_QUANTITY[kind];
  return quantity !== undefined && mark[quantity] === undefined;
}

function parseSet(t: number, value: unknown): ParsedEntry {
  const patch = asFields(value);
  if (patch === null) return refused(`set must be an object, a merge patch over the header, but is ${shown(value)}`);
  return { ok: true, entry: { t, set: patch } };
}

const ANSWERS = ['acknowledge', 'silence', 'put_aside'];

function parseAnswer(t: number, value: unknown): ParsedEntry {
  const answer = asFields(value);
  if (answer === null) return refused(`answer must be an object, but is ${shown(value)}`);
  if (!ANSWERS.some((name) => answer[name] !== undefined)) return unknown(t);
  const result = answerSchema.safeParse(answer);
  if (!result.success) return refused(problemSentence(result.error, answer, 'answer'));
  return { ok: true, entry: { t, answer: result.data as Answer } };
}

/** What was called then is shown, never acted on: a call of a later version is kept like anything unknown. */
function parseCalled(t: number, value: unknown): ParsedEntry {
  const result = calledSchema.safeParse(value);
  return result.success ? { ok: true, entry: { t, called: result.data as Called } } : unknown(t);
}

function parseRun(t: number, value: Fields): ParsedEntry {
  if (value['run'] === 'ended') return { ok: true, entry: { t, run: 'ended' } };
  if (value['run'] !== 'gap') return unknown(t);
  const seconds = value['seconds'];
  if (typeof seconds !== 'number' || !(seconds >= 0 && seconds * 1000 <= LARGEST_T)) {
    return refused(`seconds of a gap must be a number from 0 on, but is ${shown(seconds)}`);
  }
  return { ok: true, entry: { t, run: 'gap', seconds } };
}

function parsePortState(t: number, value: Fields): ParsedEntry {
  const { port, state, why } = value;
  if (typeof port !== 'string' || (state !== 'open' && state !== 'lost')) return unknown(t);
  return { ok: true, entry: typeof why === 'string' ? { t, port, state, why } : { t, port, state } };
}

function refused(why: string): { ok: false; why: string } {
  return { ok: false, why };
}

function unknown(t: number): ParsedEntry {
  return { ok: true, entry: { t, unknown: true } };
}

function badT(t: unknown): string {
  if (t === undefined) return 't is missing: it must be whole milliseconds since the start';
  return `t must be whole milliseconds from 0 to ${LARGEST_T}, but is ${shown(t)}`;
}

function asFields(value: unknown): Fields | null {
  return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : null;
}

const TOO_DEEP = `it is nested deeper than ${DEEPEST_NESTING} levels`;

/** The object that the text holds, or why it holds none. */
function parseObject(text: string): Fields | string {
  if (text.length > LONGEST_LINE) return 'it is longer than 1 MB';
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return `it is no JSON: ${shown(text)}`;
  }
  return asFields(value) ?? `it is no JSON object: ${shown(value)}`;
}

/** Counts brackets outside of strings; only called for text that is known to be JSON. */
function tooDeep(text: string): boolean {
  let depth = 0;
  for (const [token] of text.matchAll(/"[^"\\]*(?:\\.[^"\\]*)*"|[[\]{}]/gsu)) {
    if (token === '{' || token === '[') depth += 1;
    else if (token === '}' || token === ']') depth -= 1;
    if (depth > DEEPEST_NESTING) return true;
  }
  return false;
}
