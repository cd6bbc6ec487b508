// Looks for names beside the numbers of lines: pairs where the lines are that, else a pattern that reads just the probes.
import type { PortFormat } from '../../core/boil/entries.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import { isSetting, kindOfNumber, middle, POINTLESS, type Series, SETTING, unitOfWords } from './kind-of-number.ts';
import { type Piece, piecesOf, statusWord } from './pieces.ts';
import { readingPlaces } from './reading-places.ts';
import { nameByTurns } from './turns.ts';
import { isSameInFahrenheit, withoutTwins } from './twins.ts';

/** Takes in more than a number, so that `98,2`, `0x1F` and `1e9` are refused as a whole and never read by halves. */
const number = '[-+]?[0-9]+(?:[.,xXeE][-+0-9]+)*';
const numberBeforeComma = number.replace(',', '');
const valueGroup = (digits: string): string =>
  `(?P<value>${digits}|[Nn][Aa][Nn]|[Oo][Pp][Ee][Nn]|[Ff][Aa][Uu][Ll][Tt])`;
/** Only degrees are read as a unit; a sign for degrees before it is whatever bytes the board sends. */
const unitGroup =
  "(?: *(?:[^ -~]+ *|[*'] *|[Dd][Ee][Gg](?:[Rr][Ee][Ee][Ss]?)?\\.? *)?(?P<unit>[CFKcfk])(?:elsius|ahrenheit|elvins?|ELSIUS|AHRENHEIT|ELVINS?)?\\b)?";

