// `npm run bench [-- NAME]`: prints what things cost and how far they are from published values; asserts nothing.
import { front } from './front.ts';
import { physics } from './physics.ts';
import { replay } from './replay.ts';
import { strength } from './strength.ts';

const benches: Record<string, () => Promise<void>> = { physics, front, replay, strength };
const asked = process.argv.slice(2);
for (const name of asked.length > 0 ? asked : Object.keys(benches)) {
  const bench = benches[name];
  if (bench === undefined) {
    console.error(`There is no bench "${name}"; there are ${Object.keys(benches).join(', ')}.`);
    process.exit(2);
  }
  console.log(`\n${name}`);
  await bench();
}
