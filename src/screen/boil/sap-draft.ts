// A pan's sap in the form of a boil: the kind that was chosen, and the shares of one that no kind has.
import type { Pan, SapKind } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import { typedNumber } from '../words/amounts.ts';
import { sapKeyOf } from '../words/sap-words.ts';
import type { SapKey } from '../words/sap-words.ts';

const PARTS = ['sucrose', 'glucose', 'fructose', 'others'] as const;
export type SapPart = (typeof PARTS)[number];
const PART_WORDS: Record<SapPart, MessageKey> = {
  sucrose: 'boil.part.sucrose',
  glucose: 'boil.part.glucose',
  fructose: 'boil.part.fructose',
  others: 'boil.part.others',
};

/** Shares in percent as typed; '' is none. They are those of the kind until another sap is chosen. */
export interface SapDraft {
  kind: SapKey;
  shares: Record<SapPart, string>;
}

const percent = (share: number | undefined): string =>
  share === undefined || share === 0 ? '' : inField(100 * share, 2);

function sharesIn(shares: Partial<Record<SapPart, number | undefined>> | null): SapDraft['shares'] {
  const at = (part: SapPart): string => percent(shares?.[part]);
  return { sucrose: at('sucrose'), glucose: at('glucose'), fructose: at('fructose'), others: at('others') };
}

/** A sap of a header as it stands in the form; of none, maple. */
export function sapDraft(sap: Pan['sap'], kinds: readonly SapKind[]): SapDraft {
  const kind = sapKeyOf(sap, kinds);
  const known = kinds.find(({ key }) => key === kind)?.shares ?? null;
  return { kind, shares: sharesIn(typeof sap === 'object' ? sap : known) };
}

/** Another kind with its own shares; for another sap the shares stay as they are, to begin from. */
export function chooseSap(draft: SapDraft, kind: SapKey, kinds: readonly SapKind[]): SapDraft {
  const shares = kinds.find(({ key }) => key === kind)?.shares ?? null;
  return { kind, shares: shares === null ? draft.shares : sharesIn(shares) };
}

const shareOf = (typed: string): number => (typedNumber(typed) ?? 0) / 100;

/** Sugars of a header's sap sum to 1 within this. */
const SUM_SLACK = 0.01;
/** A header takes no more acids and minerals, as a share of all that is dissolved. */
const MOST_OTHERS = 0.3;

/** What is wrong with typed shares, without the pan's name; null when they can be used. */
export function problemInSap({ kind, shares }: SapDraft): string | null {
  if (kind !== 'other') return null;
  const bad = PARTS.find((part) => shares[part].trim() !== '' && !isShare(typedNumber(shares[part])));
  if (bad !== undefined) return say('boil.problem.share', { part: say(PART_WORDS[bad]), typed: shares[bad] });
  const sum = shareOf(shares.sucrose) + shareOf(shares.glucose) + shareOf(shares.fructose);
  if (Math.abs(sum - 1) > SUM_SLACK) return say('boil.problem.sum', { sum: inField(100 * sum, 1) });
  return shareOf(shares.others) > MOST_OTHERS ? say('boil.problem.others') : null;
}

const isShare = (value: number | null): boolean => value !== null && value >= 0 && value <= 100;

/** The sap of a checked draft. A sap that was not touched stays as it was written. */
export function sapOf(draft: SapDraft, before: Pan['sap'], kinds: readonly SapKind[]): Pan['sap'] {
  if (JSON.stringify(sapDraft(before, kinds)) === JSON.stringify(draft)) return before;
  if (draft.kind === 'maple' || draft.kind === 'birch') return draft.kind;
  const known = kinds.find(({ key }) => key === draft.kind)?.shares ?? null;
  if (known !== null) return { ...known };
  const typed = PARTS.flatMap((part) =>
    draft.shares[part].trim() === '' ? [] : [[part, shareOf(draft.shares[part])]],
  );
  return Object.fromEntries(typed) as Pan['sap'];
}
