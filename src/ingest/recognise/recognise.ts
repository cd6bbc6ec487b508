// Proposes how a port's lines are to be read, from the first of them, and says why.
import type { Proposal } from '../../core/boil/line-proposal.ts';

/** So many lines are looked at. */
export const linesLookedAt = 20;

/**
 * What the lines of a port most likely say. Never throws; the same lines always give the same proposal.
 * @param lines raw lines as the splitter gives them, without line ends; only the first 20 are looked at
 */
export function recognise(lines: readonly string[]): Proposal {
  const looked = lines.slice(0, linesLookedAt);
  const why = 'No lines have come yet, so nothing can be told.';
  return {
    verdict: 'none',
    format: null,
    channels: [],
    reasons: [why],
    lines: looked.map((text) => ({ text, spans: [], why })),
    alternatives: [],
  };
}
