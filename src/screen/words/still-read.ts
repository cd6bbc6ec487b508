// How many boils are still being read, and about how long that takes.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { say } from '../language/say.ts';

/** A day of boiling with four pots takes about so long, s; a slow laptop longer. */
const SECONDS_A_BOIL = 2;

/** "3 boils are still being read, about 6 s …" */
export const stillRead = (boils: number): string =>
  say('boils.still_read', { boils, time: lengthOfTime(boils * SECONDS_A_BOIL) });
