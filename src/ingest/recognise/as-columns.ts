// Looks for columns in lines: which separator and decimal mark, which columns hold readings, and what they are called.
import { columnsOf } from '../formats/columns.ts';
import { readValue } from '../formats/value.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import {
  isSetting,
  isSwitch,
  kindOfNumber,
  namesOther,
  type NumberKind,
  type Series,
  SETTING,
  SWITCH,
  unitOfWords,
} from './kind-of-number.ts';
import { piecesOf, statusWord } from './pieces.ts';
import { differ, takeTurns } from './turns.ts';
import { withoutTwins, withoutWholeNumbers } from './twins.ts';
import { withoutUnlike } from './unlike.ts';

const separators = ['","', '";"', ';', '\t', '|', ',', ' '];
const separatorNames: Record<string, string> = {
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'bars',
  ',': 'commas',
  ' ': 'blanks',
  '","': 'commas between quotes',
  '";"': 'semicolons between quotes',
};

/** The columns that the lines stand in; null where they stand in none. */
export function asColumns(lines: readonly string[], commaIsDecimal: boolean): Candidate | null {
  for (const separator of separators) {
    if (commaIsDecimal && separator === ',') continue;
    const found = columnsWith(lines, separator, commaIsDecimal ? ',' : '.');
    if (found !== null) return found;
  }
  return null;
}

const SIGN_APART = 'A sign stands apart from its number: below zero it would be lost.';

const checksumEnd = /[*][0-9A-Fa-f]{2,4}$/;

interface Table {
  rows: string[][];
  width: number;
  header: string[] | null;
  decimal: '.' | ',';
  /** So many lines with numbers have another number of columns; the first may be cut and is not counted. */
  others: number;
}

function columnsWith(lines: readonly string[], separator: string, decimal: '.' | ','): Candidate | null {
  const table = tableOf(lines, separator, decimal);
  if (table === null) return null;
  const { rows, width, header } = table;
  const read: (CandidateChannel | null)[] = [];
  const doubts: string[] = [];
  if (table.others > 0)
    doubts.push(
      `Another number of columns stands in ${table.others} of ${lines.length} lines: nothing of those is read.`,
    );
  const leftOut: Candidate['leftOut'] = [];
  for (let at = 0; at < width; at++) {
    if (isHexColumn(rows.map((row) => row[at]!))) {
      leftOut.push({ what: `column ${at + 1}`, why: 'a checksum or a code' });
      read.push(null);
      continue;
    }
    const series = seriesOf(table, at);
    read.push(null);
    const what = series?.name ? `column ${at + 1} (${series.name})` : `column ${at + 1}`;
    if (series === null) {
      if (rows.every((row) => /^[-+]$/.test(row[at]!))) doubts.push(SIGN_APART);
      const why = textColumn(
        rows.map((row) => row[at]!),
        header?.[at] ?? '',
      );
      if (why === null) return null;
      const title = header?.[at] ?? '';
      if (
        why === '' &&
        isEmpty(
          rows.map((row) => row[at]!),
          title,
        )
      )
        leftOut.push({ what: title === '' ? what : `column ${at + 1} (${title})`, why: 'no number in it so far' });
      else if (why !== '') leftOut.push({ what, why });
      continue;
    }
    // `1;96.8` and `2;95.3` in turn: columns would mix two probes up.
    if (series.texts.every((text) => /^\d{1,3}$/.test(text)) && tellsRowsApart(table, at)) return null;
    const kind = kindInRows(series, rows, header ?? []);
    if (kind.is === 'left-out') leftOut.push({ what, why: kind.why });
    else read[at] = { channel: series.name, series, kind };
  }
  const twins = withoutTwins(withoutUnlike(withoutWholeNumbers(nameApart(read), leftOut), leftOut));
  const channels = twins.stay;
  leftOut.push(...twins.leftOut);
  if (channels.length === 0 && leftOut.length === 0) return null;
  const stay = new Set(channels.map(({ channel }) => channel));
  const names = read.map((one) => (one !== null && stay.has(one.channel) ? one.channel : ''));
  const marked = decimal === ',' ? ' with decimal commas' : '';
  const called =
    header === null && channels.every(({ series }) => series.name === '')
      ? ['The columns have no names, so they are numbered.']
      : [];
  return {
    format: { kind: 'columns', separator, decimal, channels: names },
    channels,
    leftOut,
    because:
      `The lines are ${width} ${width === 1 ? 'column' : `columns parted by ${separatorNames[separator]}`}${marked}. ${called.join('')}`.trim(),
    doubts,
  };
}

/** Nothing under a title, or `--.-` where a probe has no number: a socket that nothing is plugged into yet. */
const isEmpty = (cells: readonly string[], title: string): boolean =>
  cells.every((cell) => !/\w/.test(cell) && (/[A-Za-z]/.test(title) || NO_NUMBER.test(cell)));
const NO_NUMBER = /^-+[.,]-+$|^-{2,}$/;

