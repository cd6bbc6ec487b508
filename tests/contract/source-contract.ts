// What every source of a boil must keep to, whatever is behind it; run over the real thing of each kind.
import { afterEach, describe, expect, test } from 'vitest';
import type { Source, SourceItem, Timekeeper } from '../../src/ingest/source.ts';
import { listen, runningTimekeeper, type CountingTimekeeper, type Heard } from '../ingest/heard.ts';
import { until } from '../ingest/until.ts';

export interface SourceUnderTest {
  source: Source;
  /** Makes more entries come, or lets time bring them. */
  provoke(): Promise<void>;
  clearUp(): Promise<void>;
}

const timeOf = (item: SourceItem): number => (item.kind === 'entry' ? item.entry.t : item.t);

export function sourceContract(name: string, make: (timekeeper: Timekeeper) => Promise<SourceUnderTest>): void {
  describe(name, () => {
    let under: SourceUnderTest | null = null;

    afterEach(async () => {
      await under?.source.stop();
      await under?.clearUp();
      under = null;
    });

    async function started(): Promise<{
      heard: Heard;
      source: Source;
      provoke(): Promise<void>;
      timekeeper: CountingTimekeeper;
    }> {
      const timekeeper = runningTimekeeper();
      under = await make(timekeeper);
      const heard = listen();
      under.source.start(heard);
      return { heard, timekeeper, source: under.source, provoke: () => under!.provoke() };
    }

    const entriesCame = (heard: Heard, least: number) =>
      until(`${least} entries`, () => heard.entries().length >= least);

    test('the port opens, entries follow, and none comes before its time', async () => {
      const { heard, provoke, timekeeper } = await started();
      await entriesCame(heard, 1);
      expect(heard.entries()[0]).toMatchObject({ state: 'open' });
      await provoke();
      await entriesCame(heard, 3);
      const now = timekeeper.now();
      for (const entry of heard.entries()) {
        expect(Number.isInteger(entry.t)).toBe(true);
        expect(entry.t).toBeGreaterThanOrEqual(0);
        expect(entry.t).toBeLessThanOrEqual(now);
      }
    });

    test('nothing comes while start() runs, so that whoever starts it has got hold of it', async () => {
      under = await make(runningTimekeeper());
      const heard = listen();
      under.source.start(heard);
      expect(heard.items).toEqual([]);
    });

    test('items come in order of t, and after an idle only later ones', async () => {
      const { heard, provoke } = await started();
      await entriesCame(heard, 1);
      for (let round = 1; round <= 3; round++) {
        await provoke();
        await entriesCame(heard, 1 + 2 * round);
        const idles = () => heard.items.filter(({ kind }) => kind === 'idle').length;
        const before = idles();
        await until('an idle', () => idles() > before);
      }
      heard.items.slice(1).forEach((item, index) => {
        const earlier = heard.items[index]!;
        if (earlier.kind === 'idle') expect(timeOf(item)).toBeGreaterThan(earlier.t);
        else expect(timeOf(item)).toBeGreaterThanOrEqual(timeOf(earlier));
      });
    });

    test('time is said to pass a few times a second when nothing comes', async () => {
      const { heard, timekeeper } = await started();
      const idles = () => heard.items.flatMap((item) => (item.kind === 'idle' ? [item.t] : []));
      await until('four idles', () => idles().length >= 4);
      expect(timekeeper.now() - idles().at(-1)!).toBeLessThan(1000);
    });

    test('nothing comes after stop() has resolved, no timer is left, and stopping twice is safe', async () => {
      const { heard, source, provoke, timekeeper } = await started();
      await entriesCame(heard, 1);
      const provoked = provoke();
      await Promise.all([source.stop(), source.stop()]);
      const { length } = heard.items;
      await provoked;
      await source.stop();
      expect(timekeeper.waiting()).toBe(0);
      await provoke();
      expect(heard.items).toHaveLength(length);
    });

    test('a source stopped from within its own item falls silent at once', async () => {
      under = await make(runningTimekeeper());
      const { source, provoke } = under;
      let items = 0;
      let stopped: Promise<void> | null = null;
      source.start({
        item() {
          items += 1;
          stopped ??= source.stop();
        },
        notice: () => undefined,
      });
      await until('the first item', () => items > 0);
      await stopped;
      await provoke();
      expect(items).toBe(1);
    });

    test('a source that was never started can be stopped', async () => {
      under = await make(runningTimekeeper());
      await under.source.stop();
    });
  });
}
