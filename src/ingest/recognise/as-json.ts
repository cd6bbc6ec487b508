// Looks for JSON objects in lines: which numbers in them are readings, under which pointers, and what they are called.
import type { Candidate, CandidateChannel } from './candidate.ts';
import { statusWord } from './pieces.ts';
import { isSeldomSeen, whySeldom } from './left-out.ts';
import { quoted } from './quoted.ts';
import { takeTurns, tellApart } from './turns.ts';
import { withoutTwins } from './twins.ts';
import { withoutUnlike } from './unlike.ts';
import { BOARD_WARMTH, kindOfNumber, namesOther, partsOf, unitOfWords, type Series } from './kind-of-number.ts';

interface Leaf {
  pointer: string;
  /** Names on the way to it, list places left out. */
  names: string[];
  /** What the object that holds it says of itself. */
  label: string;
  unit: string;
  /** The unit is told in the same object, for this number alone. */
  isOwn: boolean;
  value: unknown;
}

const labelKeys = ['name', 'n', 'id', 'probe', 'sensor', 'label', 'tag', 'src', 'who', 'channel', 'ch', 'pan'];
const unitKeys = ['unit', 'units', 'u', 'un', 'uom'];
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

/** A key or a text as it stands in JSON, for a pattern. */
const quotedJson = (text: string): string => quoted(JSON.stringify(text));

/**
 * One object per probe in turn, `{"id":"28ff","name":"syrup pan","c":103.1}`: a pattern that takes the name for the
 * channel; null where no key names whose the object is, or where more than one number in it is a reading.
 */
export function asJsonInTurn(objects: object[], lines: readonly string[]): Candidate | null {
  const all = objects.map((object) => leavesOf(object));
  const flat = all.flat().filter(({ names }) => names.length === 1);
  const keys = [...new Map(flat.map(({ names, pointer }) => [pointer, { key: names[0]!, pointer }])).values()];
  const at = (pointer: string): (Leaf | undefined)[] =>
    all.map((leaves) => leaves.find((leaf) => leaf.pointer === pointer));
  const named = keys.filter(
    ({ key, pointer }) =>
      (WHOSE.test(key) && takeTurns(at(pointer).map((leaf) => String(leaf?.value ?? '')))) || namesProbes(all, pointer),
  );
  const whose = labelKeys.flatMap((key) => named.filter((one) => one.key.toLowerCase() === key))[0] ?? named[0];
  if (whose === undefined) return null;
  const leftOut: Candidate['leftOut'] = [];
  const read = keys.flatMap(({ key, pointer }): CandidateChannel[] => {
    const leaves = at(pointer).filter((leaf): leaf is Leaf => typeof leaf?.value === 'number');
    if (leaves.length < all.length / 2 || pointer === whose.pointer) return [];
    const degrees = leaves.filter(isOfProbe);
    const [first] = degrees;
    if (first === undefined) return [];
    const series = seriesOf({ ...first, label: '' }, degrees);
    const single = series.unit === '' && unitOfWords(key) !== null ? { ...series, unit: key } : series;
    const kind = kindOfNumber(
      single,
      keys.map((one) => one.key),
    );
    if (kind.is === 'read' && !kind.coldJunction) return [{ channel: key, series: single, kind }];
    leftOut.push({ what: key, why: kind.is === 'read' ? BOARD_WARMTH : kind.why });
    return [];
  });
  const { stay, leftOut: twins } = withoutTwins(withoutUnlike(read, leftOut));
  const [value, ...more] = stay;
  if (value === undefined || more.length > 0) return null;
  const texts = all.flatMap((leaves) => {
    const own = leaves.find(({ pointer }) => pointer === whose.pointer);
    // What names the unit of a battery is no probe.
    const isRead = leaves.some((leaf) => leaf.names[0] === value.channel && isOfProbe(leaf));
    return own !== undefined && isRead ? [own.value] : [];
  });
  const names = [...new Set(texts)].filter((text) => typeof text === 'string' || typeof text === 'number').map(String);
  const isText = texts.every((text) => typeof text === 'string');
  const key = (name: string): string => `${quotedJson(name)} *: *`;
  const mark = isText ? '"' : '';
  const channel = `${key(whose.key)}${mark}(?P<channel>${names.map((name) => quotedJson(name).slice(1, -1)).join('|')})${mark}`;
  const number = `${key(value.channel)}(?P<value>[-+]?[0-9]+(?:[.eE][-+0-9]+)*)`;
  const both = lines.filter((line) => line.includes(`"${value.channel}"`) && line.includes(`"${whose.key}"`));
  const isBehind = both.every((line) => line.indexOf(`"${value.channel}"`) > line.indexOf(`"${whose.key}"`));
  const series = { ...value.series, values: [], texts: [] };
  return {
    format: { kind: 'pattern', pattern: isBehind ? `${channel}.*${number}` : `${number}.*${channel}` },
    channels: names.map((name) => ({ channel: name, kind: value.kind, series: { ...series, values: valuesOf(name) } })),
    leftOut: [...leftOut, ...twins],
    because: 'Each line is one JSON object of one probe, which it names.',
    doubts: [],
  };

  function valuesOf(name: string): number[] {
    return all.flatMap((leaves) => {
      const own = leaves.find(({ pointer }) => pointer === whose!.pointer)?.value;
      const number = leaves.find(({ names: [first] }) => first === value!.channel)?.value;
      return String(own) === name && typeof number === 'number' ? [number] : [];
    });
  }
}

