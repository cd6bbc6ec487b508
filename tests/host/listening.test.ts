// Listening to a port that is not there says so, with the cause and the cure, for as long as it lasts.
import { expect, test } from 'vitest';
import { Listening } from '../../src/host/listening.ts';
import { HandClock } from './hand-clock.ts';

test('a path that does not exist is lost, and the sentence names it once', async () => {
  const path = '/dev/tarn-hollow-no-such-board';
  let heard: () => void = () => undefined;
  const changed = new Promise<void>((resolve) => (heard = resolve));
  const listening = new Listening([{ path }], new HandClock(), () => heard());
  expect(listening.view().ports).toMatchObject([{ id: path, state: 'waiting', why: null }]);
  await changed;
  const [port] = listening.view().ports;
  expect(port).toMatchObject({ id: path, path, state: 'lost' });
  expect(port?.why).toMatch(new RegExp(`^Port ${path} is not there: plug the board in`));
  await listening.close();
});
