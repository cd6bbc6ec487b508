// One thread of the learnt bench: takes a burner and a seed and hands back how its last boil was forecast.
import { parentPort } from 'node:worker_threads';
import { type Job, judgeBurner } from './judge.ts';

const port = parentPort;
port?.on('message', (job: Job) => {
  // An error that is not caught ends the thread, and the bench with it.
  void judgeBurner(job).then((judged) => port.postMessage(judged));
});
