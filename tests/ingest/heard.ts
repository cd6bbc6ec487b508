// What a source said, gathered for tests.
import type { Entry } from '../../src/core/boil/entries.ts';
import type { SourceItem, SourceListener, SourceNotice, Timekeeper } from '../../src/ingest/source.ts';

export interface Heard extends SourceListener {
  items: SourceItem[];
  notices: SourceNotice[];
  entries(): Entry[];
  lines(): string[];
  /** `open` and `lost`, in order. */
  states(): string[];
}

export function listen(): Heard {
  const items: SourceItem[] = [];
  const notices: SourceNotice[] = [];
  const entries = (): Entry[] => items.flatMap((item) => (item.kind === 'entry' ? [item.entry] : []));
  return {
    items,
    notices,
    entries,
    item: (item) => void items.push(item),
    notice: (notice) => void notices.push(notice),
    lines: () => entries().flatMap((entry) => ('line' in entry ? [entry.line] : [])),
    states: () => entries().flatMap((entry) => ('state' in entry ? [entry.state] : [])),
  };
}

export interface CountingTimekeeper extends Timekeeper {
  /** How many calls are still to come. */
  waiting(): number;
}

/** Boil time that runs with real time; for tests over real ports. */
export function runningTimekeeper(): CountingTimekeeper {
  const start = performance.now();
  const timers = new Set<NodeJS.Timeout>();
  return {
    now: () => Math.floor(performance.now() - start),
    waiting: () => timers.size,
    after(milliseconds, call) {
      const timer = setTimeout(() => {
        timers.delete(timer);
        call();
      }, milliseconds);
      timers.add(timer);
      return () => {
        timers.delete(timer);
        clearTimeout(timer);
      };
    },
  };
}

/** Time that stands still until the test moves it on; timers fall due in their order. */
export interface HandTimekeeper extends CountingTimekeeper {
  pass(milliseconds: number): Promise<void>;
}

export function handTimekeeper(): HandTimekeeper {
  let now = 0;
  let timers: { at: number; call: () => void }[] = [];
  return {
    now: () => now,
    waiting: () => timers.length,
    after(milliseconds, call) {
      const timer = { at: now + milliseconds, call };
      timers.push(timer);
      return () => void (timers = timers.filter((other) => other !== timer));
    },
    async pass(milliseconds) {
      const end = now + milliseconds;
      for (;;) {
        await settle();
        const next = timers.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at)[0];
        if (next === undefined) break;
        timers = timers.filter((timer) => timer !== next);
        now = next.at;
        next.call();
      }
      now = end;
    },
  };
}

/** Lets every promise that can go on go on. */
const settle = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
