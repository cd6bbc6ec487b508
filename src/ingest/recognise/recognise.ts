// Proposes how a port's lines are to be read, from the first of them, and says why.
import type { Proposal } from '../../core/boil/line-proposal.ts';
import { asColumns } from './as-columns.ts';
import { asJson, jsonObjects } from './as-json.ts';
import { asNamed } from './as-named.ts';
import type { Candidate } from './candidate.ts';
import { leftOutSpans, whyNothing } from './left-out.ts';
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
  const data = dataOf(telling);
  const proposals = candidates(data, telling, looked).map((candidate) => propose(looked, data, candidate));
  const made = proposals.filter((one): one is Proposal => !Array.isArray(one));
  const best = made.find(({ verdict }) => verdict === 'sure') ?? made[0];
  const why = proposals.flatMap((one) => (Array.isArray(one) ? one : []));
  return best ?? nothing(looked, [...new Set([...whyNot(data, looked), ...why])]);
}

/** Bytes of a wrong baud rate or from before the board was ready say nothing of its lines. */
const isText = (line: string): boolean =>
  line.replace(/[\t -~\u00b0\u00b5\u00c2\u00ce\u00a9]/g, '').length <= line.length / 10;

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

function candidates(lines: string[], telling: string[], looked: readonly string[]): Candidate[] {
  const objects = jsonObjects(telling);
  if (objects.length > 0) {
    const json = asJson(objects);
    if (json !== null && json.channels.length > 0) return [json];
    return [asNamed(lines), json].filter((one) => one !== null);
  }
  const comma = commaMeaning(lines, looked);
  if (comma === 'not known') return [];
  const withHeaders = looked.filter((line) => lines.includes(line) || (isText(line) && !isBootTextWithNumber(line)));
  const columns = asColumns(withHeaders, comma === 'decimal');
  const named = comma === 'decimal' ? null : asNamed(lines);
  return [named, columns].filter((one) => one !== null);
}

const isBootTextWithNumber = (line: string): boolean => /\d/.test(line) && isBootText(line) && !COMMENT.test(line);

/** Whether commas between digits are decimal marks; not known where nothing else tells. */
function commaMeaning(lines: readonly string[], looked: readonly string[]): 'decimal' | 'separator' | 'not known' {
  const undated = lines.map((line) => line.replace(/\d{1,2}\.\d{1,2}\.\d{2,4}/g, '').replace(/\d:\d\d[.,]\d+/g, ''));
  if (!undated.some((line) => /\d,\d/.test(line))) return 'separator';
  if (undated.some((line) => /\d\.\d/.test(line))) return 'separator';
  if (undated.some((line) => /;|\t|\||\d [-+\d]|[A-Za-z][:=>]* *[-+]?\d+,\d+\b(?!,)/.test(line))) return 'decimal';
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
      'The numbers have decimal commas, which can be read in plain columns only: let the board write decimal points, or columns parted by semicolons.',
    ],
    'not known': [
      'Commas stand between digits, and whether they are decimal marks the lines do not say: let the board write decimal points, or columns parted by semicolons.',
    ],
  }[meaning];
  return [
    ...asked,
    'No number can be taken with any certainty for a temperature, or for the millivolts or ohms of a probe: choose the format by hand, or let the board print a name, a value and a unit.',
  ];
}

function nothing(looked: readonly string[], reasons: string[]): Proposal {
  const lines = looked.map((text) => ({ text, spans: leftOutSpans(text, [], null), why: whyNothing(text, null) }));
  return { verdict: 'none', format: null, channels: [], reasons, lines, alternatives: [] };
}
