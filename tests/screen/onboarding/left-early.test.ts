// What the host still answers after setting up was left brings nothing of it back.
import { expect, test } from 'vitest';
import { connect } from '../../../src/screen/client/store.ts';
import type { LinkEvent } from '../../../src/screen/client/link.ts';
import { change, confirmFormat, draft, forgetDraft } from '../../../src/screen/onboarding/setup-draft.ts';

test('left while the host is told how the lines are read, it begins anew with the board', async () => {
  const held: (() => void)[] = [];
  let hear: (event: LinkEvent) => void = () => undefined;
  connect({
    send: ({ ref }) =>
      held.push(() => hear({ kind: 'message', message: { kind: 'answered', ref, ok: true, data: { probes: [] } } })) >
      0,
    listen: (to) => {
      hear = to;
      return () => undefined;
    },
    hand: () => Promise.reject(new Error('nothing is handed over here')),
  });
  change({ path: '/dev/tarn-hollow', step: 'lines' });
  let isDone = false;
  const confirming = confirmFormat({ kind: 'pairs' }, null, []).then(() => (isDone = true));
  void forgetDraft(false);
  while (!isDone) {
    for (const answer of held.splice(0)) answer();
    await Promise.resolve();
  }
  await confirming;
  expect(draft.value).toMatchObject({ step: 'board', path: null, names: {} });
});
