// A channel that was just heard becomes a probe of the boil, once.
import { expect, test } from 'vitest';
import type { ProbeView } from '../../../src/screen/client/types.ts';
import { channelsOf, freePortId, withChannel } from '../../../src/screen/probes/channels.ts';

const heard = (channel: string, celsius: number | null): ProbeView => ({
  id: `/dev/ttyUSB0 ${channel}`,
  port: '/dev/ttyUSB0',
  channel,
  pan: null,
  celsius,
  ageSeconds: 1,
  periodSeconds: 1,
  state: 'ok',
});

test('a heard channel brings its port and its probe', () => {
  const [channel] = channelsOf([heard('T1', 20)], [], []);
  if (channel === undefined) throw new Error('no channel');
  const next = withChannel([], [], channel, 115_200);
  expect(next).toEqual({
    ports: [{ id: 'A', path: '/dev/ttyUSB0', baud: 115_200 }],
    probes: [{ id: 'A/T1', port: 'A', channel: 'T1' }],
    probe: 'A/T1',
  });
});

test('a second channel of the same port shares it, and no channel is listed twice', () => {
  const ports = [{ id: 'A', path: '/dev/ttyUSB0' }];
  const probes = [{ id: 'A/T1', port: 'A', channel: 'T1' }];
  const channels = channelsOf([heard('T1', 20), heard('T2', 30)], probes, ports);
  expect(channels.map((each) => each.key)).toEqual(['A/T1', '/dev/ttyUSB0 T2']);
  const second = channels[1];
  if (second === undefined) throw new Error('no second channel');
  expect(withChannel(ports, probes, second, undefined)).toMatchObject({ ports, probe: 'A/T2' });
});

test('ids of ports never meet', () => {
  const ports: { id: string }[] = [];
  for (let i = 0; i < 60; i += 1) ports.push({ id: freePortId(ports) });
  expect(new Set(ports.map((port) => port.id)).size).toBe(60);
});
