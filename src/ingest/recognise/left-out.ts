// Says of each piece of a line that is not read why it is not, and of a line that gives nothing.
import type { LineSpan } from '../../core/boil/line-proposal.ts';
import { readLine } from '../read-line.ts';
import type { Candidate } from './candidate.ts';
import { type Piece, piecesOf, statusWord } from './pieces.ts';

/** Spans of numbers, times, checksums and status words that no value covers. */
export function leftOutSpans(text: string, taken: LineSpan[], candidate: Candidate | null): LineSpan[] {
  const commaIsDecimal = candidate?.format.kind === 'columns' && candidate.format.decimal === ',';
  const free = piecesOf(text, commaIsDecimal).filter(({ start, end }) =>
    taken.every((span) => end <= span.start || start >= span.end),
  );
  return free.flatMap((piece): LineSpan[] => {
    const why = whyLeftOut(piece, candidate);
    return why === null ? [] : [{ is: 'left-out', start: piece.start, end: piece.end, why }];
  });
}

function whyLeftOut(piece: Piece, candidate: Candidate | null): string | null {
  switch (piece.kind) {
    case 'time':
      return 'a time stamp';
    case 'checksum':
      return 'a checksum';
    case 'hex':
      return 'a code in hexadecimal digits';
    case 'word':
      return statusWord.test(piece.text) ? 'a status word' : null;
    case 'number':
    case 'broken':
      return (
        candidate?.leftOut.find(({ what }) => what === piece.name)?.why ?? 'a number that is not taken for a reading'
      );
  }
}

/** Why a line gives nothing. */
export function whyNothing(text: string, candidate: Candidate | null): string {
  const odd = text.replace(/[\t -~]/g, '').length;
  if (odd > text.length / 5) return 'Bytes that are no text: noise from when the board starts, or a wrong baud rate.';
  if (!/\d/.test(text))
    return /boot|start|init|ready|version|hello|welcome|reset/i.test(text)
      ? 'Words that a board prints when it starts.'
      : 'Words without a number, such as a header.';
  if (/boot|rst|reset|version|firmware|\bfw\b|init|build|copyright|calib|start/i.test(text))
    return 'Words that a board prints when it starts.';
  const reason = candidate === null ? undefined : readLine(text, candidate.format).rejected[0];
  return reason === undefined ? 'Nothing in it is taken for a reading.' : `It does not fit: ${reason}.`;
}

/** What is seen so many times less often than another is a damaged line, or said now and then. */
const SELDOM = 4;

/** Whether what was seen so often is none of what a board always sends, whose commonest was seen `most` times. */
export const isSeldomSeen = (seen: number, most: number): boolean => seen * SELDOM <= most;

/** Why it is left out, as a part of a sentence. */
export const whySeldom = (seen: number, lines: number): string => `it stands in ${seen} of ${lines} lines alone`;
