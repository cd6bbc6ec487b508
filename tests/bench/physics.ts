// How far core/physics is from published values, and what one call costs.
import { comparisonHead, comparisonLine } from './physics/comparison.ts';
import { printCosts } from './physics/costs.ts';
import { heatComparisons } from './physics/heat.ts';
import { liquidComparisons } from './physics/liquids.ts';
import { solutionComparisons } from './physics/solution.ts';
import { thermometryComparisons } from './physics/thermometry.ts';
import { waterComparisons } from './physics/water.ts';

const comparisons = [
  waterComparisons,
  solutionComparisons,
  liquidComparisons,
  heatComparisons,
  thermometryComparisons,
].flat();

export async function physics(): Promise<void> {
  console.log(comparisonHead);
  for (const one of comparisons) console.log(comparisonLine(one));
  console.log('');
  await printCosts();
}
