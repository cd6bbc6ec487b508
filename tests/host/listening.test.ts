// Listening to a port that is not there says so, with the cause and the cure, for as long as it lasts.
import { expect, test } from 'vitest';
import { Listening } from '../../src/host/listening.ts';
import { PortDesk } from '../../src/host/port-desk.ts';
import type { Notebook } from '../../src/notebook/contract.ts';
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

test('of two wishes at once the later one stands, and no port of the earlier one stays open', async () => {
  const open: string[] = [];
  const desk = new PortDesk({
    notebook: {} as Notebook,
    machine: new HandClock(),
    running: () => null,
    changed: () => undefined,
    openPort: async (path) => {
      open.push(path);
      return { close: async () => void open.splice(open.indexOf(path), 1) };
    },
  });
  const listen = (...paths: string[]) => desk.do({ ref: 'a', listen: paths.map((path) => ({ path })) });
  await listen('x');
  await Promise.all([listen('y'), listen('z')]);
  expect(desk.listening?.view().ports.map(({ id }) => id)).toEqual(['z']);
  await listen();
  expect(open).toEqual([]);
});
