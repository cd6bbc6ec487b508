// Proposes how a port's lines are to be read, from the first of them, and says why.
import type { Proposal } from '../../core/boil/line-proposal.ts';
import { asColumns } from './as-columns.ts';
import { asJson, asJsonInTurn, jsonObjects } from './as-json.ts';
import { asNamed } from './as-named.ts';
import type { Candidate } from './candidate.ts';
import { leftOutSpans, whyNothing } from './left-out.ts';
import { statusWord, withoutColours } from './pieces.ts';
import { propose } from './propose.ts';

/** So many lines are looked at. */
const linesLookedAt = 20;
/** Longer ones tell no more, and what is looked for in them takes time. */
const longestLookedAt = 512;

/**
 * What the lines of a port most likely say. Never throws; the same lines always give the same proposal.
 * @param lines raw lines as the splitter gives them, without line ends; only the first 20 are looked at
 */
export function recognise(lines: readonly string[]): Proposal {
  const looked = lines.slice(0, linesLookedAt);
  const telling = looked.filter((line) => line.length <= longestLookedAt && /\d/.test(line) && isText(line));
  if (telling.length === 0) return nothing(looked, [whyNoneTells(looked)]);
  const whole = dataOf(telling);
  return withoutStrays(whole)
    .map((data) => proposalOf(data, looked))
    .reduce((best, other) => (worth(other) > worth(best) ? other : best), proposalOf(whole, looked));
}

function proposalOf(data: string[], looked: readonly string[]): Proposal {
  if (isNamedBefore(looked)) return nothing(looked, [NAMED_BEFORE]);
  const proposals = candidates(data, looked).map((candidate) => propose(looked, data, candidate));
  const made = proposals.filter((one): one is Proposal => !Array.isArray(one));
  const best = made.find(({ verdict }) => verdict === 'sure') ?? made[0];
  const why = proposals.flatMap((one) => (Array.isArray(one) ? one : []));
  return best ?? nothing(looked, [...new Set([...whyNot(data, looked), ...why])]);
}

/** Lines like no other are looked past where that makes sense of the others: a cut first one, a menu, a word of the board. */
const worth = ({ verdict, channels, lines }: Proposal): number =>
  ({ none: 0, unsure: 1, sure: 2 })[verdict] +
  (verdict === 'unsure' && isMostlyRead(lines) ? 0.5 : 0) +
  Math.min(0.4, channels.length / 20);

const isMostlyRead = (lines: Proposal['lines']): boolean =>
  lines.filter(({ why }) => why === null).length > lines.length / 2;

/** The lines without the first, and those of shapes that come again; nothing where too few would be left. */
function withoutStrays(data: string[]): string[][] {
  const shapes = data.map(shapeOf);
  const times = (shape: string): number => shapes.filter((one) => one === shape).length;
  const usual = data.filter((_, at) => times(shapes[at]!) >= 3);
  return [data.slice(1), usual].filter((some) => some.length < data.length && some.length >= LEAST_USUAL);
}
const LEAST_USUAL = 6;

/** What two lines of one kind share: where their words and numbers stand. */
const shapeOf = (line: string): string =>
  withoutColours(line)
    .replace(/[-+]?\b(?:\d[\d.,:]*|nan|open|fault|null|err\w*)(?![\w])|-{2,}/gi, '0')
    .replace(/[A-Za-z]\w*/g, 'w')
    .replace(/\s+/g, ' ');

/** Bytes of a wrong baud rate or from before the board was ready say nothing of its lines. */
const isText = (line: string): boolean =>
  withoutColours(line).replace(/[\t -~\u00b0\u00b5\u00c2\u00ce\u00a9]/g, '').length <= line.length / 10;

