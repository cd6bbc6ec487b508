// `bench learnt [dev] [BURNER…]`: whether a boil is forecast better for what earlier boils on its burner taught.
import { quantile } from '../forecast/tally.ts';
import { inThreads } from '../threads.ts';
import { burnerKinds } from './burners.ts';
import { AFTER_BOILS, type Job, type Judged, MOMENTS, type Sample } from './judge.ts';

const developmentSeeds: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8];
/** Never looked at one by one while what is learnt is worked on. */
const judgingSeeds: readonly number[] = [101, 102, 103, 104, 105, 106, 107, 108];

/** `asked`: "dev" for the development seeds, names of burners for only those. */
export async function learnt(asked: readonly string[]): Promise<void> {
  const names = asked.filter((word) => word !== 'dev');
  const strange = names.find((name) => !burnerKinds.some((kind) => kind.name === name));
  if (strange !== undefined) {
    console.error(`There is no burner "${strange}"; there are ${burnerKinds.map(({ name }) => name).join(', ')}.`);
    process.exit(2);
  }
  const kinds = burnerKinds.filter(({ name }) => names.length === 0 || names.includes(name));
  const seeds = asked.includes('dev') ? developmentSeeds : judgingSeeds;
  console.log(
    `  ${asked.includes('dev') ? 'development' : 'judging'} seeds ${seeds.join(', ')}; for each burner and seed four boils are run, and a fifth is judged\n` +
      '  begun with nothing, with what the newest one and with what all four taught of the burner (nothing of probe or sap).\n' +
      '  Median error as a share of the time left, and how often the 80 % range held it, three minutes after the fill ("cold"), five after the boil began\n  ("boils"), and at so many minutes before the finish; then of how many moments a time was said.',
  );
  const jobs = kinds.flatMap(({ name }) => seeds.map((seed): Job => ({ kind: name, seed })));
  const thread = new URL('worker.ts', import.meta.url);
  const judged = await inThreads<Job, Judged>(thread, jobs, ({ kind, seed }) => `${kind}, seed ${seed}`);
  const samples = judged.flatMap((one) => one.samples);
  const steam = judged.flatMap((one) => one.steam);
  console.log(
    `\n  ${'burner, after so many boils'.padEnd(30)}${MOMENTS.map((at) => (typeof at === 'string' ? at : `${at} min`).padStart(16)).join('')}      steam expected: off, within 1.28 σ`,
  );
  for (const { name, about } of kinds) printKind(name, about, samples, steam);
  printKind('all', 'all of them', samples, steam);
}

function printKind(name: string, about: string, samples: readonly Sample[], steam: Judged['steam']): void {
  const own = <T extends { kind: string }>(all: readonly T[]): T[] =>
    all.filter(({ kind }) => name === 'all' || kind === name);
  console.log(`  ${name}: ${about}`);
  for (const after of AFTER_BOILS) {
    const here = own(samples).filter((one) => one.after === after);
    const cells = MOMENTS.map((moment) => cell(here.filter(({ at }) => at === moment)));
    console.log(
      `  ${`  ${after}`.padEnd(30)}${cells.join('')}      ${steamCell(own(steam).filter((one) => one.after === after))}`,
    );
  }
}

/** "12 % 80/9": median error, share held, of how many answers. */
function cell(samples: readonly Sample[]): string {
  const answered = samples.filter(({ said }) => said !== null);
  const errors = answered.map(({ said, left }) => Math.abs(said! / left - 1));
  const held = answered.filter(({ low, high, left }) => low! <= left && left <= high!).length;
  if (answered.length === 0) return `– 0/${samples.length}`.padStart(16);
  return `${percent(quantile(errors, 0.5))} ${percent(held / answered.length)} ${answered.length}/${samples.length}`.padStart(
    16,
  );
}

const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

function steamCell(steam: Judged['steam']): string {
  if (steam.length === 0) return '–';
  const held = steam.filter(({ sigmas }) => Math.abs(sigmas) <= 1.2816).length;
  const off = quantile(
    steam.map(({ off }) => Math.abs(off)),
    0.5,
  );
  const bias = quantile(
    steam.map(({ off }) => off),
    0.5,
  );
  return `${percent(off)} (middle ${percent(bias)}), ${percent(held / steam.length)} of ${steam.length}`;
}
