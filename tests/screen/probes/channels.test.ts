// A channel that was just heard becomes a probe of the boil, once.
import { beforeEach, expect, test } from 'vitest';
import type { Now, ProbeView } from '../../../src/screen/client/types.ts';
import { channelsOf, freePortId, heardProbes, withChannel } from '../../../src/screen/probes/channels.ts';
import { kept, known } from '../../../src/screen/probes/kept.ts';

// Nothing was ever kept of these boards.
beforeEach(() => {
  kept.value = [];
  known.value = [];
});

const heard = (channel: string, celsius: number | null): ProbeView => ({
  id: `/dev/ttyUSB0 ${channel}`,
  port: '/dev/ttyUSB0',
  channel,
  pan: null,
  celsius,
  correctionC: null,
  ageSeconds: 1,
  periodSeconds: 1,
  state: 'ok',
});

test('a heard channel brings its port and its probe', () => {
  const [channel] = channelsOf([heard('T1', 20)], [], []);
  if (channel === undefined) throw new Error('no channel');
  const next = withChannel([], [], channel, {
    name: 'Tarn Works 0001',
    baud: 115_200,
    device: 'TH-0001',
    sensor: { kind: 'temperature', unit: 'F' },
  });
  expect(next).toEqual({
    ports: [{ id: 'Tarn Works 0001', path: '/dev/ttyUSB0', baud: 115_200, device: 'TH-0001' }],
    probes: [
      { id: 'Tarn Works 0001/T1', port: 'Tarn Works 0001', channel: 'T1', sensor: { kind: 'temperature', unit: 'F' } },
    ],
    probe: 'Tarn Works 0001/T1',
  });
});

test('a second channel of the same port shares it, and no channel is listed twice', () => {
  const ports = [{ id: 'A', path: '/dev/ttyUSB0' }];
  const probes = [{ id: 'A/T1', port: 'A', channel: 'T1' }];
  const channels = channelsOf([heard('T1', 20), heard('T2', 30)], probes, ports);
  expect(channels.map((each) => each.key)).toEqual(['A/T1', '/dev/ttyUSB0 T2']);
  const second = channels[1];
  if (second === undefined) throw new Error('no second channel');
  expect(withChannel(ports, probes, second, {})).toMatchObject({ ports, probe: 'A/T2' });
});

test('a port goes by its board’s name, and two never by the same', () => {
  const ids: string[] = [];
  for (let n = 0; n < 3; n += 1)
    ids.push(
      freePortId(
        ids.map((id) => ({ id })),
        'ttyUSB0',
      ),
    );
  expect(ids).toEqual(['ttyUSB0', 'ttyUSB0 2', 'ttyUSB0 3']);
  const [channel] = channelsOf([heard('T1', 20)], [], []);
  expect(withChannel([], [], channel!, {}).ports).toEqual([{ id: 'ttyUSB0', path: '/dev/ttyUSB0' }]);
});

test('the next boil is offered what listening hears, and nothing of a practice or an ended boil', () => {
  const practice = { ...heard('T1', 101), id: 'A/T1', port: 'A' };
  const of = (id: string, path: string) => ({ id, path, state: 'open' as const, why: null, lines: 1, unreadable: 0 });
  expect(heardProbes({ ports: [of('A', '/dev/ttyUSB0')], probes: [practice] } as unknown as Now)).toEqual([]);
  const listening = { ports: [of('/dev/ttyUSB0', '/dev/ttyUSB0')], probes: [heard('T2', 20)] } as unknown as Now;
  expect(heardProbes(listening)).toEqual([heard('T2', 20)]);
});

test('a probe of the last boil shows what is heard on its port now', () => {
  const ports = [{ id: 'A', path: '/dev/ttyUSB0' }];
  const probes = [{ id: 'A/T1', port: 'A', channel: 'T1' }];
  expect(channelsOf([heard('T1', 21.5)], probes, ports)).toEqual([
    { key: 'A/T1', port: 'A', path: '/dev/ttyUSB0', channel: 'T1', celsius: 21.5 },
  ]);
});
