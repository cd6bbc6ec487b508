// An ear for tests: what a page really sends to the loudspeaker, whatever made it.
/// <reference lib="dom" />
import type { Page } from 'playwright';
import { expect } from 'vitest';

declare global {
  interface Window {
    /** The loudest sample of the last 43 ms of what goes to the loudspeaker. */
    loudness?: () => number;
  }
}

/** To be called before the page is opened. */
export async function listenTo(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode, ...more: number[]) => AudioNode;
    const ears = new Map<AudioContext, AnalyserNode>();
    AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode, ...more: number[]): AudioNode {
      if (to instanceof AudioDestinationNode && this.context instanceof AudioContext) {
        const ear = ears.get(this.context) ?? this.context.createAnalyser();
        ears.set(this.context, ear);
        connect.call(this, ear);
      }
      return connect.call(this, to, ...more);
    } as typeof AudioNode.prototype.connect;
    window.loudness = () => {
      let most = 0;
      for (const ear of ears.values()) {
        const samples = new Float32Array(ear.fftSize);
        ear.getFloatTimeDomainData(samples);
        for (const sample of samples) most = Math.max(most, Math.abs(sample));
      }
      return most;
    };
  });
}

const loudnessOf = (page: Page): Promise<number> => page.evaluate(() => window.loudness?.() ?? 0);

/** Waits until something is heard; fails when nothing is for so long. */
export async function untilHeard(page: Page, withinMs: number): Promise<void> {
  await expect.poll(() => loudnessOf(page), { timeout: withinMs, interval: 20 }).toBeGreaterThan(0.05);
}

/** The loudest of what is heard while a condition is waited for. */
export async function loudestUntil(page: Page, isSo: () => boolean): Promise<number> {
  let most = 0;
  await expect
    .poll(
      async () => {
        most = Math.max(most, await loudnessOf(page));
        return isSo();
      },
      { timeout: 30_000, interval: 20 },
    )
    .toBe(true);
  return most;
}
