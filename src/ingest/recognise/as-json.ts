// Looks for JSON objects in lines: which numbers in them are readings, under which pointers, and what they are called.
import type { Candidate, CandidateChannel } from './candidate.ts';
import { takeTurns } from './turns.ts';
import { withoutTwins } from './twins.ts';
import { kindOfNumber, partsOf, type Series } from './kind-of-number.ts';

interface Leaf {
  pointer: string;
  /** Names on the way to it, list places left out. */
  names: string[];
  /** What the object that holds it says of itself. */
  label: string;
  unit: string;
  value: unknown;
}

const labelKeys = ['name', 'n', 'id', 'probe', 'sensor', 'label', 'channel', 'ch', 'pan'];
const unitKeys = ['unit', 'units', 'u', 'uom'];
const WHOSE =
  /^(?:id|n|no|nr|num|ch|chan|channel|probe|sensor|pan|addr|address|rom|idx|index|port|pin|name|label|node)$/i;
const mostLeaves = 200;

/** The objects of lines that hold one; an empty list when fewer than half of the lines do. */
export function jsonObjects(lines: readonly string[]): object[] {
  const objects = lines.flatMap((line) => {
    try {
      const value: unknown = JSON.parse(line);
      return typeof value === 'object' && value !== null && !Array.isArray(value) ? [value] : [];
    } catch {
      return [];
    }
  });
  return objects.length > 0 && objects.length >= lines.length / 2 ? objects : [];
}

/** The readings of JSON lines; null when none of their numbers is one. */
export function asJson(objects: object[]): Candidate | null {
  const byPointer = new Map<string, Leaf[]>();
  for (const object of objects) {
    for (const leaf of leavesOf(object)) byPointer.set(leaf.pointer, [...(byPointer.get(leaf.pointer) ?? []), leaf]);
  }
  // `{"id":1,"t":98.2}` and `{"id":2,"t":97.1}` in turn: a pointer alone would mix two probes up.
  const tellsApart = ({ names }: Leaf): boolean => WHOSE.test(names.at(-1) ?? '');
  if (
    [...byPointer.values()].some(
      (leaves) => tellsApart(leaves[0]!) && takeTurns(leaves.map(({ value }) => String(value))),
    )
  )
    return null;
  const all: (CandidateChannel & { pointer: string; leaf: Leaf })[] = [];
  const leftOut: Candidate['leftOut'] = [];
  const doubts: string[] = [];
  for (const [pointer, leaves] of byPointer) {
    const numbers = leaves.filter(({ value }) => typeof value === 'number');
    if (numbers.length === 0) {
      if (leaves.some(({ value }) => typeof value === 'string' && /^-?\d+(\.\d+)?$/.test(value)))
        leftOut.push({
          what: pointer,
          why: 'a text between quotes, though it looks like a number: JSON pointers read numbers only',
        });
      continue;
    }
    const leaf = leaves[0]!;
    if (new Set(leaves.map(({ label }) => label)).size > 1) return null;
    const kind = kindOfNumber(seriesOf(leaf, numbers));
    if (kind.is === 'left-out') leftOut.push({ what: pointer, why: kind.why });
    else
      all.push({
        channel: leaf.label || leaf.names.at(-1) || 'T',
        series: seriesOf(leaf, numbers),
        kind,
        pointer,
        leaf,
      });
  }
  nameApart(all);
  const twins = withoutTwins(all);
  leftOut.push(...twins.leftOut);
  const channels = all.filter((one) => twins.stay.includes(one));
  const format = {
    kind: 'json' as const,
    channels: Object.fromEntries(channels.map((one) => [one.channel, one.pointer])),
  };
  return { format, channels, leftOut, because: 'Each line is one JSON object.', doubts };
}

function seriesOf(leaf: Leaf, leaves: Leaf[]): Series {
  const values = leaves.map(({ value }) => value as number);
  // `{"name":"back","c":98.1}`: the key is the unit, the label the name.
  const key = leaf.names.at(-1) ?? '';
  const name = leaf.label === '' ? leaf.names.join(' ') : `${leaf.label} ${key}`;
  const single = /^[cfk]$/i.test(key) && (leaf.label !== '' || leaf.names.length > 1) ? key : '';
  return { name, unit: leaf.unit || single, values, texts: values.map(String) };
}

function leavesOf(root: object): Leaf[] {
  const leaves: Leaf[] = [];
  const visit = (
    value: unknown,
    pointer: string,
    names: string[],
    holder: { label: string; unit: string },
    depth: number,
  ): void => {
    if (leaves.length >= mostLeaves || depth > 8) return;
    if (typeof value !== 'object' || value === null) {
      leaves.push({ pointer, names, ...holder, value });
      return;
    }
    const own = Array.isArray(value)
      ? holder
      : { label: textOf(value, labelKeys) || holder.label, unit: textOf(value, unitKeys) || holder.unit };
    for (const [key, item] of Object.entries(value)) {
      const token = key.replaceAll('~', '~0').replaceAll('/', '~1');
      visit(item, `${pointer}/${token}`, Array.isArray(value) ? names : [...names, key], own, depth + 1);
    }
  };
  visit(root, '', [], { label: '', unit: '' }, 0);
  return leaves;
}

function textOf(value: object, keys: string[]): string {
  for (const key of keys) {
    const text = (value as Record<string, unknown>)[key];
    if (typeof text === 'string' && text.length < 40 && text !== '' && !/^-?\d+\.\d+$/.test(text)) return text;
  }
  return '';
}

/** The shortest names that tell them apart: the last key, else the way to it, else the pointer. */
function nameApart(channels: { channel: string; pointer: string; leaf: Leaf }[]): void {
  const isClear = (): boolean => new Set(channels.map(({ channel }) => channel)).size === channels.length;
  if (!isClear())
    for (const one of channels)
      one.channel = [one.leaf.label, ...one.leaf.names.slice(-2)].filter((part) => part !== '').join(' ');
  if (!isClear()) for (const one of channels) one.channel = one.pointer.slice(1);
  for (const one of channels)
    if (partsOf(one.channel).length === 0) one.channel = one.pointer.slice(1).replaceAll('/', ' ');
}
