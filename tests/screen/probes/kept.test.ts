// A probe is called as somebody named it, and shows one number wherever two are held side by side.
import { afterEach, expect, test } from 'vitest';
import type { KeptProbe } from '../../../src/screen/client/types.ts';
import { waterCheck } from '../../../src/screen/marks/measure-forms.ts';
import { channelsOf } from '../../../src/screen/probes/channels.ts';
import { calledById, kept, known, putRight } from '../../../src/screen/probes/kept.ts';
import { learntOf } from '../../../src/screen/words/learnt-words.ts';
import { probeName } from '../../../src/screen/words/pan-words.ts';
import { offsetWords } from '../../../src/screen/words/tune-words.ts';
import { american, metric, moment } from '../moment.ts';

const path = '/dev/invented-0';
const one: KeptProbe = { path, device: null, channel: 'T2', name: 'Soup pot', baud: 9600, checks: [], error: null };
const header = {
  ...{ recording: 'panwarden' as const, version: 1 as const, started: '2027-04-18T09:00:00-07:00' },
  ports: [{ id: 'Tarn', path }],
  probes: [
    { id: 'Tarn/T1', port: 'Tarn', channel: 'T1' },
    { id: 'Tarn/T2', port: 'Tarn', channel: 'T2' },
  ],
};
const heard = (channel: string, correctionC: number | null) => ({
  ...{ id: `Tarn/${channel}`, port: 'Tarn', channel, pan: null, celsius: 98.5, correctionC },
  ...{ ageSeconds: 1, periodSeconds: 1, state: 'ok' as const },
});

afterEach(() => {
  kept.value = [];
  known.value = [];
});

test('the name that was given stands in forms, marks, what was learnt and what is tried', () => {
  expect(probeName(header, 'Tarn/T2')).toBe('T2 on board Tarn');
  kept.value = [one];
  known.value = [{ id: 'Tarn/T2', path, device: null, channel: 'T2', tooHighC: 0.5 }];
  expect(probeName(header, 'Tarn/T2')).toBe('Soup pot (T2)');
  expect(probeName(header, 'Tarn/T1')).toBe('T1 on board Tarn');
  expect(calledById('Tarn/T3')).toBeNull();
  const boil = { boil: 'b', title: '', started: header.started, value: 0.4, sigma: 0.1 };
  expect(learntOf({ ...boil, name: 'probe Tarn/T2', about: 'probe', of: 'Tarn/T2' }, metric)).toBe(
    'probe Soup pot (T2)',
  );
  const untold = { too_high_c: null, low_c: null, high_c: null, offset_c: null };
  const sentence = 'Tarn/T2: its error cannot be told from one boil.';
  expect(offsetWords({ probe: 'Tarn/T2', boils: 1, ...untold, sentence } as never, metric)).toMatch(
    /^Soup pot \(T2\): /,
  );
});

test('a number is put right by the boil that the probe is in, else by what the next one would know', () => {
  const at = { path, channel: 'T2' };
  expect(putRight(heard('T2', null), at)).toBe(98.5);
  known.value = [{ id: 'Tarn/T2', path, device: null, channel: 'T2', tooHighC: 0.5 }];
  expect(putRight(heard('T2', null), at)).toBe(98);
  expect(putRight(heard('T2', -0.25), at)).toBe(98.25);
  expect(putRight({ celsius: null, correctionC: null }, at)).toBeNull();
  const channels = channelsOf([heard('T2', -0.25)], header.probes, header.ports);
  expect(channels.map(({ channel, celsius }) => [channel, celsius])).toEqual([
    ['T1', null],
    ['T2', 98.25],
  ]);
});

test('a check in boiling water notes the bare number and says so beside the one that the pan shows', () => {
  kept.value = [one];
  const now = { ...moment, probes: [heard('T2', -0.5), heard('T1', 0)] };
  const quicks = waterCheck.quicks({ now, header, pan: 'p1', settings: american });
  expect(quicks.map(({ label }) => label.replaceAll('\u00a0', ' '))).toEqual([
    'Soup pot (T2): 209.3 °F as it comes (put right: 208.4 °F)',
    'T1 on board Tarn: 209.3 °F',
  ]);
  expect(quicks[0]?.mark).toMatchObject({ kind: 'water-check', probe: 'Tarn/T2', celsius: 98.5 });
});
