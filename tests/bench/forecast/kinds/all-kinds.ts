// Every kind of boil of the forecast bench, and the seeds: those to develop with, and those that only judge.
import { burningKinds } from './burning.ts';
import { fireKinds } from './fires.ts';
import { handKinds } from './hands.ts';
import type { Kind } from './kind.ts';
import { manyPanKinds } from './many-pans.ts';
import { plainKinds } from './plain.ts';

export const allKinds: readonly Kind[] = [...plainKinds, ...fireKinds, ...handKinds, ...burningKinds, ...manyPanKinds];

export const developmentSeeds: readonly number[] = [1, 2, 3];
/** Never looked at one by one while the pan model is worked on. */
export const judgingSeeds: readonly number[] = [101, 102, 103, 104, 105];
