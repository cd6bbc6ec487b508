// How many kills and power cuts the notebook survives with all that it had acknowledged: 40 kills of the program, 200 cuts.
import { cutPower, whyNoPowerCuts } from '../notebook/power-cut.ts';
import { killRound, MOMENTS, tidyUp } from '../cli/kill-rounds.ts';
import { ownFolder } from '../cli/program.ts';

const ROUNDS = 40;
const CUTS_A_RUN = 25;

export async function kill(): Promise<void> {
  await kills();
  const why = whyNoPowerCuts();
  if (why === null) powerCuts();
  else console.log(`  power cuts: left out, ${why}`);
}

async function kills(): Promise<void> {
  const own = ownFolder();
  let seed = 7;
  const random = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;
  let [sound, acknowledged] = [0, 0];
  for (let round = 0; round < ROUNDS; round += 1) {
    const moment = MOMENTS[round % MOMENTS.length] ?? 'start';
    const result = await killRound(moment, own.folder, random);
    acknowledged += result.acknowledged;
    if (result.faults.length === 0) sound += 1;
    else console.log(`  round ${round + 1}, ${moment}: ${result.faults.join('; ')}`);
  }
  own.remove();
  tidyUp();
  console.log(
    `  kill -9 (${MOMENTS.join(', ')})   ${sound} of ${ROUNDS} rounds sound, ${acknowledged} effects acknowledged`,
  );
}

function powerCuts(): void {
  for (const [words, failEvery] of [
    ['a disk that keeps its word', 0],
    ['every ninth sync fails', 9],
  ] as const) {
    const results = [1, 2, 3, 4].flatMap((seed) => cutPower(CUTS_A_RUN, seed * 101, 3000, failEvery));
    const unsound = results.filter(({ faults }) => faults.length > 0);
    for (const { faults } of unsound.slice(0, 5)) console.log(`  ${faults.join('; ')}`);
    console.log(`  power cut, ${words}   ${results.length - unsound.length} of ${results.length} sound`);
  }
}
