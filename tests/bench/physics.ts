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
  console.log(
    '  residual = ours less the source. by: "read" in the source or a public copy of it; "memory": recalled, not seen;',
  );
  console.log(
    '  "computed": worked out apart from the program. The limit is what the scatter of sources or the print allows;',
  );
  console.log(
    '  "of it" is a share of the value. Against other equations the residual is how far published ones part.',
  );
  console.log(comparisonHead);
  for (const one of comparisons) console.log(comparisonLine(one));
  const over = comparisons.filter((one) => comparisonLine(one).includes('OVER')).length;
  console.log(`  ${comparisons.length} comparisons, ${over} over their limit\n`);
  await printCosts();
}
