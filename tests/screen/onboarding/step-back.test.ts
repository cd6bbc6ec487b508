// A step back from a board that is none: it is let go, and what was typed of it can be put right.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { LinkEvent } from '../../../src/screen/client/link.ts';
import { connect } from '../../../src/screen/client/store.ts';
import type { Command } from '../../../src/screen/client/types.ts';
import { change, chooseBoard, draft, stepBack } from '../../../src/screen/onboarding/setup-draft.ts';
import { listened } from '../../../src/screen/probes/listening.ts';

const empty = draft.value;
const sent: Command[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  let hear: (event: LinkEvent) => void = () => undefined;
  connect({
    send(command) {
      sent.push(command);
      const answered = { kind: 'answered', ref: command.ref, ok: true, data: null };
      queueMicrotask(() => hear({ kind: 'message', message: answered as never }));
      return true;
    },
    listen(to) {
      hear = to;
      return () => undefined;
    },
    hand: () => Promise.reject(new Error('nothing is handed over here')),
  });
});
afterEach(() => {
  vi.useRealTimers();
  change(empty);
  listened.value = [];
});

const told = (): unknown => sent.findLast((command) => 'listen' in command);

test('a mistyped place is let go with Back and stays in its field; a board that was heard before goes on being heard', async () => {
  change({ typed: '/dev/inventde-0' });
  await chooseBoard({ path: '/dev/inventde-0', identity: null, known: null });
  expect(told()).toMatchObject({ listen: [{ path: '/dev/inventde-0' }] });
  await stepBack();
  expect(told()).toMatchObject({ listen: [] });
  expect(draft.value).toMatchObject({ step: 'board', path: null, typed: '/dev/inventde-0' });

  listened.value = [{ path: '/dev/invented-0', baud: 9600 }];
  await chooseBoard({ path: '/dev/invented-0', identity: null, known: null });
  await stepBack();
  expect(told()).toMatchObject({ listen: [{ path: '/dev/invented-0', baud: 9600 }] });
});

test('a step back further on lets nothing go', async () => {
  await chooseBoard({ path: '/dev/invented-0', identity: null, known: null });
  change({ step: 'hand' });
  const before = sent.length;
  await stepBack();
  expect(draft.value).toMatchObject({ step: 'lines', path: '/dev/invented-0' });
  expect(sent).toHaveLength(before);
});
