// Takes something back that was noted.
import { tell } from '../client/store.ts';
import { say } from '../language/say.ts';

/** `what` is the mark in words; `id` as it was sent. */
export function takeBack(id: string, what: string): void {
  void tell({ mark: { kind: 'withdraw', id } }, say('marks.taken_back_what', { what }));
}