/** `81`, `7F`, `8E`: hexadecimal digits of one length, whose letters are not one unit behind all. */
function isHexColumn(cells: readonly string[]): boolean {
  const letters = new Set(cells.flatMap((cell) => /[A-F]/i.exec(cell)?.[0].toUpperCase() ?? []));
  return (
    cells.length >= FEW_CELLS &&
    cells.every(
      (cell) => /^(?:[0-9A-F]{2}|[0-9A-F]{4}|[0-9A-F]{8})$/i.test(cell) && cell.length === cells[0]!.length,
    ) &&
    letters.size > 1 &&
    cells.some((cell) => /\d/.test(cell))
  );
}
const FEW_CELLS = 6;

/** Numbers of probes are small; others that come round in one order, such as a heater's share, must go with the readings. */
const MOST_NUMBER = 32;
function tellsRowsApart({ rows, width, decimal }: Table, place: number): boolean {
  const texts = rows.map((row) => row[place]!);
  if (!takeTurns(texts)) return false;
  if (texts.every((text) => Number(text) <= MOST_NUMBER)) return true;
  return Array.from({ length: width }, (_, at) => at).some((at) => {
    const values = rows.map((row) => Number(row[at]!.replace(decimal, '.')));
    return at !== place && rows.some((row) => row[at]!.includes(decimal)) && differ(texts, values, 2);
  });
}

const kindInRows = (series: Series, rows: readonly string[][], names: readonly string[]): NumberKind => {
  if (isPlaceNumber(series, rows)) return SETTING;
  return isSwitch(series) && rows[0]!.some((cell) => /\d[.,]\d/.test(cell)) ? SWITCH : kindOfNumber(series, names);
};

/** `…,1,96.8,C,2,95.3,C`: what never changes between columns that do is no reading. */
const isPlaceNumber = (series: Series, rows: readonly string[][]): boolean =>
  isSetting(series) && rows[0]!.some((cell) => /\d\.\d/.test(cell));

function tableOf(lines: readonly string[], separator: string, decimal: '.' | ','): Table | null {
  const all = lines.map((line) => {
    const columns = columnsOf(line, separator);
    while (columns.length > 1 && columns.at(-1) === '') columns.pop();
    return columns;
  });
  const withNumbers = all.filter((row) => row.some((cell) => isNumber(cell, decimal)));
  const width = mostCommon(withNumbers.map((row) => row.length));
  const rows = withNumbers.filter((row) => row.length === width);
  if (width === null || rows.length < Math.max(1, withNumbers.length * 0.6)) return null;
  if (width === 1 && separator !== ' ') return null;
  const headers = all.filter(
    (row) =>
      row.length === width && !row.some((cell) => /^[-+]?\d/.test(cell)) && row.every((cell) => cell.length < 40),
  );
  const others = withNumbers.slice(1).filter((row) => row.length !== width && row.length > 1).length;
  return { rows, width, header: headers[0] ?? otherHeader(lines, all, width, rows), decimal, others };
}

/** `# pan,C  set,C  stack,F`, `cols: seq ch1 ch2 cj(degC)`: a heading that is parted otherwise than the lines under it. */
function otherHeader(lines: readonly string[], all: string[][], width: number, rows: string[][]): string[] | null {
  const headings = lines.filter((line, at) => !rows.includes(all[at]!) && /[A-Za-z]/.test(line));
  const bare = headings.map((line) =>
    line.replace(/^\W*(?:(?:cols?|columns?|fields?|format|order|data) ?[:=] ?)?/i, '').trim(),
  );
  const parted = bare.flatMap((line) => [/ {2,}/, /\t+/, /[;|]/, /,/, / +/].map((mark) => line.split(mark)));
  const fits = (cells: string[]): boolean =>
    cells.length === width && cells.every((cell) => /^[^\d.]*[A-Za-z]/.test(cell) && cell.length < 25);
  return width < 2 ? null : (parted.find(fits)?.map((cell) => cell.trim()) ?? null);
}

const isNumber = (cell: string, decimal: '.' | ','): boolean =>
  /\d/.test(cell) && typeof readValue(cell, 0, cell.length, decimal.charCodeAt(0)) !== 'string';

