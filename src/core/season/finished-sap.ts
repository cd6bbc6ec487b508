// How much of a boil's sap went into what was finished: what stayed thin in a pan made no syrup.
import { type BoilFacts, isSyrup } from './boil-facts.ts';
import type { JoinedPans } from './joined-pans.ts';
import { follows, known, type Known } from './known.ts';
import type { BoilPage, Collection } from './records.ts';
import { type SapIn, sapIn } from './sap-in.ts';
import { type Thin, thinOf } from './syrup-out.ts';

interface Boiled {
  facts: BoilFacts;
  page: BoilPage;
  /** Those that were given to this boil. */
  collections: readonly Collection[];
  /** All sap that went in. */
  sap: SapIn;
  /** What stayed too thin for syrup; null where nobody can say what is left. */
  thin: Thin | null;
  syrupSugarKg: Known | null;
}

/** Sap that became the syrup; litres are null where they are not known, the strength too where several kinds were boiled. */
export type FinishedSap = Pick<SapIn, 'litres' | 'brix'>;

/**
 * Sap of the pans that the syrup came out of, as far as the notes tell them, less the share whose sugar stayed thin there; all
 * of it where nothing is known to have stayed. Its litres are not known where that share is not, where more sugar is told
 * than went in (then what stayed thin was finished elsewhere, or never was), and where it would mix kinds of sap.
 */
export function finishedSap({ facts, page, collections, sap, thin, syrupSugarKg }: Boiled): FinishedSap {
  const used = facts.joined.filter((group) => isUsed(facts, group));
  const own = syrupPans(facts, used, { thin, toldLitres: page.syrup?.litres ?? null });
  const isAll = own.length === used.length;
  const part = isAll ? sap : sapOfPans(own, { facts, page, collections, sap });
  const left = thin === null ? null : isAll ? thin : thinOf(thin.batches.filter(({ pan }) => holds(own, pan)));
  const isLeft = left !== null && left.batches.length > 0;
  const kinds = new Set(own.flatMap(({ saps }) => saps));
  if (kinds.size > 1 && (own.length > 1 || isLeft || thin === null)) return { litres: null, brix: null };
  if (isAll && !isLeft) return part;
  const leftKg = left?.sugarKg ?? null;
  const over = follows([syrupSugarKg, leftKg, part.sugarKg], (syrup, stayed, went) => syrup! + stayed! - went!);
  if (over !== null && over.value > 2 * over.sigma) return { ...part, litres: null };
  if (!isLeft) return part;
  const litres = follows([part.litres, leftKg, part.sugarKg], (all, stayed, went) =>
    stayed! < went! ? all! * (1 - stayed! / went!) : null,
  );
  return { ...part, litres };
}

const holds = (groups: readonly JoinedPans[], id: string): boolean => groups.some(({ pans }) => pans.includes(id));

/** Something went into it or came out of it. */
function isUsed({ pours, taken, left, pans, takenUntold, leftUntold }: BoilFacts, group: JoinedPans): boolean {
  const untold = [...takenUntold, ...leftUntold];
  return (
    [...pours, ...taken, ...left].some(({ pan }) => group.pans.includes(pan)) ||
    pans.some(({ id, name }) => group.pans.includes(id) && untold.includes(name))
  );
}

/**
 * Those that the syrup came out of: all but the ones in which everything stayed thin. All of them where what went into each is not known,
 * and where nothing tells which gave any.
 */
function syrupPans(
  facts: BoilFacts,
  used: readonly JoinedPans[],
  { thin, toldLitres }: { thin: Thin | null; toldLitres: number | null },
): readonly JoinedPans[] {
  if (facts.pours.length === 0 || facts.unnoted.length > 0) return used;
  if (thin === null) return drawnFrom(facts, used, toldLitres) ?? used;
  const gave = used.filter((group) => gaveSyrup(facts, group));
  if (gave.length === 0) return used;
  return used.filter((group) => gave.includes(group) || !thin.batches.some(({ pan }) => group.pans.includes(pan)));
}

/** Syrup is measured once more in its jars: more than this over what was drawn off came from elsewhere, too (judgement). */
const MEASURED_AGAIN = 1.2;

/** What is left nobody knows; but where all that was drawn off is syrup, and makes what is told of, it came from there. Else null. */
function drawnFrom(
  { taken, takenUntold }: BoilFacts,
  used: readonly JoinedPans[],
  toldLitres: number | null,
): readonly JoinedPans[] | null {
  if (taken.length === 0 || takenUntold.length > 0 || !taken.every(isSyrup)) return null;
  const drawn = taken.reduce((sum, { litres }) => sum + litres, 0);
  if (toldLitres !== null && toldLitres > MEASURED_AGAIN * drawn) return null;
  return used.filter(({ pans }) => taken.some(({ pan }) => pans.includes(pan)));
}

/** Syrup was drawn off it or stands in it, or something was drawn off of which nobody knows how thick it was. */
function gaveSyrup({ taken, left, takenUntold, pans }: BoilFacts, group: JoinedPans): boolean {
  const isUntold = pans.some(({ id, name }) => group.pans.includes(id) && takenUntold.includes(name));
  return isUntold || [...taken, ...left].some((batch) => isSyrup(batch) && group.pans.includes(batch.pan));
}

/** What was poured into these pans alone; of a sum that the page says, their share of what was noted. */
function sapOfPans(
  own: readonly JoinedPans[],
  { facts, page, collections, sap }: Pick<Boiled, 'facts' | 'page' | 'collections' | 'sap'>,
): SapIn {
  const pours = facts.pours.filter(({ pan }) => holds(own, pan));
  if (pours.length === 0) return { litres: null, brix: null, sugarKg: null };
  const { litres: told, ...said } = page.sap ?? {};
  const part = sapIn({ ...facts, pours }, { ...page, sap: said }, collections);
  if (told === undefined) return part;
  const litresOf = (some: BoilFacts['pours']): number => some.reduce((sum, { litres }) => sum + litres, 0);
  const noted = litresOf(facts.pours);
  const scaled = (of: Known | null): Known | null => follows([of, sap.litres], (own, all) => (own! * all!) / noted);
  return { litres: scaled(known(litresOf(pours), 0, 'worked-out')), brix: part.brix, sugarKg: scaled(part.sugarKg) };
}
