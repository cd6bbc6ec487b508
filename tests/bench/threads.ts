// Shares the jobs of a bench out over threads, each of which answers one message with one.
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';

const MOST_THREADS = 4;

/** The answers come back in the order of the jobs; a thread that fails ends it all and says in which job, as `called` names it. */
export async function inThreads<Job, Answer>(
  thread: URL,
  jobs: readonly Job[],
  called: (job: Job) => string,
): Promise<Answer[]> {
  const answers: Answer[] = [];
  let next = 0;
  const work = async (): Promise<void> => {
    const worker = new Worker(thread);
    try {
      while (next < jobs.length) {
        const index = next++;
        answers[index] = await answerTo(worker, jobs[index]!, called);
      }
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: Math.min(MOST_THREADS, availableParallelism(), jobs.length) }, work));
  return answers;
}

function answerTo<Job, Answer>(worker: Worker, job: Job, called: (job: Job) => string): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const fail = (error: unknown): void => reject(new Error(`${called(job)}: ${String(error)}`, { cause: error }));
    worker.once('message', (answer: Answer) => {
      worker.off('error', fail);
      resolve(answer);
    });
    worker.once('error', fail);
    worker.postMessage(job);
  });
}
