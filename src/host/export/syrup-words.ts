// What the syrup of a boil is called on paper, by the sap that its pans were said to hold.
import type { Header } from '../../core/boil/entries.ts';
import { sapKindOf, type SapKindKey } from '../../core/physics/sap-kinds.ts';
import type { MessageKey, Tongue } from '../../language/tongue.ts';

const CALLED: Record<SapKindKey, MessageKey> = {
  maple: 'paper.syrup.maple',
  'maple-early': 'paper.syrup.maple',
  'maple-late': 'paper.syrup.maple',
  birch: 'paper.syrup.birch',
  walnut: 'paper.syrup.walnut',
  other: 'paper.syrup.other',
};

/** "Birch syrup"; only "Syrup" of a sap of one's own, of several kinds in one boil, and where there is no pan. */
export function syrupCalled({ pans = [] }: Header, tongue: Tongue): string {
  const syrup = pans.filter(({ role }) => role !== 'reference');
  const called = [...new Set(syrup.map(({ sap }) => CALLED[sapKindOf(sap ?? 'maple').key]))];
  return tongue.say(called.length === 1 ? called[0]! : 'paper.syrup.other');
}
