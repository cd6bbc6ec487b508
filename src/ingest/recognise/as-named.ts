// Looks for names beside the numbers of lines: pairs where the lines are that, else a pattern that reads just the probes.
import type { PortFormat } from '../../core/boil/entries.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import {
  isSetting,
  isSwitch,
  kindOfNumber,
  middle,
  namesOther,
  runsOn,
  type NumberKind,
  type Series,
  SETTING,
  SWITCH,
  unitOfWords,
} from './kind-of-number.ts';
import { withoutChecksums } from './checksums.ts';
import { COLOUR, HEX, type Piece, piecesOf, statusWord, withoutColours } from './pieces.ts';
import { legendOf } from './legend.ts';
import { isSeldomSeen, whySeldom } from './left-out.ts';
import { quoted } from './quoted.ts';
import { readingPlaces } from './reading-places.ts';
import { nameByHeads, nameByTurns, takeTurns } from './turns.ts';
import { isSameInFahrenheit, withoutTwins, withoutWholeNumbers } from './twins.ts';
import { withoutUnlike } from './unlike.ts';

/** Takes in more than a number, so that `98.2,5`, `0x1F` and `1e9` are refused as a whole and never read by halves. */
const number = '[-+]?[0-9]+(?:[.,xXeE][-+0-9]+)*';
const numberBeforeComma = number.replace(',', '');
const valueGroup = (digits: string): string =>
  `(?P<value>${digits}|[Nn][Aa][Nn]|[Oo][Pp][Ee][Nn]|[Ff][Aa][Uu][Ll][Tt])`;
/** Only degrees are read as a unit; a sign for degrees before it is whatever bytes the board sends. */
const unitGroup =
  "(?: *(?:[^ -~]+ *|[*'] *|(?:[Dd][Ee][Gg](?:[Rr][Ee][Ee]?[Ss]?)?|[Gg][Rr][Aa][Dd])\\.? *)?(?P<unit>[CFKcfk])(?:elsius|ahrenheit|elvins?|ELSIUS|AHRENHEIT|ELVINS?)?\\b)?";

/**
 * Names and values of the lines; null where some number that matters has no name.
 * @param looked all lines that came, among them what a board says of its names
 */
export function asNamed(
  lines: readonly string[],
  looked: readonly string[],
  commaIsDecimal: boolean,
): Candidate | null {
  const cut = withoutChecksums(lines).map((line) => piecesOf(line, commaIsDecimal));
  const valued = cut.map((pieces) => withoutRepeats(pieces.filter(isValue)));
  dropLimits(lines, valued);
  forgetChangingCodes(valued);
  valued.flat().forEach(keepAscii);
  joinUnderLastWord(valued);
  const mixed = nameByHeads(lines, cut, valued);
  const doubt = nameByTurns(lines, cut, valued, readableNames(valued));
  const hasDecimals = valued.flat().some(({ text }) => text.includes('.'));
  const others = looked.filter((line) => !lines.includes(line));
  const named: CandidateChannel[] = [];
  const leftOut: Candidate['leftOut'] = [];
  const all = namesOf(valued);
  const names = all.map(({ name }) => name);
  for (const { name, pieces, isSeldom } of all) {
    if (isSeldom) {
      leftOut.push({ what: plain(name), why: whySeldom(pieces.length, lines.length) });
      continue;
    }
    const series = withNeighboursUnit(withLegend(seriesOf(name, pieces), pieces, others), valued);
    const kind = hasDecimals ? kindAmongDecimals(series, names) : kindOfNumber(series, names);
    if (kind.is === 'read') named.push({ channel: name, series, kind });
    else leftOut.push({ what: plain(name), why: kind.why });
  }
  const alike = withoutUnlike(withoutWholeNumbers(named, leftOut), leftOut);
  const { stay: channels, leftOut: twins } = withoutTwins(alike);
  leftOut.push(...twins);
  const doubts = [mixed, doubt].filter((one) => one !== null);
  if (unnamedMatters(valued)) return null;
  if (channels.length === 0)
    return leftOut.length === 0 ? null : { format: { kind: 'pairs' }, channels, leftOut, because: '', doubts: [] };
  const wanted = valued.map((pieces) => pieces.filter(({ name }) => channels.some(({ channel }) => channel === name)));
  if (readsJust(lines, wanted, { kind: 'pairs' }))
    return {
      format: { kind: 'pairs' },
      channels,
      leftOut,
      because: 'The lines are pairs of name and value.',
      doubts,
    };
  const format = STARTS.map((start): PortFormat => ({
    kind: 'pattern',
    pattern: start + patternOf(lines, wanted, commaIsDecimal),
  })).find((one) => readsJust(lines, wanted, one));
  if (format === undefined) return null;
  return {
    format,
    channels,
    leftOut,
    because:
      leftOut.length === 0
        ? 'Each value stands behind its name.'
        : 'Each value stands behind its name, among other things that are left out.',
    doubts,
  };
}

