// Cuts a raw line into the pieces that a person would see in it: times, checksums, numbers with their names and units, words.

export type PieceKind = 'time' | 'checksum' | 'hex' | 'number' | 'broken' | 'word';

export interface Piece {
  kind: PieceKind;
  start: number;
  end: number;
  text: string;
  /** Of numbers and broken values: the words before it, '' for none, and what stands between them and it. */
  name: string;
  gap: string;
  /** What was its name before an address or number that tells probes apart became that. */
  said: string;
  /** Of numbers: the word right behind it, '' for none, and where that ends. Their text has a point for a decimal comma. */
  unit: string;
  unitEnd: number;
}

/** What a device says of itself, not of a probe. */
export const statusWord =
  /^(?:ok|err|error|fail|warn|on|off|run|idle|heat|heating|ready|busy|hold|wait|pass|good|bad|true|false|yes|no|stable|auto|manual|normal|valid|st|us|ol|marche|arret|pret|defaut|erreur|bon|ein|aus|bereit|fehler|gut)$/i;
/** Those of them that nobody calls a pan by: before a name at the start of a line they are none of it. */
const opening = /^(?:ok|err|error|fail|warn|pass|good|bad|true|false|ready|stable|valid)$/i;

const clock = String.raw`\d{1,2}:[0-5]\d:[0-5]\d(?:[.,]\d+)?|\d{1,2}:[0-5]\d(?![\d.,:])`;
const date = String.raw`\d{4}[-/]\d\d[-/]\d\d(?:[T ]\d\d:\d\d(?::\d\d(?:[.,]\d+)?)?(?:Z|[+-]\d\d:?\d\d)?)?|\d{1,2}[./-]\d{1,2}[./-]\d{2,4}(?![\d.])|\d{1,2}\.\d{1,2}\.(?= )`;
/** A letter beyond ASCII, as two bytes of UTF-8 or one of Latin-1; a sign for degrees is none. */
const letter = String.raw`(?:[\u00c3-\u00c5][\u0080-\u00bf]|[\u00c0\u00c1\u00c6-\u00ff])`;
const numberWith = (mark: string): string => String.raw`[+-]?\d+(?:${mark}\d+)?(?![\d])`;
/** A number whose letters behind it hold digits again is hexadecimal or a name; a sign belongs to it only after a gap. */
const anyPiece = (number: string): RegExp =>
  new RegExp(
    [
      // A sensor's address, byte by byte or with its family before it.
      String.raw`(?<address>(?<![\w.:])(?:[0-9A-F]{2}(?:[:.-][0-9A-F]{2}){5,9}|[0-9A-F]{2}(?: [0-9A-F]{2}){7}|[0-9A-F]{2}[-.][0-9A-F]{12,14})(?!\w|:[0-9A-F]))`,
      String.raw`(?<time>(?<![\w.,])(?:${date}|${clock}))`,
      // `28.904417.0A`: with two points it is no number.
      String.raw`(?<code>(?<![\w.,])[0-9A-F]{1,12}(?:[.][0-9A-F]{1,12}){2,5}(?![\w.]))`,
      String.raw`(?<checksum>[*#~^][0-9A-Fa-f]{2,8}(?![\w.]))`,
      String.raw`(?<hex>(?<![\w.])(?:0[xX][0-9A-Fa-f]+|\d+[A-Fa-f]+\d[0-9A-Fa-f]*|(?=(?:[0-9A-Fa-f]{4})+(?![\w.]))\d+[A-Fa-f]{2,})(?![\w.]))`,
      String.raw`(?<number>(?<![A-Za-z0-9_.,])${number}|(?<=(?<![A-Za-z0-9])[A-Za-z][A-Za-z0-9]{0,7})(?=[+-]\d+[.,]\d)${number}|(?<=[.]{2})${number}|(?<=[,;])${number}|(?<=\D[.])\d+(?!\d))`,
      String.raw`(?<broken>(?<![\w])(?:(?:nan|open|fault)[cfk]?|null)(?![\w]))`,
      // A unit right behind its number ends at a slash, unless that makes it a rate.
      String.raw`(?<word>(?<=\d *[^\w ]{0,2})[CFKcfk](?=\/(?!(?:min|h|hr|s|sec)\b))|(?:[A-Za-z_]|${letter})(?:\w|${letter}|[.\/-](?=\w))*)`,
    ].join('|'),
    'gi',
  );
