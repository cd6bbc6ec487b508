// A boil teaches the steam of its burner from what its filter believed when the pan last boiled, and the next one begins with it.
import { expect, test } from 'vitest';
import type { Header, Learnt, Mark } from '../../../src/core/boil/entries.ts';
import { learntOf } from '../../../src/core/boil/learnt.ts';
import { isBurnerName } from '../../../src/core/pan/burner.ts';
import { foldAll, inOrder, lines, mark, onePot, readingAt, steadyCelsius, type SteadyPan } from './tarn-hollow.ts';

const HOUR_MS = 3_600_000;
const END_MS = 1.5 * HOUR_MS;
/** 10.4 kg of sap of 20 °Bx; the fire takes 0.9 g of steam a second, by its nominal power one would expect 2.3. */
const LITRES = 9.6;
const SUGAR_KG = 2.08;
const STEAM_KG_PER_S = 0.0009;
const pan: SteadyPan = { fromBrix: 20, k: STEAM_KG_PER_S / SUGAR_KG, start: 0, sap: 'maple' };

const header = (): Header => {
  const plain = onePot();
  return { ...plain, pans: plain.pans!.map((one) => ({ ...one, heat: { kind: 'propane', power_w: 16_000 } })) };
};

const fill: Mark = { kind: 'top-up', pan: 'p1', litres: LITRES, brix: 20, celsius: 99 };
const pressure: Mark = { kind: 'pressure', hpa: 1013.25 };
const check: Mark = { kind: 'water-check', probe: 'A/1', celsius: 99.97 };

function boil(begun: Header, until: number, marks = [fill, pressure, check], one = pan) {
  const heard = lines(0, until, { T1: (t) => steadyCelsius(one, t) });
  return foldAll(
    begun,
    inOrder(
      marks.map((each) => mark(0, each)),
      heard,
    ),
    until,
  ).state;
}

const burnerOf = (learnt: Learnt | null) => {
  const place = (learnt?.names ?? []).findIndex(isBurnerName);
  return place < 0
    ? null
    : { kgPerS: Math.exp(learnt!.mean[place]!), share: Math.sqrt(learnt!.covariance[place]![place]!) };
};

test('what boiled away is taught to within what was typed, apart from probe and sap', () => {
  const learnt = learntOf(boil(header(), END_MS))!;
  const { kgPerS, share } = burnerOf(learnt)!;
  expect(Math.abs(Math.log(kgPerS / STEAM_KG_PER_S))).toBeLessThan(2 * share);
  expect(share).toBeLessThan(0.2);
  const place = learnt.names.findIndex(isBurnerName);
  for (const [other, covariance] of learnt.covariance[place]!.entries())
    if (other !== place) expect(covariance).toBe(0);
});

test('the next boil says from its first minutes what will boil away, and nearer to the truth', () => {
  const learnt = learntOf(boil(header(), END_MS))!;
  const at = 180_000;
  const off = (begun: Header): number =>
    Math.abs(Math.log(readingAt(boil(begun, at), 'p1', at).evaporation_l_per_h! / (3600 * STEAM_KG_PER_S)));
  expect(off({ ...header(), learnt })).toBeLessThan(0.5 * off(header()));
  const renamed = { ...header(), learnt, pans: header().pans!.map((one) => ({ ...one, name: 'Another pot' })) };
  expect(off(renamed)).toBeCloseTo(off(header()), 3);
});

test('a boil that began with it teaches its own steam again, not what it began with', () => {
  const taught = learntOf(boil(header(), END_MS))!;
  const place = taught.names.findIndex(isBurnerName);
  const name = taught.names[place]!;
  const begun = {
    ...header(),
    learnt: { names: [name], mean: [Math.log(2 * STEAM_KG_PER_S)], covariance: [[0.15 ** 2]] },
  };
  const { kgPerS, share } = burnerOf(learntOf(boil(begun, END_MS)))!;
  expect(Math.log(kgPerS / STEAM_KG_PER_S)).toBeLessThan(2 * share);
  expect(kgPerS).toBeLessThan(1.4 * STEAM_KG_PER_S);
});

test('nothing is taught of a pan whose amount nobody told, that never boiled, or too shortly to tell', () => {
  expect(burnerOf(learntOf(boil(header(), END_MS, [pressure, check])))).toBeNull();
  const cold = foldAll(header(), inOrder([mark(0, fill)], lines(0, 600_000, { T1: () => 40 })), 600_000).state;
  expect(burnerOf(learntOf(cold))).toBeNull();
  expect(burnerOf(learntOf(boil(header(), 120_000)))).toBeNull();
});

test('within its first hour a boil teaches its burner only where it came to a finish', () => {
  const at = HOUR_MS / 4;
  expect(burnerOf(learntOf(boil(header(), at)))).toBeNull();
  // As much sugar in less water: done within that time over the same fire.
  const thick: Mark = { ...fill, litres: 3.1, brix: 55 };
  const finished = boil(header(), at, [thick, pressure, check], { ...pan, fromBrix: 55 });
  expect(finished.history.raisings.map(({ alarm }) => alarm)).toContain('finish');
  expect(burnerOf(learntOf(finished))).not.toBeNull();
});
