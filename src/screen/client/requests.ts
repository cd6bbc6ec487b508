// Gives every command its reference and hands each answer to the one who asked.
import { say } from '../language/say.ts';
import type { Command, HostMessage, Wish } from './types.ts';

type Answered = Extract<HostMessage, { kind: 'answered' }>;
type Waiting = { resolve: (data: unknown) => void; reject: (why: Error) => void; timer: ReturnType<typeof setTimeout> };

export interface Requests {
  /** Resolves with the answer's data; rejects with a sentence for the person. */
  ask(wish: Wish): Promise<unknown>;
  answered(message: Answered): void;
}

/** `send` returns false when the link is down; `patienceMs` is how long an answer is waited for. */
export function requests(send: (command: Command) => boolean, patienceMs = 10_000): Requests {
  const waiting = new Map<string, Waiting>();
  let count = 0;

  function ask(wish: Wish): Promise<unknown> {
    count += 1;
    const ref = `s${count}`;
    return new Promise((resolve, reject) => {
      if (!send({ ...wish, ref } as Command)) {
        reject(new Error(say('client.not_sent')));
        return;
      }
      const timer = setTimeout(() => {
        waiting.delete(ref);
        reject(new Error(say('client.no_answer')));
      }, patienceMs);
      waiting.set(ref, { resolve, reject, timer });
    });
  }

  function answered(message: Answered): void {
    const asker = message.ref === null ? undefined : waiting.get(message.ref);
    if (asker === undefined || message.ref === null) return;
    waiting.delete(message.ref);
    clearTimeout(asker.timer);
    if (message.ok) asker.resolve(message.data);
    else asker.reject(new Error(message.why));
  }

  return { ask, answered };
}
