// Long work in short slices, so that a live boil is never kept waiting.
import type { MachineClock } from './clock.ts';

/** No slice of background work takes longer than this, with room for the last step of it. */
export const SLICE_MS = 15;
const ITEMS_A_LOOK = 500;

/** All items, gathered in slices. */
export async function gathered<Item>(items: Iterable<Item>, machine: MachineClock): Promise<Item[]> {
  const all: Item[] = [];
  let untilMs = machine.monotonicMs() + SLICE_MS;
  for (const item of items) {
    all.push(item);
    if (all.length % ITEMS_A_LOOK !== 0 || machine.monotonicMs() < untilMs) continue;
    await new Promise<void>((goOn) => machine.after(0, goOn));
    untilMs = machine.monotonicMs() + SLICE_MS;
  }
  return all;
}

/** Each item in turn, with a pause for everything else whenever a slice is over; what is done with an item counts. */
export async function* inSlices<Item>(items: Iterable<Item>, machine: MachineClock): AsyncGenerator<Item> {
  let untilMs = machine.monotonicMs() + SLICE_MS;
  for (const item of items) {
    yield item;
    if (machine.monotonicMs() < untilMs) continue;
    await new Promise<void>((goOn) => machine.after(0, goOn));
    untilMs = machine.monotonicMs() + SLICE_MS;
  }
}
