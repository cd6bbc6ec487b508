// Finds what tells probes apart that send a line each in turn: an address or a number before the value, not a name beside it.
import { middle, namesOther, unitOfWords } from './kind-of-number.ts';
import { HEX, type Piece } from './pieces.ts';

/** So many probes share a wire at most; one alone takes no turns. */
const MOST_PROBES = 12;
/** A line that is lost now and then breaks the order, for this share of the lines. */
const KEPT_SHARE = 0.75;

/** Few texts that come round in one order, each at least twice: what stands before each line's number is whose it is. */
export function takeTurns(texts: readonly string[]): boolean {
  const count = new Set(texts).size;
  if (count < 2 || count > MOST_PROBES || texts.length < 2 * count) return false;
  const before = new Map<string, string>();
  let kept = 0;
  for (const [at, text] of texts.entries()) {
    const previous = texts[at - 1];
    if (previous === text) continue;
    if (previous !== undefined && (before.get(text) ?? previous) === previous) kept += 1;
    if (previous !== undefined) before.set(text, previous);
  }
  return kept >= KEPT_SHARE * (texts.length - 1);
}

/** So much further do probes lie from each other than one moves from line to line, where no order tells. */
const APART = 3;

/** Two that change places each line may as well be a lamp that blinks: probes differ among each other more than in time. */
export function differ(texts: readonly string[], values: readonly number[], times: number): boolean {
  const among: number[] = [];
  const inTime: number[] = [];
  const last = new Map<string, number>();
  for (const [at, text] of texts.entries()) {
    const value = values[at]!;
    if (at > 0 && texts[at - 1] !== text) among.push(Math.abs(value - values[at - 1]!));
    if (last.has(text)) inTime.push(Math.abs(value - last.get(text)!));
    last.set(text, value);
  }
  return middle(among) > times * middle(inTime);
}

/** Few texts, each again and again, and the numbers go with them: in turn, or as each board has something to say. */
export function tellApart(texts: readonly string[], values: readonly number[]): 'yes' | 'perhaps' | 'no' {
  const count = new Set(texts).size;
  if (count < 2 || count > MOST_PROBES || texts.length < 2 * count) return 'no';
  const inTurn = takeTurns(texts);
  if (differ(texts, values, inTurn ? 2 : APART)) return 'yes';
  return inTurn ? (count === 2 ? 'perhaps' : 'yes') : 'no';
}

const NUMBERS = new RegExp(`${HEX}|[-+]?\\d+(?:\\.\\d+)?`, 'g');

const isMeasured = ({ kind, text, unit }: Piece): boolean =>
  kind === 'number' && (text.includes('.') || unitOfWords(unit) !== null);

/**
 * Where each line holds one number that may be a probe's, called the same in all of them, and before it a text that takes
 * turns, that text becomes the number's name. `cut` are all pieces of each line, `valued` those that may be readings;
 * these are changed. `readable` are the names under which temperatures may stand. Returns a doubt, or null.
 */
export function nameByTurns(
  lines: readonly string[],
  cut: Piece[][],
  valued: Piece[][],
  readable: readonly string[],
): string | null {
  const some = valued.flatMap((pieces, at) => {
    const [value, ...more] = pieces.filter(({ name }) => readable.includes(name));
    const unnamed = pieces.filter((piece) => piece.name === '' && isMeasured(piece));
    const only = value ?? (unnamed.length === 1 ? unnamed[0] : undefined);
    return only === undefined ? [] : [{ at, value: only, isAlone: more.length === 0 }];
  });
  const [first] = some;
  if (first === undefined || some.some(({ value }) => value.name !== first.value.name)) return null;
  const before = some.map(({ at, value }) => {
    const from = value.name === '' ? value.start : value.start - value.gap.length - value.name.length;
    return cut[at]!.filter(({ kind, end, text }) => end <= from && (kind !== 'number' || /^\d{1,5}$/.test(text)));
  });
  const values = some.map(({ value }) => Number(value.text));
  const most = Math.min(...before.map((tokens) => tokens.length));
  const tried = Array.from({ length: most }, (_, n) => {
    const tokens = before.map((one) => one.at(-1 - n)!);
    const texts = tokens.map(({ text }) => text);
    const told = tokens.some(({ kind }) => kind === 'time') ? 'no' : tellApart(texts, values);
    return { tokens, texts, told };
  });
  const telling = tried.filter(({ told }) => told !== 'no');
  // What comes round in one order goes before what may by chance go with the numbers.
  const best = telling.find(({ texts }) => takeTurns(texts)) ?? telling[0];
  if (best !== undefined) {
    const { tokens, texts, told } = best;
    const gaps = some.map(({ at, value }, i) => lines[at]!.slice(tokens[i]!.end, value.start));
    // Other numbers may stand between, as long as all else is the same.
    const between = new Set(gaps.map((gap) => gap.replace(NUMBERS, '#').replace(/ +/g, ' ')));
    if (told === 'perhaps' || between.size > 1 || !some.every(({ isAlone }) => isAlone))
      return `“${texts[0]}” and “${texts.find((text) => text !== texts[0])}” take turns before the numbers: if they tell probes apart, this reads them as one.`;
    for (const [i, { value }] of some.entries()) {
      Object.assign(value, { said: value.name, name: texts[i]!, gap: gaps[i]! });
    }
    return null;
  }
  return null;
}