/** `Temp 1 (back) = 98.1` and `Temp 2 (front) = 71.2` in turn: the number of the probe. */
const isNumberInTurn = ({ texts, unit }: Series): boolean =>
  unit === '' && texts.every((text) => /^\d{1,2}$/.test(text)) && takeTurns(texts);

const PROBE_NUMBER: NumberKind = {
  is: 'left-out',
  why: 'the number of a probe, by which the values are told apart',
};

/** Whole numbers that do not change are no readings where those have decimals. */
const kindAmongDecimals = (series: Series, names: readonly string[]): NumberKind => {
  if (isNumberInTurn(series)) return PROBE_NUMBER;
  if (isSetting(series)) return SETTING;
  return isSwitch(series) ? SWITCH : kindOfNumber(series, names);
};

/** A name without the marks of what it is part of. */
const plain = (name: string): string => name.replace(/["{ :]+/g, ' ');

/** `LOWBAT pan=98.7` among many `pan=98.7` is the same pan. */
const MORE_OFTEN = 3;

/** The names of the lines, and whether each is seen so much less often than another. */
function namesOf(valued: Piece[][]): { name: string; pieces: Piece[]; isSeldom: boolean }[] {
  const all = [...piecesByName(valued)];
  const most = Math.max(0, ...all.map(([, pieces]) => pieces.length));
  return all.map(([name, pieces]) => ({ name, pieces, isSeldom: isSeldomSeen(pieces.length, most) }));
}

/** The names of temperatures; of resistances only where the board works no temperatures out of them. */
function readableNames(valued: Piece[][]): string[] {
  const all = namesOf(valued);
  const names = all.map(({ name }) => name);
  const read = all.flatMap(({ name, pieces, isSeldom }) => {
    const series = seriesOf(name, pieces);
    const kind = isSeldom || isNumberInTurn(series) ? null : kindOfNumber(series, names);
    return kind?.is === 'read' && !kind.coldJunction ? [{ name, unit: kind.unit }] : [];
  });
  const worked = read.filter(({ unit }) => unit !== 'ohm' && unit !== 'mV');
  return (worked.length > 0 ? worked : read).map(({ name }) => name);
}

/** With what the board's own legend says of the name, or of the one that told no probes apart. */
function withLegend(series: Series, pieces: Piece[], others: readonly string[]): Series {
  const [first] = pieces;
  const called = first?.said || (first?.name ?? '');
  // `src=KETTLE tk=352.4`: the legend says what `tk` is.
  const said = [called, called.split(' ').at(-1) ?? ''].map((name) => legendOf(name, others));
  const { words, unit } = said.find((one) => one.words + one.unit !== '') ?? { words: '', unit: '' };
  return { ...series, name: `${series.name} ${words}`.trim(), unit: series.unit || unit };
}

/** `Ra=138.1 Rb=139.0 ohm`: numbers of like size share the unit that stands behind the last of them. */
function withNeighboursUnit(series: Series, valued: Piece[][]): Series {
  if (series.unit !== '' || namesOther(series.name) || runsOn(series) !== null) return series;
  const behind = valued.flatMap((line) => {
    const at = line.findIndex(({ name }) => name === series.name);
    const last = line.slice(at + 1).find(({ unit }) => unit !== '');
    return at < 0 || last === undefined ? [] : [last];
  });
  const [unit, ...others] = new Set(behind.map((piece) => piece.unit));
  if (unit === undefined || others.length > 0 || behind.length < series.values.length || unitOfWords(unit) === null)
    return series;
  const share = middle(series.values) / middle(behind.map(({ text }) => Number(text)));
  return share > 0.5 && share < 2 ? { ...series, unit, mixed: 'the last names it' } : series;
}

function piecesByName(valued: Piece[][]): Map<string, Piece[]> {
  const byName = new Map<string, Piece[]>();
  for (const piece of valued.flat()) {
    if (piece.name !== '') byName.set(piece.name, [...(byName.get(piece.name) ?? []), piece]);
  }
  return byName;
}

/** `P1:99.6/104.0`: what stands behind a slash and never changes is a limit. */
function dropLimits(lines: readonly string[], valued: Piece[][]): void {
  const behind = valued.flatMap((pieces, at) =>
    pieces.flatMap((piece, n) => {
      const before = pieces[n - 1];
      const isBehind = before !== undefined && before.name !== '' && piece.name === '' && piece.unit === '';
      return isBehind && lines[at]!.slice(before.unitEnd, piece.start).trim() === '/'
        ? [{ of: before.name, piece, at }]
        : [];
    }),
  );
  for (const name of new Set(behind.map(({ of }) => of))) {
    const own = behind.filter(({ of }) => of === name);
    if (own.length < FEW_CODED || new Set(own.map(({ piece }) => piece.text)).size > 1) continue;
    for (const { piece, at } of own) valued[at] = valued[at]!.filter((one) => one !== piece);
  }
}

/** A channel's name is ASCII: of `bac de pr\u00e9chauffe` what stands before the other letters, or else behind them. */
function keepAscii(piece: Piece): void {
  const found = /^([ -~]*)([^ -~]+(?:.*[^ -~])?)([ -~]*)$/.exec(piece.name);
  if (found === null) return;
  const [, before, between, behind] = found;
  const name = before!.trim() !== '' ? before!.trimEnd() : behind!.trimStart();
  const gap = before!.trim() !== '' ? `${before!.slice(name.length)}${between}${behind}${piece.gap}` : piece.gap;
  Object.assign(piece, { name, gap });
}

/** `raw 0x0607 = 96.4 C`: a code that is mostly another from line to line is what the board measured, and names no probe. */
function forgetChangingCodes(valued: Piece[][]): void {
  const coded = valued.flat().filter(({ name }) => CODE.test(name));
  const codes = new Set(coded.map(({ name }) => name));
  if (coded.length < FEW_CODED || codes.size * 2 <= coded.length) return;
  for (const piece of coded) Object.assign(piece, { name: '', gap: '' });
}
const CODE = new RegExp(`^(?:${HEX})$`);
const FEW_CODED = 6;

/** A name with a word before it, where the name alone stands in most other lines and never in the same one. */
function joinUnderLastWord(valued: Piece[][]): void {
  const byName = piecesByName(valued);
  for (const [name, pieces] of byName) {
    const short = name.replace(/^\S+ +/, '');
    const usual = byName.get(short);
    if (short === name || usual === undefined || usual.length < MORE_OFTEN * pieces.length) continue;
    if (valued.some((line) => [name, short].every((one) => line.some((piece) => piece.name === one)))) continue;
    for (const piece of pieces) piece.name = short;
  }
}

/**
 * `96.4°C / 205.5°F`, `96.4 C (3.073 mV)`: a number without a name that tells the one before it again, in the other unit
 * or as what was measured.
 */
function withoutRepeats(pieces: Piece[]): Piece[] {
  return pieces.filter((piece, at) => {
    const before = pieces[at - 1];
    if (before === undefined || before.name === '') return true;
    const units = [before, piece].map(
      ({ unit, name }) => unitOfWords(unit) ?? unitOfWords(name.split(' ').at(-1)!) ?? '',
    );
    if (piece.name !== '' && !/^(?:[CF]|.*fahrenheit)$/i.test(piece.name)) return true;
    if (['C', 'F', 'K'].includes(units[0]!) && (units[1] === 'mV' || units[1] === 'ohm')) return false;
    if (units.join() !== 'C,F') return true;
    return !isSameInFahrenheit([Number(before.text)], [Number(piece.text)]);
  });
}

const isValue = (piece: Piece): boolean => {
  // Only in JSON is `null` a value that is read.
  if (piece.kind !== 'number' && (piece.kind !== 'broken' || piece.text === 'null')) return false;
  if (statusWord.test(piece.name) && !/[=:>]/.test(piece.gap)) piece.name = '';
  return true;
};

function seriesOf(name: string, pieces: Piece[]): Series {
  const numbers = pieces.filter(({ kind }) => kind === 'number');
  const units = [...new Set(numbers.map(({ unit }) => unit))];
  const differ = new Set(units.filter((unit) => unit !== '').map((unit) => unitOfWords(unit) ?? unit)).size > 1;
  const mixed = differ ? ('differ' as const) : units.length > 1 ? ('some name none' as const) : undefined;
  return {
    name: [name, ...new Set(pieces.map(({ said }) => said))].join(' ').trim(),
    // One line whose unit is not seen takes the others' word.
    unit: units.find((unit) => unit !== '') ?? '',
    values: numbers.map(({ text }) => Number(text)),
    texts: numbers.map(({ text }) => text),
    ...(mixed !== undefined && { mixed }),
  };
}

/** A number without a name that may well be a temperature: then names are not how these lines work. */
function unnamedMatters(valued: Piece[][]): boolean {
  const unnamed = valued.map((pieces) => pieces.filter(({ name, kind }) => name === '' && kind === 'number'));
  return unnamed.flat().some(({ unit, text }) => (unit === '' ? text.includes('.') : unitOfWords(unit) !== null));
}

/** True when a format reads exactly the wanted pieces of every line, under their names. */
function readsJust(lines: readonly string[], wanted: Piece[][], format: PortFormat): boolean {
  return lines.every((line, at) => {
    const places = readingPlaces(line, format);
    const pieces = wanted[at]!;
    return (
      places.length === pieces.length &&
      pieces.every(({ start, end, name }) =>
        places.some((place) => place.start === start && place.end === end && place.channel === name),
      )
    );
  });
}

/** Names anywhere; or only where they begin their line, for elsewhere they may mean a limit. */
const STARTS = ['', '^[^0-9A-Za-z]*'];

/** Values in columns parted by commas: then a comma behind one is no decimal mark. */
const commaFollows = (lines: readonly string[], wanted: Piece[][]): boolean =>
  lines.some((line, at) => wanted[at]!.some(({ end }) => /^,\d/.test(line.slice(end))));

function patternOf(lines: readonly string[], wanted: Piece[][], commaIsDecimal: boolean): string {
  const pieces = wanted.flat();
  const digits = !commaIsDecimal && commaFollows(lines, wanted) ? numberBeforeComma : number;
  const isColoured = lines.some((line) => withoutColours(line) !== line);
  const names = [...new Set(pieces.map(({ name }) => name))].sort((one, other) => other.length - one.length);
  const gaps = [...new Set(pieces.map(({ gap }) => gapPattern(gap, isColoured)))].sort(
    (one, other) => other.length - one.length,
  );
  const hasUnit = pieces.some(({ unit }) => unit !== '' && ['C', 'F', 'K'].includes(unitOfWords(unit) ?? ''));
  const gap = gaps.length === 1 ? gaps[0]! : `(?:${gaps.join('|')})`;
  const start = isColoured ? `(?:\\b|${COLOUR})` : '\\b';
  return `${start}(?P<channel>${names.map(quoted).join('|')})${gap}${valueGroup(digits)}${hasUnit ? unitGroup : ''}`;
}

/** Runs of blanks line values up, so any number of them is meant where there is one; a number or code between may be any other. */
const gapPattern = (gap: string, isColoured: boolean): string =>
  gap
    .split(BETWEEN)
    .map((part) => {
      if (/^ +$/.test(part)) return isColoured ? `(?: |${COLOUR})+` : ' +';
      if (CODE.test(part)) return HEX;
      return /\d/.test(part) ? '[-+]?[0-9.]+' : quoted(part);
    })
    .join('');
const BETWEEN = new RegExp(`( +|${HEX}|[-+]?\\d+(?:\\.\\d+)?)`);
