// Reads lines that are JSON objects, each channel found by a JSON Pointer (RFC 6901).
import type { PortFormat } from '../../core/boil/entries.ts';
import type { LineResult } from '../../core/boil/line-reading.ts';
import { nothingFrom, Outcome } from './outcome.ts';
import { broken, numberValue, type Refusal, type Value } from './value.ts';

const missing = Symbol('nothing there');

/** Readings of a line that is one JSON object; null in it says that the probe is broken, as NaN becomes null. */
export function readJson(line: string, format: PortFormat & { kind: 'json' }): LineResult {
  const value = parsed(line);
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return nothingFrom('not a JSON object');
  const outcome = new Outcome();
  for (const [channel, pointer] of Object.entries(format.channels)) {
    const found = at(value, pointer);
    if (found === missing) outcome.refuse('nothing there', channel, pointer);
    else outcome.add(channel, valueOf(found), pointer);
  }
  return outcome.result();
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return null;
  }
}

function valueOf(found: unknown): Value | Refusal {
  if (found === null || (typeof found === 'string' && /^(?:nan|open|fault)$/i.test(found))) return broken;
  return typeof found === 'number' ? numberValue(found) : 'not a number';
}

/** RFC 6901: `/` parts the names, `~1` stands for `/` and `~0` for `~`; list items are named 0, 1, 2. */
function at(root: object, pointer: string): unknown {
  if (!pointer.startsWith('/')) return missing;
  let value: unknown = root;
  for (const token of pointer.slice(1).split('/')) {
    const name = token.replaceAll('~1', '/').replaceAll('~0', '~');
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, name)) return missing;
    if (Array.isArray(value) && !/^(?:0|[1-9]\d*)$/.test(name)) return missing;
    value = (value as Record<string, unknown>)[name];
  }
  return value;
}