/** Of no unit, or of one that a probe has. */
const isOfProbe = ({ unit }: Leaf): boolean => unit === '' || unitOfWords(unit) !== null;

/** The readings of JSON lines; null when none of their numbers is one. */
export function asJson(objects: object[]): Candidate | null {
  const byPointer = new Map<string, Leaf[]>();
  const held = objects.map(leavesOf);
  for (const leaves of held) {
    for (const leaf of leaves) byPointer.set(leaf.pointer, [...(byPointer.get(leaf.pointer) ?? []), leaf]);
  }
  // `{"id":1,"t":98.2}` and `{"id":2,"t":97.1}` in turn: a pointer alone would mix two probes up.
  const tellsApart = ({ names }: Leaf): boolean => WHOSE.test(names.at(-1) ?? '');
  if (
    [...byPointer.entries()].some(
      ([pointer, leaves]) =>
        (tellsApart(leaves[0]!) && takeTurns(leaves.map(({ value }) => String(value)))) || namesProbes(held, pointer),
    )
  )
    return null;
  nameByList(byPointer);
  const mostNumbers = Math.max(
    0,
    ...[...byPointer.values()].map((leaves) => leaves.filter(({ value }) => typeof value === 'number').length),
  );
  const all: (CandidateChannel & { pointer: string; leaf: Leaf })[] = [];
  const leftOut: Candidate['leftOut'] = [];
  const doubts: string[] = [];
  const names = [...byPointer.values()].flatMap(([leaf]) => (leaf === undefined ? [] : [leaf.names.join(' ')]));
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
    if (isSeldomSeen(numbers.length, mostNumbers)) {
      leftOut.push({ what: pointer, why: whySeldom(numbers.length, objects.length) });
      continue;
    }
    const leaf = leaves[0]!;
    if (new Set(leaves.map(({ label }) => label)).size > 1) return null;
    const kind = kindOfNumber(seriesOf(leaf, numbers), names);
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
  const alike = withoutUnlike(all, leftOut);
  const twins = withoutTwins(alike);
  leftOut.push(...twins.leftOut);
  const pointers = new Map(all.map(({ channel, pointer }) => [channel, pointer]));
  const channels = twins.stay;
  const format = {
    kind: 'json' as const,
    channels: Object.fromEntries(channels.map(({ channel }) => [channel, pointers.get(channel)!])),
  };
  return { format, channels, leftOut, because: 'Each line is one JSON object.', doubts };
}

