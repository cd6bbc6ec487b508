// Every command gets its own answer, or a sentence why there is none.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { requests } from '../../../src/screen/client/requests.ts';
import type { Command } from '../../../src/screen/client/types.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function pretendHost() {
  const sent: Command[] = [];
  return { sent, asking: requests((command) => sent.push(command) > 0, 1000) };
}

test('answers find their askers in any order', async () => {
  const { sent, asking } = pretendHost();
  const first = asking.ask({ boils: true });
  const second = asking.ask({ ports: true });
  asking.answered({ kind: 'answered', ref: sent[1]?.ref ?? null, ok: true, data: 'ports' });
  asking.answered({ kind: 'answered', ref: sent[0]?.ref ?? null, ok: true, data: 'boils' });
  expect(await Promise.all([first, second])).toEqual(['boils', 'ports']);
});

test('a refusal comes with its reason, once', async () => {
  const { sent, asking } = pretendHost();
  const asked = asking.ask({ end: true });
  const refusal = { kind: 'answered', ref: sent[0]?.ref ?? null, ok: false, why: 'No boil is running.' } as const;
  asking.answered(refusal);
  asking.answered({ ...refusal, why: 'again' });
  await expect(asked).rejects.toThrow('No boil is running.');
});

test('silence ends after a while, a lost link at once', async () => {
  const { asking } = pretendHost();
  const asked = expect(asking.ask({ end: true })).rejects.toThrow('No answer');
  vi.advanceTimersByTime(1000);
  await asked;
  await expect(requests(() => false).ask({ end: true })).rejects.toThrow('Not sent');
});
