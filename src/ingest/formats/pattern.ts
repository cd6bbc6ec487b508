// Reads lines by a pattern in RE2 syntax with the groups channel, value and, if there is one, unit.
import { RE2JS } from 're2js';
import type { PortFormat } from '../../core/boil/entries.ts';
import type { LineResult } from '../../core/boil/line-reading.ts';
import { nothingFrom, Outcome } from './outcome.ts';
import { hasUnreadableBytes, readValue } from './value.ts';

const longestPattern = 1000;
const mostCompiled = 64;
/**
 * One search is linear, but a line may hold thousands of matches, each found by a search to its end. The bound is on
 * characters times instructions of the pattern, about 20 ns each (measured): at most 0.1 s a line, on any machine
 * the same lines.
 */
const mostSteps = 4_000_000;

type Compiled = { pattern: RE2JS } | { problem: string };
const compiled = new Map<string, Compiled>();

/** Readings of every match in the line. Never throws: a pattern that cannot be used is the reason of every line. */
export function readPattern(line: string, format: PortFormat & { kind: 'pattern' }): LineResult {
  const ready = compile(format.pattern);
  if ('problem' in ready) return nothingFrom(ready.problem);
  const matcher = ready.pattern.matcher(line);
  const size = ready.pattern.programSize();
  const outcome = new Outcome();
  let steps = line.length * size;
  while (steps <= mostSteps && matcher.find()) {
    add(outcome, matcher.group('channel'), matcher.group('value'), unitOf(matcher), matcher.group() ?? '');
    steps += (line.length - matcher.end()) * size;
  }
  if (steps > mostSteps) return nothingFrom('too much work for this pattern');
  const result = outcome.result();
  return result.readings.length + result.rejected.length > 0 ? result : nothingFrom('no match');
}

type Matcher = ReturnType<RE2JS['matcher']>;
const unitOf = (matcher: Matcher): string => ('unit' in matcher.namedGroups ? (matcher.group('unit') ?? '') : '');

function add(outcome: Outcome, channel: string | null, value: string | null, unit: string, piece: string): void {
  if (!channel || value === null) outcome.reject('not a name with a value', piece);
  else if (hasUnreadableBytes(channel)) outcome.reject('unreadable bytes', piece);
  else outcome.add(channel, readValue(value + unit, 0, value.length + unit.length, decimalOf(value)), piece);
}

/** A pattern that takes a comma into the value means a decimal comma, where no point stands beside it. */
const decimalOf = (value: string): number =>
  (value.includes('.') ? '.' : value.includes(',') ? ',' : '.').charCodeAt(0);

function compile(pattern: string): Compiled {
  const known = compiled.get(pattern);
  if (known !== undefined) return known;
  if (compiled.size >= mostCompiled) compiled.clear();
  const fresh = compileAnew(pattern);
  compiled.set(pattern, fresh);
  return fresh;
}

function compileAnew(pattern: string): Compiled {
  if (pattern.length > longestPattern)
    return { problem: `the pattern of this port is longer than ${longestPattern} characters` };
  try {
    const ready = RE2JS.compile(pattern);
    const missing = ['channel', 'value'].find((group) => !(group in ready.namedGroups()));
    return missing === undefined
      ? { pattern: ready }
      : { problem: `the pattern of this port has no group named ${missing}` };
  } catch (error) {
    return {
      problem: `the pattern of this port cannot be read: ${error instanceof Error ? error.message : String(error)}`,
    };
  }
}
