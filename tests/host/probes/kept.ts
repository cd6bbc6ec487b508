// Probes as somebody set them up and checked them at Tarn Hollow (invented), for tests.
import type { KeptProbe, ProbeCheck } from '../../../src/protocol/probe-setup-messages.ts';

/** In boiling water, showing 0.4 °C too much. */
export const boilingCheck = (at: string): ProbeCheck => ({
  in: 'boiling',
  shown_c: 98.2,
  sigma_c: 0.08,
  true_c: 97.8,
  true_sigma_c: 0.06,
  at,
});

export function keptProbe(over: Partial<KeptProbe> = {}): KeptProbe {
  return {
    path: '/dev/invented-0',
    device: null,
    channel: 'T1',
    name: 'Long one',
    baud: 9600,
    checks: [],
    error: null,
    ...over,
  };
}