const pieceWithPoint = anyPiece(numberWith('[.]'));
const pieceWithComma = anyPiece(numberWith('[.,]'));

/** Words that only join a name to its value. */
const joining = /^(?:is|at|now|reads?|are|of|and|was|the)$/i;

/** A code that says by its beginning that it is hexadecimal. */
export const HEX = '0[xX][0-9A-Fa-f]+';

/** What colours a terminal (ECMA-48): to the eye it is not there. */
export const COLOUR = '\\x1b\\[[0-9;]*[A-Za-z]';
const colours = new RegExp(COLOUR, 'g');

/** The line as it looks on a terminal, each character in its place. */
export const withoutColours = (line: string): string => line.replace(colours, (code) => ' '.repeat(code.length));

/** The pieces of a line in order. `commaIsDecimal`: whether `98,2` is one number. */
export function piecesOf(raw: string, commaIsDecimal: boolean): Piece[] {
  return plainPieces(withoutColours(raw), commaIsDecimal);
}

function plainPieces(line: string, commaIsDecimal: boolean): Piece[] {
  const raw = [...line.matchAll(commaIsDecimal ? pieceWithComma : pieceWithPoint)].map((match): Piece => {
    const group = Object.entries(match.groups!).find(([, text]) => text !== undefined)?.[0] ?? 'word';
    const kind = group === 'address' || group === 'code' ? 'hex' : (group as PieceKind);
    const piece = { kind, start: match.index, end: match.index + match[0].length, text: match[0] };
    if (kind === 'number') piece.text = piece.text.replace(',', '.');
    return { ...piece, name: '', gap: '', said: '', unit: '', unitEnd: piece.end };
  });
  const settled = raw.map((piece, at) =>
    isIndex(line, piece, raw[at + 1]) ? { ...piece, kind: 'word' as const } : piece,
  );
  settled.forEach((piece, at) => {
    if (piece.kind === 'number') findUnit(line, piece, settled[at + 1]);
  });
  settled.forEach((piece, at) => {
    if (piece.kind === 'number' || piece.kind === 'broken') findName(line, settled, at);
  });
  return settled;
}

/** What stands before the number of a probe. */
const LEADS =
  /(?:[#[(]|\b(?:ch|chan|channel|probe|sensor|temp|input|zone|pan|pot|kettle|tc|rtd|kanal|canal|voie|sonde)\.?) ?$/i;

/** `Ch 1: 98.2`, `[1] 98.2`, `2=97.1`, `probe 3 reads 97`: a small whole number that leads to another is a name. */
function isIndex(line: string, piece: Piece, next: Piece | undefined): boolean {
  if (piece.kind !== 'number' || !/^\d{1,2}$/.test(piece.text) || next === undefined) return false;
  const between = line.slice(piece.end, next.start);
  const isLead = LEADS.test(line.slice(0, piece.start)) || /^ ?[)\]]/.test(between);
  if (isLead && next.kind !== 'word' && /^ ?[)\]]?[ \t]*(?:[=:>@-]{0,2}|[.]{2,})[ \t]*$/.test(between)) return true;
  if (next.kind === 'number' || next.kind === 'broken') return /^["')\]]? *-{0,2}[=:>]+ *["'([]?$/.test(between);
  const before = line.slice(0, piece.start);
  return next.kind === 'word' && joining.test(next.text) && (isLead || /[A-Za-z] $/.test(before));
}

