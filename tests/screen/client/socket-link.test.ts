// A page that is let in no more stays so while its link tries again, until it is let in.
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { LinkEvent } from '../../../src/screen/client/link.ts';
import { socketLink } from '../../../src/screen/client/socket-link.ts';

/** What stands in for the browser's own socket; a test opens and closes it. */
class HandSocket {
  static opened: HandSocket[] = [];
  onopen = (): void => {};
  onclose = (): void => {};
  constructor() {
    HandSocket.opened.push(this);
  }
  close(): void {}
}

const session = { status: 401 };

beforeEach(() => {
  vi.useFakeTimers();
  HandSocket.opened = [];
  vi.stubGlobal('WebSocket', HandSocket);
  vi.stubGlobal('location', { href: 'http://tarn-hollow.invalid/' });
  vi.stubGlobal('fetch', async () => session);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test('put out, it is never told that it connects, but only that it is let in again', async () => {
  const states: string[] = [];
  const hear = (event: LinkEvent): void => void (event.kind === 'state' && states.push(event.now.state));
  const leave = socketLink({ enter: async () => null, shutOut: () => 'Scan a new code.' }).listen(hear);
  await vi.advanceTimersByTimeAsync(0);
  HandSocket.opened.at(-1)!.onopen();
  expect(states).toEqual(['connecting', 'open']);
  for (let tries = 0; tries < 3; tries += 1) {
    HandSocket.opened.at(-1)!.onclose();
    await vi.advanceTimersByTimeAsync(4000);
  }
  expect(states.slice(2)).toEqual(['lost', 'refused', 'refused', 'refused']);
  expect(HandSocket.opened).toHaveLength(4);
  session.status = 204;
  HandSocket.opened.at(-1)!.onopen();
  HandSocket.opened.at(-1)!.onclose();
  await vi.advanceTimersByTimeAsync(0);
  expect(states.slice(6)).toEqual(['open', 'lost']);
  leave();
});
