// What the page holds to be listened to is what the host listens to: a boil takes its ports over, and gives none back.
import { afterEach, expect, test } from 'vitest';
import { live } from '../../../src/screen/client/store.ts';
import type { Now, PortView } from '../../../src/screen/client/types.ts';
import { heardPorts, listened, takeUpListening } from '../../../src/screen/probes/listening.ts';
import { moment } from '../moment.ts';

const port = (id: string, path: string): PortView => ({ id, path, state: 'open', why: null, lines: 9, unreadable: 0 });
const path = '/dev/invented-0';
const idle = (ports: PortView[]): Now => ({ ...moment, mode: 'idle', boil: null, header: null, ports });
const over: Now = { ...moment, ended: true, ports: [port('Tarn', path)] };

let stop = (): void => undefined;
afterEach(() => {
  stop();
  live.value = null;
  listened.value = [];
});

test('after a boil that began with a board that was listened to, nothing is held to be heard', () => {
  live.value = idle([port(path, path)]);
  stop = takeUpListening();
  expect(listened.value).toEqual([{ path }]);
  live.value = { ...moment, ended: false, ports: [port('Tarn', path)] };
  expect(listened.value).toEqual([]);
  live.value = over;
  expect(listened.value).toEqual([]);
  expect(heardPorts(over)).toEqual([]);
});

test('a page that is loaded after a boil holds none of its ports to be listened to', () => {
  live.value = over;
  stop = takeUpListening();
  expect(listened.value).toEqual([]);
  listened.value = [{ path, baud: 'find' }];
  live.value = { ...over, ports: [port(path, path)] };
  expect(listened.value).toEqual([{ path, baud: 'find' }]);
});
