// Takes something back that was noted.
import { tell } from '../client/store.ts';
import type { Mark, MarkView } from '../client/types.ts';
import { say } from '../language/say.ts';

const withdraw = (id: string, done?: string): Promise<boolean> => tell({ mark: { kind: 'withdraw', id } }, done);

/** `what` is the mark in words; `id` as it was sent. */
export function takeBack(id: string, what: string): void {
  void withdraw(id, say('marks.taken_back_what', { what }));
}

/** Notes a mark that was taken back once more, at the time it had, in place of the one of id `corrects`; `what` is that mark in words. */
export function noteAgain({ mark, at }: MarkView, what: string, corrects: string): Promise<boolean> {
  const again: Mark = { ...mark, id: `screen-${crypto.randomUUID()}`, happened: at, corrects };
  return tell({ mark: again }, say('marks.stands_again', { what }));
}

/** Takes the correction of that id back, and notes what it had replaced once more; `what` is the latter in words. */
export async function takeCorrectionBack(id: string, former: MarkView, what: string): Promise<void> {
  // In this order: the same amount beside it would be taken for a second press.
  if (await withdraw(id)) await noteAgain(former, what, id);
}