function dataOf(lines: string[]): string[] {
  // Where most lines begin like a comment, it is how this board begins its data.
  const begun = lines.filter((line) => COMMENT.test(line)).length > lines.length / 2;
  const data = lines.filter((line) => !isBootText(line, begun));
  return data.length > 0 ? data : lines;
}
const COMMENT = /^\s*(?:#|\/\/|;)/;
const isBootText = (line: string, commentIsData = false): boolean =>
  /\b(?:boot|rst|reset|firmware|fw|version|init\w*|build|copyright|starting|v\d+\.\d+)\b/i.test(line) ||
  (!commentIsData && COMMENT.test(line));

function candidates(lines: string[], looked: readonly string[]): Candidate[] {
  const objects = jsonObjects(lines);
  if (objects.length > 0) {
    const json = asJson(objects);
    if (json !== null && json.channels.length > 0) return [json];
    return [asJsonInTurn(objects, lines), asNamed(lines, looked, false), json].filter((one) => one !== null);
  }
  const comma = commaMeaning(lines, looked);
  if (comma === 'not known') return [];
  const withHeaders = looked.filter((line) => lines.includes(line) || (isText(line) && !isBootTextWithNumber(line)));
  const columns = asColumns(withHeaders, comma === 'decimal');
  const named = asNamed(lines, looked, comma === 'decimal');
  return [named, columns].filter((one) => one !== null);
}

const isBootTextWithNumber = (line: string): boolean => /\d/.test(line) && isBootText(line) && !COMMENT.test(line);

/** Whether commas between digits are decimal marks; not known where nothing else tells. */
function commaMeaning(lines: readonly string[], looked: readonly string[]): 'decimal' | 'separator' | 'not known' {
  const undated = lines.map((line) =>
    line.replace(/\d{1,2}\.\d{1,2}\.(?:\d{2,4}|(?= ))/g, '').replace(/\d:\d\d[.,]\d+/g, ''),
  );
  if (!undated.some((line) => /\d,\d/.test(line))) return 'separator';
  const having = (mark: RegExp): number => undated.filter((line) => mark.test(line)).length;
  // `PFANNE 1   97,0 GRAD`: behind a name or a colon, whatever else has a point.
  const isDecimal =
    having(/[A-Za-z:\d]:? {1,9}[-+]?\d{1,3},\d{1,2}(?![\d,])/) > Math.max(lines.length / 2, having(/\d\.\d/));
  // `96,7 °C`
  const withUnit = having(/\d,\d{1,4} ?(?:[^ -~]{1,2} ?|deg\.? ?)?(?:[CFK]|mV|ohms?)\b/i);
  if (isDecimal || withUnit > lines.length / 2 || having(/"[-+]?\d+,\d+"/) > lines.length / 2) return 'decimal';
  if (having(/\d,\d{4,}/) > lines.length / 2) return 'separator';
  if (having(/\d\.\d/) > 0) return 'separator';
  if (
    undated.some((line) =>
      /;|\t|\||\d [-+\d]|[A-Za-z][:=>]* *[-+]?\d+,\d+\b(?!,)|\w ?[:=>]+ *[-+]?\d+,\d+\b(?!,)/.test(line),
    )
  )
    return 'decimal';
  const header = looked.find((line) => /[A-Za-z]/.test(line) && !/\d,\d/.test(line) && line.includes(','));
  const commas = (line: string): number => line.split(',').length;
  return header !== undefined && lines.every((line) => commas(line) === commas(header)) ? 'separator' : 'not known';
}

function whyNoneTells(looked: readonly string[]): string {
  if (looked.length === 0) return 'No lines have come yet, so nothing can be told.';
  return looked.some((line) => !isText(line))
    ? 'What came is no text: check the baud rate, or wait until the board has started.'
    : 'No line that came holds a number: wait for the first readings.';
}

function whyNot(data: string[], looked: readonly string[]): string[] {
  const meaning = commaMeaning(data, looked);
  const asked = {
    separator: [],
    decimal: [
      'The numbers have decimal commas, which can be read in plain columns or behind a name only: let the board write decimal points, or columns parted by semicolons.',
    ],
    'not known': [
      'Commas stand between digits, and whether they are decimal marks the lines do not say: let the board write decimal points, or columns parted by semicolons.',
    ],
  }[meaning];
  return [
    ...asked,
    ...(mostly(data, SIGN_BEHIND)
      ? [
          'A sign for degrees stands right behind the numbers, where columns cannot be read: let the board write 98.7 or 98.7C, or a name before each number.',
        ]
      : []),
    ...(mostly(data, FRAMED)
      ? [
          'Brackets stand around each line, where columns cannot be read: let the board leave them out, or write a name before each number.',
        ]
      : []),
    ...(mostly(data, HEX_ALONE) && mostly(data, /\b(?:\d+[A-F]|[A-F]+\d)[0-9A-F]*\b/i)
      ? ['The numbers are hexadecimal, which no format can read: let the board write 96.1.']
      : []),
    'No number can be taken with any certainty for a temperature, or for the millivolts or ohms of a probe: choose the format by hand, or let the board print a name, a value and a unit.',
  ];
}

const mostly = (lines: readonly string[], what: RegExp): boolean =>
  lines.filter((line) => what.test(line)).length > lines.length / 2;
const SIGN_BEHIND = /(?:^|[,;|\t] *)[-+]?\d+(?:\.\d+)? ?[^ -~]{1,2}[CFcf] *(?:[,;|\t]|$)/;

/** `<512|96.1|98.4>`, `[96.1,98.4]`: no number of a column may have a bracket at it. */
const FRAMED = /^\s*(?:<[^<>]*\d>|\[[^[\]]*\d\]|\{[^{}:]*\d\}|\([^()]*\d\))\s*$/;
/** `T:03E3 03F5 ~BC`: behind a name nothing but hexadecimal digits, in pairs. */
const HEX_ALONE = /^\W*(?:[A-Za-z]\w*:)?[\s,;|:]*(?:[~*#]?(?:0x)?(?:[0-9A-F]{2}){1,4}[\s,;|:~*#]*){2,}$/i;

/** Lines that tell a number alone, each after one that says by a name or address whose it is. */
function isNamedBefore(lines: readonly string[]): boolean {
  const before = lines.flatMap((line, at) => (ALONE.test(line) ? [lines.slice(0, at).findLast(isTitle) ?? ''] : []));
  const known = before.filter((title) => title !== '');
  const again = [...new Set(known)].filter((title) => known.filter((one) => one === title).length > 1);
  return known.length >= 3 && known.length >= before.length - 1 && again.length > 1;
}
const NAMED_BEFORE =
  'Whose number it is stands in a line of its own, and each line is read by itself: let the board write name and number in one line.';
const ALONE = /^\W*[-+]?\d+[.,]\d+\s*(?:[^ -~]{0,2}(?:deg\w*)?\s*[CFK]\w*|m?V|[Oo]hms?)?(?:\s*\(.*\))?\s*$/i;
const isTitle = (line: string): boolean =>
  /^\W*[A-Za-z]/.test(line) &&
  !/=>|\braw\b|\d[.,]\d/i.test(line) &&
  !line.split(/\W+/).some((word) => statusWord.test(word));

function nothing(looked: readonly string[], reasons: string[]): Proposal {
  const lines = looked.map((text) => ({ text, spans: leftOutSpans(text, [], null), why: whyNothing(text, null) }));
  return { verdict: 'none', format: null, channels: [], reasons, lines, alternatives: [] };
}