const unitBehind =
  /^ ?(?:[^ -~\t]{1,3} ?|\*|')?(?:(?:deg(?:rees?|res)?|grad)\.? ?)?(?:[A-Za-z]+[0-9]?|%|[^ -~\t]{1,2})(?![\w])/i;

/** `209.2,F,`, `0.498<tab>mA`: a unit in the next field. */
const unitField =
  /^ ?[,;|\t] ?(?:deg[ .]?|[^ -~\t]{1,2})?([CF]|(?<=\t)(?:K|mV|[Oo]hms?|mA|A|V|W|%|ms|s|rpm|hPa))(?= ?(?:[,;|*\t]|$))/;

/** `C/min` is a rate, and no temperature. */
const perTime = /^ ?(?:\/|per )\s?(?:min(?:utes?)?|h(?:ou)?rs?|h|s|sec(?:onds?)?)(?![\w])/i;

function findUnit(line: string, piece: Piece, next: Piece | undefined): void {
  const rest = line.slice(piece.end, next?.kind === 'word' ? undefined : next?.start);
  const found = unitBehind.exec(rest)?.[0];
  if (found === undefined) {
    const field = unitField.exec(line.slice(piece.end));
    if (field !== null) Object.assign(piece, { unit: field[1]!, unitEnd: piece.end + field[0].length });
    return;
  }
  const after = rest.slice(found.length);
  // `98.2 T2=97.1`: a word that leads to a value is its name, never a unit.
  if (/^["'\])]? *[=:>]/.test(after) || (found.startsWith(' ') && !knownUnit(found))) return;
  const per = perTime.exec(after)?.[0] ?? '';
  piece.unit = `${found.trim()}${per.trim()}`;
  piece.unitEnd = piece.end + found.length + per.length;
}

/** A unit that stands apart must be one that is known, for it may as well be the next name. */
const knownUnit = (text: string): boolean =>
  /^ (?:[^ -~\t]*|\*)? ?(?:(?:(?:deg(?:rees?|res)?|grad)\.? ?)?(?:c|f|k|celsius|fahrenheit|kelvin)|[mu]?v|millivolts?|k?ohms?|ohm|%|rpm|[hk]?pa|mbar|m?s|min|[^ -~\t]+)$/i.test(
    text,
  );

function findName(line: string, pieces: Piece[], at: number): void {
  const piece = pieces[at]!;
  const words: Piece[] = [];
  let from = piece.start;
  for (let back = at - 1; back >= 0; back--) {
    const before = pieces[back]!;
    const value = pieces.slice(0, back).findLast(({ kind }) => kind === 'number');
    const between = line.slice(before.end, from);
    if (before.kind === 'hex' && words.length === 0 && /^ *[=:>,;|-]{0,2}[ \t]*$/.test(between)) {
      piece.name = before.text;
      piece.gap = between;
      return;
    }
    if (before.kind !== 'word' || (value !== undefined && before.start < value.unitEnd)) break;
    // `"limits": { "back": 219.5 }` on one line of many: what it is part of belongs to its name.
    if (words.length > 0 && !/^[ .]{0,2}$|^" ?: ?\{ ?"$/.test(between)) break;
    if (words.length === 0 && !/^["')\]]{0,2}[ \t]*(?:[=:>@-]{0,2}|[.]{2,})[ \t]*["'([]?$/.test(between)) {
      if (!isAloneInCell(line, pieces, back) || !/^ *[,;|\t] *$/.test(between)) break;
    }
    words.unshift(before);
    from = before.start;
  }
  while (words.length > 1 && joining.test(words.at(-1)!.text)) words.pop();
  // `| now 84.4 |` beside `| mean 84.1 |` is all the name there is.
  const isNow = words.length === 1 && /^now$/i.test(words[0]!.text);
  while (!isNow && words.length > 0 && joining.test(words[0]!.text)) words.shift();
  if (
    /^[a-z]/i.test(words[1]?.text ?? '') &&
    opening.test(words[0]!.text) &&
    opensLine(pieces, pieces.indexOf(words[0]!))
  )
    words.shift();
  const last = words.at(-1);
  if (last === undefined) return;
  piece.name = line.slice(words[0]!.start, last.end);
  piece.gap = line.slice(last.end, piece.start);
}

/** `|  Boil pan  |  95.9 C |`: between two separators stand words alone, and before them no other. */
function isAloneInCell(line: string, pieces: Piece[], at: number): boolean {
  const from = Math.max(...[',', ';', '|', '\t'].map((mark) => line.lastIndexOf(mark, pieces[at]!.start)));
  const first = pieces.findIndex(({ start }) => start > from);
  return opensLine(pieces, first) && pieces.slice(first, at).every(({ kind }) => kind === 'word');
}

/** Only times, counts and codes stand before it: in `A;98.2` the first word is the name though a separator follows. */
const opensLine = (pieces: Piece[], at: number): boolean =>
  pieces
    .slice(0, at)
    .every(({ kind, text }) => kind === 'time' || kind === 'checksum' || (kind === 'number' && /^\d+$/.test(text)));
