// One thread of the forecast bench: takes a kind and a seed, plays the boil and hands back its score.
import { parentPort } from 'node:worker_threads';
import { allKinds } from './kinds/all-kinds.ts';
import { play } from './play.ts';
import { scoreBoil, type BoilScore } from './score.ts';
import { witness } from './witness.ts';

export interface Job {
  kind: string;
  seed: number;
}

export async function judgeBoil({ kind: name, seed }: Job): Promise<BoilScore> {
  const kind = allKinds.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`There is no kind of boil "${name}".`);
  const witnessed = witness(kind.scenario(seed));
  return scoreBoil(name, seed, witnessed, await play(witnessed.recording));
}

const port = parentPort;
port?.on('message', (job: Job) => {
  // An error that is not caught ends the thread, and the bench with it.
  void judgeBoil(job).then((score) => port.postMessage(score));
});
