// `npm run bench [-- NAME [WORDS]]`: prints what things cost and how far they are from what is true; asserts nothing.
import { alarms } from './alarms.ts';
import { forecast } from './forecast/forecast.ts';
import { frames } from './frames.ts';
import { front } from './front.ts';
import { latency } from './latency.ts';
import { learnt } from './learnt/learnt.ts';
import { kill } from './kill.ts';
import { notebook } from './notebook.ts';
import { physics } from './physics.ts';
import { plan } from './plan/plan.ts';
import { replay } from './replay.ts';
import { seasonTune } from './season-tune.ts';
import { seek } from './seek.ts';
import { soak } from './soak.ts';
import { soakPage } from './soak-page.ts';
import { strength } from './strength.ts';
import { watch } from './watch.ts';

type Bench = (words: readonly string[]) => Promise<void>;
const benches: Record<string, Bench> = {
  physics,
  front,
  replay,
  'season-tune': seasonTune,
  seek,
  frames,
  strength,
  forecast,
  learnt,
  alarms,
  latency,
  soak,
  'soak-page': soakPage,
  notebook,
  kill,
  plan,
  watch,
};

/** Every name opens its bench; words behind a name that are no name themselves are handed to it. */
function asked(words: readonly string[]): { name: string; words: string[] }[] {
  if (words.length === 0) return Object.keys(benches).map((name) => ({ name, words: [] }));
  const found: { name: string; words: string[] }[] = [];
  for (const word of words) {
    const last = found.at(-1);
    if (word in benches || last === undefined) found.push({ name: word, words: [] });
    else last.words.push(word);
  }
  return found;
}

for (const { name, words } of asked(process.argv.slice(2))) {
  const bench = benches[name];
  if (bench === undefined) {
    console.error(`There is no bench "${name}"; there are ${Object.keys(benches).join(', ')}.`);
    process.exit(2);
  }
  console.log(`\n${name}`);
  await bench(words);
}