function seriesOf({ rows, header, decimal, width }: Table, at: number): Series | null {
  const cells = rows.map((row) => row[at]!);
  const numbers = cells.filter((cell) => isNumber(cell, decimal));
  if (numbers.length < cells.length / 2) return null;
  const values = numbers.map((cell) => readValue(cell, 0, cell.length, decimal.charCodeAt(0)));
  const read = values.flatMap((value) => (typeof value === 'string' ? [] : [value]));
  const title = header?.[at]?.replace(/^[#;/ ]+/, '').replace(/^"|"$/g, '') ?? '';
  const before = at > 0 ? constant(rows.map((row) => row[at - 1]!)) : null;
  // `C*61`: a checksum hangs at the last word.
  const behind = at + 1 < width ? constant(rows.map((row) => row[at + 1]!.replace(checksumEnd, ''))) : null;
  const cellUnit = read.find(({ unit }) => unit !== null)?.unit ?? '';
  const unitBehind =
    behind !== null && (unitOfWords(behind) !== null || /^(?:%|rpm|[hk]?Pa|mbar|V|A|W|s|ms)$/.test(behind))
      ? behind
      : '';
  const { name: called, unit } = titleParts(title);
  // A lone word over one column is what the board says of itself.
  const name = statusWord.test(called) ? '' : called;
  const word =
    before !== null && unitOfWords(before) === null && !statusWord.test(before) ? before.replace(/[=:>]+$/, '') : '';
  return {
    name: name !== '' ? name : /^[A-Za-z]/.test(word) ? word : '',
    unit: cellUnit || unitBehind || unit,
    values: read.flatMap(({ value }) => (value === null ? [] : [value])),
    texts: numbers,
  };
}

/** `Pan (°F)`, `pan [mV]`, `pan/°C` name their unit. */
function titleParts(title: string): { name: string; unit: string } {
  const rate = /[CFK]\s*\/\s*(?:min|hr?|s|sec)\b/i.exec(title)?.[0];
  if (rate !== undefined) return { name: title.slice(0, title.indexOf(rate)).replace(/[\s([]+$/, ''), unit: rate };
  const found = /^(.*?)\s*[([/,]\s*([^()[\]/]*)[)\]]?$/.exec(title);
  if (found === null) return { name: title, unit: '' };
  const unit = found[2]!;
  return unitOfWords(unit) !== null || /^[%a-zA-Z]{1,5}$/.test(unit)
    ? { name: found[1]!.trim(), unit }
    : { name: title, unit: '' };
}

function constant(cells: string[]): string | null {
  return cells.length > 0 && /[A-Za-z\u0080-\uffff%]/.test(cells[0]!) && cells.every((cell) => cell === cells[0])
    ? cells[0]!
    : null;
}

/** Why a column of texts is not read; '' for one that says nothing; null when it speaks against columns at all. */
function textColumn(cells: string[], title: string): string | null {
  // The first or last cell keeps its outer quote, and no number can be read there.
  if (
    cells.every((cell) => cell.includes('"')) &&
    cells.some((cell) => /\d[.,]\d/.test(cell)) &&
    !/:\d\d/.test(cells[0]!)
  )
    return namesOther(title) ? 'another quantity, no temperature' : null;
  if (cells.every((cell) => /^\w{0,3}[*]/.test(cell) && checksumEnd.test(cell))) return 'a checksum';
  if (cells.every((cell) => cell === '' || !/[\w]/.test(cell))) return '';
  const pieces = cells.flatMap((cell) => piecesOf(cell, false));
  const unit = unitOfCells(cells);
  if (unit !== null) return `“${unit}” is no unit of a probe`;
  if (pieces.some(({ kind, text }) => kind === 'number' && /[.]/.test(text))) return null;
  if (!cells.every((cell) => statusWord.test(cell)) && takeTurns(cells)) return null;
  if (pieces.every(({ kind }) => kind === 'time' || kind === 'checksum' || kind === 'hex'))
    return pieces.some(({ kind }) => kind === 'time') ? 'a time stamp' : 'a checksum or a code';
  if (constant(cells) !== null) return '';
  if (cells.every((cell) => /^[*#]?[0-9A-Fa-f]{2,8}$/.test(cell))) return 'a checksum or a code';
  const kinds = new Set(cells);
  const words = [...kinds];
  if (words.every((cell) => statusWord.test(cell))) return 'a status word';
  // Words that take turns name the probe whose number stands in the line: columns would mix them up.
  return kinds.size > 1 && cells.filter((cell, at) => at > 0 && cell !== cells[at - 1]).length >= cells.length / 3
    ? null
    : 'a word, no number';
}

/** `3.71V`, `-61dBm`: one unit behind all numbers that no probe has; null where it is not so. */
function unitOfCells(cells: readonly string[]): string | null {
  const units = cells.map((cell) => /^[-+]?\d+(?:\.\d+)? ?([A-Za-z%][\w%/]*)$/.exec(cell)?.[1] ?? '');
  const [unit, ...others] = new Set(units);
  return others.length > 0 || unit === undefined || unit === '' || unitOfWords(unit) !== null ? null : unit;
}

/** A title as it is read, whether its bytes are UTF-8 or Latin-1 (a line holds a character for each byte). */
function lettersOf(title: string): string {
  const bytes = Uint8Array.from(title, (letter) => letter.charCodeAt(0));
  let text = title;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Latin-1 it is.
  }
  return text.replace(/[^ -~\p{L}]/gu, '').trim();
}

/** Channels need names, and each its own. */
function nameApart(read: (CandidateChannel | null)[]): CandidateChannel[] {
  const channels = read.flatMap((one) => (one === null ? [] : [one]));
  channels.forEach((one, at) => {
    const clean = lettersOf(one.channel);
    const taken = channels.slice(0, at).some(({ channel }) => channel === clean);
    one.channel = clean === '' || taken ? `${clean || 'T'}${at + 1}` : clean;
  });
  return channels;
}

function mostCommon(numbers: number[]): number | null {
  const counts = new Map<number, number>();
  for (const one of numbers) counts.set(one, (counts.get(one) ?? 0) + 1);
  return [...counts].sort((one, other) => other[1] - one[1])[0]?.[0] ?? null;
}
