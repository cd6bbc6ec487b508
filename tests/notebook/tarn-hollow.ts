// The header of an invented boil, for tests that need one.
import type { Header } from '../../src/core/boil/entries.ts';

export const tarnHollow: Header = {
  recording: 'panwarden',
  version: 1,
  name: "Sunday's run",
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow (invented)', altitude_m: 640 },
  pans: [{ id: 'p1' }],
};