/** Names and values of the lines; null where some number that matters has no name. */
export function asNamed(lines: readonly string[]): Candidate | null {
  const cut = lines.map((line) => piecesOf(line, false));
  const valued = cut.map((pieces) => withoutRepeats(pieces.filter(isValue)));
  joinUnderLastWord(valued);
  const doubt = nameByTurns(lines, cut, valued, readableNames(valued));
  const hasDecimals = valued.flat().some(({ text }) => text.includes('.'));
  const named: CandidateChannel[] = [];
  const leftOut: Candidate['leftOut'] = [];
  for (const { name, pieces, isSeldom } of namesOf(valued)) {
    if (isSeldom) {
      leftOut.push({ what: name, why: `it stands in ${pieces.length} of ${lines.length} lines alone` });
      continue;
    }
    const series = withNeighboursUnit(seriesOf(name, pieces), valued);
    const kind = hasDecimals && isSetting(series) ? SETTING : kindOfNumber(series);
    if (kind.is === 'read') named.push({ channel: name, series, kind });
    else leftOut.push({ what: name, why: kind.why });
  }
  leaveOutWholeNumbers(named, leftOut);
  const { stay: channels, leftOut: twins } = withoutTwins(named);
  leftOut.push(...twins);
  const doubts = doubt === null ? [] : [doubt];
  if (unnamedMatters(valued)) return null;
  if (channels.length === 0)
    return leftOut.length === 0 ? null : { format: { kind: 'pairs' }, channels, leftOut, because: '', doubts: [] };
  const names = channels.map(({ channel }) => channel);
  const wanted = valued.map((pieces) => pieces.filter(({ name }) => names.includes(name)));
  if (readsJust(lines, wanted, { kind: 'pairs' }))
    return {
      format: { kind: 'pairs' },
      channels,
      leftOut,
      because: 'The lines are pairs of name and value.',
      doubts,
    };
  const format: PortFormat = { kind: 'pattern', pattern: patternOf(wanted.flat(), commaFollows(lines, wanted)) };
  if (!readsJust(lines, wanted, format)) return null;
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

/** A name that is seen so many times less often than another is a damaged line, or said once. */
const SELDOM = 4;
/** `LOWBAT pan=98.7` among many `pan=98.7` is the same pan. */
const MORE_OFTEN = 3;

/** Where the board writes degrees without their point, what is left of its whole numbers is something else. */
function leaveOutWholeNumbers(named: CandidateChannel[], leftOut: Candidate['leftOut']): void {
  if (!leftOut.some(({ why }) => why === POINTLESS)) return;
  const isBare = ({ series, kind }: CandidateChannel): boolean =>
    !kind.sure && series.unit === '' && series.texts.every((text) => /^[-+]?\d+$/.test(text));
  for (const one of named.filter(isBare)) {
    leftOut.push({ what: one.channel, why: 'a whole number without a unit, beside degrees without their point' });
    named.splice(named.indexOf(one), 1);
  }
}

/** The names of the lines, and whether each is seen so much less often than another. */
function namesOf(valued: Piece[][]): { name: string; pieces: Piece[]; isSeldom: boolean }[] {
  const all = [...piecesByName(valued)];
  const most = Math.max(0, ...all.map(([, pieces]) => pieces.length));
  return all.map(([name, pieces]) => ({ name, pieces, isSeldom: pieces.length * SELDOM <= most }));
}

function readableNames(valued: Piece[][]): string[] {
  return namesOf(valued).flatMap(({ name, pieces, isSeldom }) => {
    if (isSeldom) return [];
    const kind = kindOfNumber(seriesOf(name, pieces));
    return kind.is === 'read' && !kind.coldJunction ? [name] : [];
  });
}

/** `Ra=138.1 Rb=139.0 ohm`: numbers of like size share the unit that stands behind the last of them. */
function withNeighboursUnit(series: Series, valued: Piece[][]): Series {
  if (series.unit !== '') return series;
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

/** `96.4°C / 205.5°F`: a number without a name that tells the one before it again, in the other unit. */
function withoutRepeats(pieces: Piece[]): Piece[] {
  return pieces.filter((piece, at) => {
    const before = pieces[at - 1];
    if (
      piece.name !== '' ||
      before === undefined ||
      unitOfWords(piece.unit) !== 'F' ||
      unitOfWords(before.unit) !== 'C'
    )
      return true;
    return !isSameInFahrenheit([Number(before.text)], [Number(piece.text)]);
  });
}

const isValue = (piece: Piece): boolean => {
  if (piece.kind !== 'number' && piece.kind !== 'broken') return false;
  if (statusWord.test(piece.name) && !/[=:>]/.test(piece.gap)) piece.name = '';
  return true;
};

function seriesOf(name: string, pieces: Piece[]): Series {
  const numbers = pieces.filter(({ kind }) => kind === 'number');
  const units = [...new Set(numbers.map(({ unit }) => unit))];
  const differ = new Set(units.filter((unit) => unit !== '').map((unit) => unitOfWords(unit) ?? unit)).size > 1;
  const mixed = differ ? ('differ' as const) : units.length > 1 ? ('some name none' as const) : undefined;
  return {
    name,
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
  return unnamed.flat().some(({ unit, text }) => text.includes('.') || (unit !== '' && unitOfWords(unit) !== null));
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

/** Values in columns parted by commas: then a comma behind one is no decimal mark. */
const commaFollows = (lines: readonly string[], wanted: Piece[][]): boolean =>
  lines.some((line, at) => wanted[at]!.some(({ end }) => /^,\d/.test(line.slice(end))));

function patternOf(pieces: Piece[], beforeCommas: boolean): string {
  const names = [...new Set(pieces.map(({ name }) => name))].sort((one, other) => other.length - one.length);
  const gaps = [...new Set(pieces.map(({ gap }) => gapPattern(gap)))].sort((one, other) => other.length - one.length);
  const hasUnit = pieces.some(({ unit }) => unit !== '' && ['C', 'F', 'K'].includes(unitOfWords(unit) ?? ''));
  const gap = gaps.length === 1 ? gaps[0]! : `(?:${gaps.join('|')})`;
  return `\\b(?P<channel>${names.map(quoted).join('|')})${gap}${valueGroup(beforeCommas ? numberBeforeComma : number)}${hasUnit ? unitGroup : ''}`;
}

/** Runs of blanks line values up, so any number of them is meant where there is one; a number between may be any other. */
const gapPattern = (gap: string): string =>
  gap
    .split(/( +|[-+]?\d+(?:\.\d+)?)/)
    .map((part) => (/^ +$/.test(part) ? ' +' : /\d/.test(part) ? '[-+]?[0-9.]+' : quoted(part)))
    .join('');

const quoted = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
