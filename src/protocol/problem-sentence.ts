// Puts the first thing that a schema found wrong into one sentence that names the field.
import type { z } from 'zod';

const SHOWN_CHARACTERS = 60;

/** `["pans", 1, "probe"]` as a person writes it: `pans[1].probe`. */
function fieldPath(path: readonly PropertyKey[]): string {
  let text = '';
  for (const step of path) {
    if (typeof step === 'number') text += `[${step}]`;
    else text += text === '' ? String(step) : `.${String(step)}`;
  }
  return text;
}

/** A value as it is quoted in a sentence: JSON, cut where it is long. */
export function shown(value: unknown): string {
  // JSON would show Infinity as null.
  const text = typeof value === 'number' ? String(value) : jsonText(value);
  return text.length > SHOWN_CHARACTERS ? `${text.slice(0, SHOWN_CHARACTERS)}…` : text;
}

function jsonText(value: unknown): string {
  try {
    return JSON.stringify(value) ?? String(value);
  } catch {
    // JSON.stringify recurses, and hostile input can be nested deeper than the stack.
    return 'something nested too deeply to show';
  }
}

/**
 * One sentence without a full stop, such as `pans[0].vessel.diameter_mm must be at least 10, but is -3`.
 * `root` names the value itself where the path is empty.
 */
export function problemSentence(error: z.ZodError, value: unknown, root: string): string {
  const issue = error.issues[0];
  if (issue === undefined) return `${root} does not hold together`;
  const field = issue.path.length === 0 ? root : fieldPath(issue.path);
  // A custom message says the whole of it already.
  if (issue.code === 'custom') return issue.path.length === 0 ? issue.message : `${field} ${issue.message}`;
  const found = valueAt(value, issue.path);
  if (found === undefined) return `${field} is missing: it ${demand(issue)}`;
  return `${field} ${demand(issue)}, but is ${shown(found)}`;
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let here = value;
  for (const step of path) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = (here as Record<PropertyKey, unknown>)[step];
  }
  return here;
}

function demand(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${withArticle(issue.expected)}`;
    case 'invalid_value':
      return `must be ${issue.values.map((value) => JSON.stringify(value)).join(' or ')}`;
    case 'too_small':
      return limit(issue.origin, issue.inclusive === false ? 'more than' : 'at least', issue.minimum);
    case 'too_big':
      return limit(issue.origin, issue.inclusive === false ? 'less than' : 'at most', issue.maximum);
    default:
      // Unions and formats carry the demand as their message (see the schemas).
      return issue.message;
  }
}

function limit(origin: string, comparison: string, bound: number | bigint): string {
  if (origin === 'string')
    return `must be ${comparison} ${bound} ${Number(bound) === 1 ? 'character' : 'characters'} long`;
  if (origin === 'array') return `must hold ${comparison} ${bound} items`;
  return `must be ${comparison} ${bound}`;
}

function withArticle(expected: string): string {
  const words: Record<string, string> = {
    array: 'a list',
    boolean: 'true or false',
    int: 'a whole number',
    object: 'an object',
    record: 'an object',
    string: 'text',
  };
  return words[expected] ?? `a ${expected}`;
}
