// Rise over water and strength of sugar solutions against published equations and points.
import { riseFromStrength } from '../../../src/core/physics/sugar-solution.ts';
import { readTable } from '../../core/physics/published-table.ts';
import type { Comparison } from './comparison.ts';

const SUCROSE = { sucrose: 1, glucose: 0, fructose: 0 };
const SEA_LEVEL_HPA = 1013.25;

const sucroseAgainst = (column: string): Comparison['pairs'] =>
  readTable('bpe_sucrose_101325')
    .filter((row) => row.number('brix') >= 10 && row.number('brix') <= 80)
    .map((row) => [riseFromStrength(row.number('brix'), SUCROSE, SEA_LEVEL_HPA), row.number(column)]);

export const solutionComparisons: Comparison[] = [
  {
    quantity: 'rise, sucrose, 10–80 °Bx',
    source: 'Bubnik & Kadlec 1995, purity 100 %',
    provenance: 'read',
    unit: '°C',
    limit: 0.16,
    pairs: sucroseAgainst('bubnik_kadlec1995_q100_C'),
  },
  {
    quantity: 'rise, sucrose, 10–80 °Bx',
    source: 'Kadlec, Bretschneider & Dandar 1978',
    provenance: 'read',
    unit: '°C',
    limit: 0.285,
    pairs: sucroseAgainst('kadlec1978_C'),
  },
];
