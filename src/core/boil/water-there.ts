// What water boils at in a place of which the height, and perhaps a pressure, is told, before any boil there.
import type { Header, Mark } from './entries.ts';
import { pressureEvidence, priorsOf, waterFrom } from './water.ts';

export interface ToldPlace {
  altitude_m?: number | undefined;
  pressure?: Omit<Mark & { kind: 'pressure' }, 'kind'> | undefined;
}

/** °C and its standard uncertainty; null where neither height nor pressure says it (DEVELOPERS 1.1). */
export function waterThere({ altitude_m, pressure }: ToldPlace): { celsius: number; sigmaC: number } | null {
  const site = altitude_m === undefined ? {} : { site: { altitude_m } };
  const header: Header = { recording: 'panwarden', version: 1, started: '', ...site };
  const seen =
    pressure === undefined ? null : pressureEvidence({ kind: 'pressure', ...pressure }, 0, altitude_m ?? null);
  const { celsius, sigmaC } = waterFrom(seen === null ? [] : [seen], priorsOf(header), 0).water;
  return celsius === null ? null : { celsius, sigmaC };
}