/**
 * `n1 adc=10478 r=137.50 n2 adc=10604 r=139.16`: a name that comes again within a line takes the word or number that heads
 * its part, where each part has its own in every line. `cut` and `valued` as in nameByTurns. Returns a doubt, or null.
 */
export function nameByHeads(lines: readonly string[], cut: Piece[][], valued: Piece[][]): string | null {
  const names = new Set(valued.flat().map(({ name }) => name));
  names.delete('');
  let doubt: string | null = null;
  for (const name of names) {
    const again = valued.flatMap((pieces, at) => {
      const same = pieces.filter((piece) => piece.name === name);
      return same.length > 1 ? [{ at, same }] : [];
    });
    const count = Math.max(0, ...again.map(({ same }) => same.length));
    // `P1 205.4F (hi 225.0)`: what is no temperature by its name would stand under the name of one.
    if (namesOther(name) || again.length === 0 || again.some(({ same }) => same.length !== count)) continue;
    const heads = again.map(({ at, same }) => headsOf(lines[at]!, cut[at]!, same));
    const known = Array.from({ length: count }, (_, n) => new Set(heads.map((one) => one?.[n]?.text)));
    const texts = known.flatMap((each) => [...each]);
    if (!texts.includes(undefined) && texts.length === count && new Set(texts).size === count)
      again.forEach(({ same }, i) =>
        same.forEach((piece, n) => Object.assign(piece, { said: name, ...heads[i]![n]!.named })),
      );
    else if (unitOfWords(again[0]!.same[0]!.unit) !== null || again[0]!.same[0]!.text.includes('.'))
      doubt ??= `“${name}” stands more than once in a line, and nothing tells which is which.`;
  }
  return doubt;
}

interface Head {
  text: string;
  named: Pick<Piece, 'name' | 'gap'>;
}

/** The first word or small number of the part before each value. */
function headsOf(line: string, cut: readonly Piece[], same: readonly Piece[]): Head[] | null {
  const heads = same.map((piece, n): Head | null => {
    const from = n === 0 ? 0 : same[n - 1]!.unitEnd;
    const part = cut.filter(({ start, end }) => start >= from && end <= piece.start - piece.gap.length);
    const other = part.filter(({ text }) => text !== piece.name);
    // Of the first part only what is as far before the value as in the others can be its head.
    const head = n === 0 ? other.at(-depthOf(cut, same)) : other[0];
    if (head === undefined || (head.kind !== 'word' && !/^\d{1,2}$/.test(head.text))) return null;
    return { text: head.text, named: { name: head.text, gap: line.slice(head.end, piece.start) } };
  });
  return heads.includes(null) ? null : (heads as Head[]);
}

/** How many pieces stand before the second value in its own part. */
function depthOf(cut: readonly Piece[], [first, second]: readonly Piece[]): number {
  return cut.filter(
    ({ start, end, text }) =>
      start >= first!.unitEnd && end <= second!.start - second!.gap.length && text !== second!.name,
  ).length;
}
