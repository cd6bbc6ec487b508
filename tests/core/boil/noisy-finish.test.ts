// A pan that stands at its finish under a noisy thermometer: no climb is read out of the noise.
import { expect, test } from 'vitest';
import {
  driftingNoise,
  nextNormal,
  nextUniform,
  type RandomStream,
  randomStream,
} from '../../../src/core/simulation/random.ts';
import type { Sap } from '../../../src/core/boil/entries.ts';
import { boilingAt, foldAll, lines, tarnHollow } from './tarn-hollow.ts';

const STANDS_MS = 1_800_000;

/** What a thermometer shows too much from second to second, °C. */
const noises: Record<string, (stream: RandomStream) => () => number> = {
  'anywhere within 0.1 °C': (stream) => () => 0.2 * nextUniform(stream) - 0.1,
  'of 0.1 °C': (stream) => () => 0.1 * nextNormal(stream),
  'of 0.1 °C that wanders within half a minute': (stream) => wandering(stream, 30),
  'of 0.1 °C that wanders within minutes': (stream) => wandering(stream, 150),
};

function wandering(stream: RandomStream, memorySeconds: number): () => number {
  let now = 0;
  return () => (now = driftingNoise(now, { seconds: 1, memorySeconds, spread: 0.1 }, stream));
}

/** When and what is called of a pan that stands so for half an hour. */
function called(sap: Sap, { noise, seed, brix, stepC, leadS }: Stands): { alarm: string; t: number }[] {
  const header = tarnHollow({
    settings: { scorch_lead_s: leadS },
    probes: [{ id: 'A/1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/1', sap, vessel: { shape: 'round', diameter_mm: 300 } }],
  });
  const next = noises[noise]!(randomStream(seed, noise));
  const shown = (): number => Math.round((boilingAt(brix, sap) + next()) / stepC) * stepC;
  const { transitions } = foldAll(header, lines(0, STANDS_MS, { T1: shown }), STANDS_MS);
  return transitions.filter(({ event }) => event === 'raised');
}

interface Stands {
  noise: string;
  seed: number;
  brix: number;
  /** What its last digit counts in, °C. */
  stepC: number;
  leadS: number;
}

const each = Object.keys(noises).flatMap((noise) => (['maple', 'birch'] as const).map((sap) => [noise, sap] as const));

test.each(each)('noise %s at the finish of %s calls no pan for burning in half an hour', (noise, sap) => {
  for (const stepC of [0.01, 0.25]) {
    const raised = called(sap, { noise, seed: 2, brix: 66.9, stepC, leadS: 240 }).map(({ alarm }) => alarm);
    expect(raised).toContain('finish');
    expect(raised).not.toContain('scorch-risk');
  }
});

// The forecast begins with a usual fire, and calls so early by that until it has seen for some minutes that the pan stands.
test.each(each)(
  'noise %s in %s 3 °Bx past its finish makes no climb, even for who wants to be called a quarter of an hour before',
  (noise, sap) => {
    const raised = called(sap, { noise, seed: 1, brix: 70, stepC: 0.01, leadS: 900 });
    expect(raised.filter(({ alarm, t }) => alarm === 'scorch-risk' && t > 300_000)).toEqual([]);
  },
);
