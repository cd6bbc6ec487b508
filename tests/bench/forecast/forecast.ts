// `bench forecast [dev] [detail] [trace] [seed=N] [KIND…] [--save FILE]`: many kinds of simulated boil through the real replay, judged by what was true.
import { writeFileSync } from 'node:fs';
import { allKinds, developmentSeeds, judgingSeeds } from './kinds/all-kinds.ts';
import type { Kind } from './kinds/kind.ts';
import { printKind, printTotal, tableHead, tableLine } from './print.ts';
import type { BoilScore } from './score.ts';
import { tally } from './tally.ts';
import { printTrace } from './trace.ts';
import type { Job } from './worker.ts';
import { inThreads } from '../threads.ts';

/**
 * `asked`: "dev" for the development seeds, names of kinds for only those and with all their figures, "detail" for the
 * figures of every kind, "seed=N" for that seed alone, "trace" for one boil of each kind step by step, "--save FILE" for
 * all scores as JSON.
 */
export async function forecast(asked: readonly string[]): Promise<void> {
  const save = asked.indexOf('--save');
  const file = save < 0 ? null : (asked[save + 1] ?? null);
  const words = save < 0 ? asked : asked.filter((_, index) => index !== save && index !== save + 1);
  const isDevelopment = words.includes('dev');
  const only = words.flatMap((word) => (word.startsWith('seed=') ? [Number(word.slice(5))] : []));
  const names = words.filter((word) => !['dev', 'detail', 'trace'].includes(word) && !word.startsWith('seed='));
  const isDetailed = names.length > 0 || words.includes('detail');
  const kinds = kindsNamed(names);
  const seeds = only.length > 0 ? only : isDevelopment ? developmentSeeds : judgingSeeds;
  if (words.includes('trace')) {
    for (const kind of kinds) await printTrace(kind, seeds[0]!);
    return;
  }
  const chosen = only.length > 0 ? '' : isDevelopment ? 'development ' : 'judging ';
  const seedWords = `${chosen}seeds ${seeds.join(', ')}`;
  console.log(
    `  ${seedWords} (development ${developmentSeeds.join(', ')}; judging ${judgingSeeds.join(', ')}, not used to develop)\n` +
      '  judged are moments after the last pour, draw-off or change of the flame by hand before a true finish; wind and\n' +
      '  wood go on as they truly do. Errors are shares of the time left; answered counts boiling pans only.',
  );
  const scores = await inThreads<Job, BoilScore>(
    new URL('worker.ts', import.meta.url),
    kinds.flatMap(({ name }) => seeds.map((seed) => ({ kind: name, seed }))),
    ({ kind, seed }) => `${kind}, seed ${seed}`,
  );
  const of = (kind: string): BoilScore[] => scores.filter((score) => score.kind === kind);
  if (isDetailed) for (const { name, about } of kinds) printKind(name, about, of(name));
  console.log(`\n${tableHead}`);
  for (const { name } of kinds) console.log(tableLine(name, tally(of(name))));
  printTotal(scores, seedWords, kinds.length);
  if (file !== null) writeFileSync(file, JSON.stringify(scores));
}

function kindsNamed(names: readonly string[]): readonly Kind[] {
  const strange = names.find((name) => !allKinds.some((kind) => kind.name === name));
  if (strange !== undefined) {
    console.error(`There is no kind "${strange}"; there are ${allKinds.map(({ name }) => name).join(', ')}.`);
    process.exit(2);
  }
  return names.length === 0 ? allKinds : allKinds.filter(({ name }) => names.includes(name));
}
