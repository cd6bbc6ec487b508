// Waiting for a condition in tests that touch real ports, where the kernel decides when things happen.
import { setTimeout as sleep } from 'node:timers/promises';

/** Resolves as soon as the condition holds; fails with what was waited for, after 20 s unless said. */
export async function until(what: string, holds: () => boolean, withinMs = 20_000): Promise<void> {
  const start = performance.now();
  while (!holds()) {
    if (performance.now() - start > withinMs) throw new Error(`waited ${withinMs} ms in vain for ${what}`);
    await sleep(5);
  }
}
