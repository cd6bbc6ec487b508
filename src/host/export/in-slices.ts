// Long work cut into short slices for an export, so that a live boil beside it is never kept waiting.
import type { MachineClock } from '../clock.ts';
import { SLICE_MS } from '../slices.ts';

export interface SliceOptions {
  machine: MachineClock;
  /** Ends the work at the next slice, by throwing. */
  signal?: AbortSignal | undefined;
}

/** What the steps hand out, a list for each slice; the lists are empty where the steps hand out nothing. */
export async function* inSlices<Item>(
  steps: Iterable<Item | undefined>,
  { machine, signal }: SliceOptions,
): AsyncGenerator<Item[]> {
  let items: Item[] = [];
  let untilMs = machine.monotonicMs() + SLICE_MS;
  for (const item of steps) {
    if (item !== undefined) items.push(item);
    if (machine.monotonicMs() < untilMs) continue;
    yield items;
    items = [];
    await new Promise<void>((goOn) => machine.after(0, goOn));
    signal?.throwIfAborted();
    untilMs = machine.monotonicMs() + SLICE_MS;
  }
  yield items;
}
