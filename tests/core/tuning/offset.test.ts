// What many boils tell of one probe: weighed by how sure each is, less sure where they part, and not told of too few.
import { expect, test } from 'vitest';
import { offsetFrom, type ProbeError } from '../../../src/core/tuning/offset.ts';

const PROBE = { id: 'A/1', port: 'A', channel: 'T1', offset_c: -0.2 };
const error = (errorC: number, sigmaC = 0.1): ProbeError => ({
  ...{ probe: 'A/1', hardware: '', offsetC: -0.2 },
  errorC,
  sigmaC,
});

test('boils that agree give their mean, surer than each of them', () => {
  const found = offsetFrom(PROBE, [error(0.7), error(0.8), error(0.9)]);
  expect(found.offset_c).toBeCloseTo(-0.8, 9);
  // By hand: each is 0.1 and drifts by 0.1, so √0.02; of three √(0.02 / 3) = 0.0816.
  expect(found.sigma_c).toBeCloseTo(0.0816, 3);
  expect(found.sentence).toBe('Add −0.80 °C (± 0.08) to this probe rather than −0.20 °C: 3 boils say so.');
});

test('a boil that hardly knows counts little', () => {
  expect(offsetFrom(PROBE, [error(0.8), error(0.8), error(5, 3)]).offset_c).toBeCloseTo(-0.8, 1);
});

test('two are too few; boils that part too far say nothing but that', () => {
  expect(offsetFrom(PROBE, [error(0.8), error(0.8)])).toMatchObject({
    ...{ offset_c: null, sigma_c: null, truths: 2 },
    sentence: expect.stringMatching(/^Only 2 boils tell of this probe, and 3 are needed/),
  });
  expect(offsetFrom(PROBE, [error(-1), error(0.8), error(2)])).toMatchObject({
    offset_c: null,
    sentence: expect.stringMatching(/do not agree/),
  });
});

test('what is added already and fits is left as it is', () => {
  expect(offsetFrom(PROBE, [error(0.2), error(0.25), error(0.15)]).sentence).toMatch(
    /^What is added now, −0\.20 °C, fits/,
  );
});