/** `{"names":["boil","shed"]}` once, then `{"v":[99.7,11.1]}`: a list of names belongs to the list of numbers as long. */
function nameByList(byPointer: Map<string, Leaf[]>): void {
  const lists = new Map<string, { place: number; leaves: Leaf[] }[]>();
  for (const [pointer, leaves] of byPointer) {
    const place = /^(.*)\/(\d+)$/.exec(pointer);
    if (place !== null) lists.set(place[1]!, [...(lists.get(place[1]!) ?? []), { place: Number(place[2]), leaves }]);
  }
  const all = [...lists.values()];
  const hold = (list: (typeof all)[number], kind: 'string' | 'number'): boolean =>
    list.length > 1 && list.every(({ leaves }) => leaves.every(({ value }) => value === null || typeof value === kind));
  const names = all.filter((list) => hold(list, 'string'));
  const numbers = all.filter((list) => hold(list, 'number'));
  const [only] = names;
  if (only === undefined || names.length > 1) return;
  for (const list of numbers.filter(({ length }) => length === only.length))
    for (const { place, leaves } of list) {
      const label = String(only.find((name) => name.place === place)?.leaves[0]?.value ?? '');
      for (const leaf of leaves) Object.assign(leaf, { label });
    }
}
/** A text that is one of few, with which a number in the same object goes, names the probe whose number it is. */
function namesProbes(all: Leaf[][], pointer: string): boolean {
  const held = all.flatMap((leaves) => {
    const own = leaves.find((leaf) => leaf.pointer === pointer);
    return typeof own?.value === 'string' && !unitKeys.includes(own.names.at(-1) ?? '')
      ? [{ own: own.value, leaves }]
      : [];
  });
  const numbers = new Set(
    held.flatMap(({ leaves }) => leaves.flatMap(({ pointer: one, value }) => (typeof value === 'number' ? [one] : []))),
  );
  return [...numbers].some((number) => {
    const pairs = held.flatMap(({ own, leaves }) => {
      const value = leaves.find((leaf) => leaf.pointer === number)?.value;
      return typeof value === 'number' ? [{ own, value }] : [];
    });
    const { names } = held.flatMap(({ leaves }) => leaves).find((leaf) => leaf.pointer === number)!;
    if (namesOther(names.join(' '))) return false;
    const texts = pairs.map(({ own }) => own);
    if (texts.some((text) => statusWord.test(text))) return false;
    return (
      tellApart(
        texts,
        pairs.map(({ value }) => value),
      ) === 'yes'
    );
  });
}

function seriesOf(leaf: Leaf, leaves: Leaf[]): Series {
  const values = leaves.map(({ value }) => value as number);
  // `{"name":"back","c":98.1}`: the key is the unit, the label the name.
  const key = leaf.names.at(-1) ?? '';
  const name = leaf.label === '' ? leaf.names.join(' ') : `${leaf.label} ${key}`;
  const single = /^[cfk]$/i.test(key) && (leaf.label !== '' || leaf.names.length > 1) ? key : '';
  // A unit that the object names is not that of its counts, codes and addresses.
  const isOther = namesOther(key) || WHOSE.test(key);
  const unit = isOther ? '' : leaf.unit || single;
  return {
    name,
    unit,
    isUnitShared: unit !== '' && unit === leaf.unit && !leaf.isOwn,
    values,
    texts: values.map(String),
  };
}

function leavesOf(root: object): Leaf[] {
  const leaves: Leaf[] = [];
  const visit = (
    value: unknown,
    pointer: string,
    names: string[],
    holder: { label: string; unit: string; isOwn: boolean },
    depth: number,
  ): void => {
    if (leaves.length >= mostLeaves || depth > 8) return;
    if (typeof value !== 'object' || value === null) {
      leaves.push({ pointer, names, ...holder, value });
      return;
    }
    const own = Array.isArray(value)
      ? holder
      : {
          label: textOf(value, labelKeys) || holder.label,
          unit: textOf(value, unitKeys) || holder.unit,
          isOwn: textOf(value, unitKeys) !== '' && Object.values(value).filter(isNumber).length === 1,
        };
    for (const [key, item] of Object.entries(value)) {
      const token = key.replaceAll('~', '~0').replaceAll('/', '~1');
      visit(item, `${pointer}/${token}`, Array.isArray(value) ? names : [...names, key], own, depth + 1);
    }
  };
  visit(root, '', [], { label: '', unit: '', isOwn: false }, 0);
  return leaves;
}

const isNumber = (value: unknown): boolean => typeof value === 'number';

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
