// What is known of each probe before a boil: by what was learnt, else by its offset, else by its check alone.
import { expect, test } from 'vitest';
import { knownProbes } from '../../../src/host/probes/known-probes.ts';
import { keptProbe } from './kept.ts';

const setup = {
  ports: [{ id: 'Tarn', path: '/dev/invented-0' }],
  probes: [
    { id: 'Tarn/T1', port: 'Tarn', channel: 'T1' },
    { id: 'Tarn/T2', port: 'Tarn', channel: 'T2', offset_c: -0.5 },
    { id: 'Tarn/T3', port: 'Tarn', channel: 'T3' },
  ],
};
const learnt = { names: ['probe Tarn/T1'], mean: [0.4], covariance: [[0.01]] };
const error = { tooHighC: 0.9, sigmaC: 0.1 };

test('a probe of the next boil is as that would begin with it, and one that was only set up is as its check says', () => {
  const kept = [keptProbe({ error }), keptProbe({ path: '/dev/invented-1', error }), keptProbe({ channel: 'T4' })];
  const at = { path: '/dev/invented-0', device: null };
  expect(knownProbes({ setup, learnt }, kept)).toEqual([
    { ...at, id: 'Tarn/T1', channel: 'T1', tooHighC: 0.4 },
    { ...at, id: 'Tarn/T2', channel: 'T2', tooHighC: 0.5 },
    { ...at, id: 'Tarn/T3', channel: 'T3', tooHighC: null },
    { ...at, id: null, path: '/dev/invented-1', channel: 'T1', tooHighC: 0.9 },
    { ...at, id: null, channel: 'T4', tooHighC: null },
  ]);
  expect(knownProbes(null, [keptProbe({ error })])).toMatchObject([{ id: null, tooHighC: 0.9 }]);
});
