// Settings that are changed one after the other: the second builds on the first, however late the host's word comes.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Link, LinkEvent } from '../../../src/screen/client/link.ts';
import { changeSettings, connect, said, settings } from '../../../src/screen/client/store.ts';
import type { Command, Settings } from '../../../src/screen/client/types.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function pretendHost() {
  const sent: Command[] = [];
  let hear: (event: LinkEvent) => void = () => undefined;
  const link: Link = {
    send: (command) => sent.push(command) > 0,
    listen: (to) => {
      hear = to;
      return () => undefined;
    },
    hand: () => Promise.reject(new Error('nothing is handed over here')),
  };
  connect(link);
  return {
    says: (told: Settings) => hear({ kind: 'message', message: { kind: 'settings', settings: told } }),
    answers: async (place: number, ok: boolean) => {
      const ref = sent[place]!.ref;
      const answered = ok ? { ref, ok, data: null } : { ref, ok, why: 'No.' };
      hear({ kind: 'message', message: { kind: 'answered', ...answered } as never });
      await vi.advanceTimersByTimeAsync(0);
    },
  };
}

test('the host’s word on the first does not undo the second; a refused one is as it was', async () => {
  const host = pretendHost();
  const before = settings.value;
  changeSettings({ near_finish_lead_s: 900 });
  changeSettings({ scorch_lead_s: 360 });
  host.says({ ...before, near_finish_lead_s: 900 });
  await host.answers(0, true);
  expect([settings.value.near_finish_lead_s, settings.value.scorch_lead_s]).toEqual([900, 360]);
  host.says({ ...before, near_finish_lead_s: 900, scorch_lead_s: 360 });
  await host.answers(1, true);
  changeSettings({ scorch_lead_s: 600 });
  expect(settings.value.scorch_lead_s).toBe(600);
  await host.answers(2, false);
  expect([settings.value.scorch_lead_s, said.value?.good]).toEqual([360, false]);
});

test('what somebody kept is said to be kept once the host has taken it, and not before', async () => {
  const host = pretendHost();
  said.value = null;
  changeSettings({ backup_folder: 'copies' }, 'Kept.');
  expect(said.value).toBeNull();
  await host.answers(0, true);
  expect(said.value).toMatchObject({ good: true, sentence: 'Kept.' });
});
