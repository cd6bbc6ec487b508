// Looks for names beside the numbers of lines: pairs where the lines are that, else a pattern that reads just the probes.
import type { PortFormat } from '../../core/boil/entries.ts';
import { statusWord } from './as-columns.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import { kindOfNumber, type Series, unitOfWords } from './kind-of-number.ts';
import { type Piece, piecesOf } from './pieces.ts';
import { readingPlaces } from './reading-places.ts';
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
  const byName = new Map<string, Piece[]>();
  for (const piece of valued.flat()) {
    if (piece.name !== '') byName.set(piece.name, [...(byName.get(piece.name) ?? []), piece]);
  }
  const named: CandidateChannel[] = [];
  const leftOut: Candidate['leftOut'] = [];
  for (const [name, pieces] of byName) {
    const series = seriesOf(name, pieces);
    const kind = kindOfNumber(series);
    if (kind.is === 'read') named.push({ channel: name, series, kind });
    else leftOut.push({ what: name, why: kind.why });
  }
  const { stay: channels, leftOut: twins } = withoutTwins(named);
  leftOut.push(...twins);
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
      doubts: [],
    };
  const format: PortFormat = { kind: 'pattern', pattern: patternOf(wanted.flat(), commaFollows(lines, wanted)) };
  if (!readsJust(lines, wanted, format)) return null;
  return {
    format,
    channels,
    leftOut,
    because: 'Each value stands behind its name, among other things that are left out.',
    doubts: [],
  };
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

/** Runs of blanks line values up, so any number of them is meant where there is one. */
const gapPattern = (gap: string): string =>
  gap
    .split(/( +)/)
    .map((part) => (/^ +$/.test(part) ? ' +' : quoted(part)))
    .join('');

const quoted = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
