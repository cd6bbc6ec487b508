// A port that is listened to never looks good while nothing is heard of it.
import { expect, test } from 'vitest';
import type { PortView, ProbeView } from '../../../src/screen/client/types.ts';
import { portAt, portNews } from '../../../src/screen/words/port-words.ts';

const port = (change: Partial<PortView>): PortView => ({
  id: '/dev/ttyUSB0',
  path: '/dev/ttyUSB0',
  state: 'open',
  why: null,
  lines: 0,
  unreadable: 0,
  ...change,
});
const probe = (channel: string, on = '/dev/ttyUSB0'): ProbeView => ({
  id: `${on} ${channel}`,
  port: on,
  channel,
  pan: null,
  celsius: 20,
  correctionC: null,
  ageSeconds: 1,
  periodSeconds: 1,
  state: 'ok',
});

test('a port that is not there says why, and stays so', () => {
  const why = 'Port /dev/ttyX (/dev/ttyX) is not there: plug the board in.';
  expect(portNews(port({ state: 'lost', why }), [])).toEqual({ state: 'lost', sentence: why });
});

test('open and silent, open and unreadable, and hearing are three things', () => {
  expect(portNews(undefined, []).state).toBe('opening');
  expect(portNews(port({}), [probe('T1', '/dev/other')]).sentence).toBe('Open, nothing heard yet.');
  expect(portNews(port({ lines: 4 }), []).sentence).toContain('check the speed');
  expect(portNews(port({ lines: 4 }), [probe('T1'), probe('T2')]).sentence).toBe('Hearing T1, T2');
});

test('a port is found by its path', () => {
  const ports = [port({ id: 'A', path: '/dev/a' }), port({ id: 'B', path: '/dev/b' })];
  expect(portAt(ports, '/dev/b')?.id).toBe('B');
});
