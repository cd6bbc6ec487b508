// Puts the figures of a boil together: from what its entries tell, what the person wrote of it, and the sap that it took.
import { massOfLitres } from '../pan/filter/liquid.ts';
import { yieldOf } from '../physics/yield.ts';
import { type BoilFacts, LEAST_BOILING_S } from './boil-facts.ts';
import type { Balance, BoilFigures } from './figures.ts';
import { type FinishedSap, finishedSap } from './finished-sap.ts';
import { fuelUsed, type FuelTaken } from './fuel-used.ts';
import { figureOf, follows, known, type Known, quotient } from './known.ts';
import { leastSugarKg } from './least-sugar.ts';
import type { BoilPage, Collection, RaisingName } from './records.ts';
import { type SapIn, sapIn, waterKgOf } from './sap-in.ts';
import { leftThin, type SyrupOut, syrupOut, type Thin } from './syrup-out.ts';

/** A boil is seen to begin and end to about half a minute, h. */
const LOOKS_SIGMA_H = 0.01;
/** Of a boil of which more was not seen, s, nobody knows how long it boiled. */
const UNSEEN_AT_MOST_S = 60;

/** `collections` are those that were given to this boil. What is not known is null. */
export function boilFigures(facts: BoilFacts, page: BoilPage, collections: readonly Collection[]): BoilFigures {
  const sap = sapIn(facts, page, collections);
  const syrup = withinSap(syrupOut(facts, page), sap);
  const fuel = fuelUsed(facts, page);
  const hours = known(facts.seconds / 3600, 0, 'seen');
  const isSeenWhole = facts.boilingSeconds !== null && facts.unseenSeconds < UNSEEN_AT_MOST_S;
  const boilingHours = isSeenWhole ? known(facts.boilingSeconds! / 3600, LOOKS_SIGMA_H, 'seen') : null;
  const thin = stayedThin(facts, sap, syrup);
  const waterOff = waterOffLitres(thin, sap, syrup);
  return withinBalance({
    sap_litres: figureOf(sap.litres),
    sap_brix: figureOf(sap.brix),
    sap_sugar_kg: figureOf(sap.sugarKg),
    syrup_litres: figureOf(syrup.litres),
    syrup_kg: figureOf(syrup.kg),
    // What was only aimed at is no figure of a syrup that nobody has.
    syrup_brix: figureOf(syrup.litres === null ? null : syrup.brix),
    syrup_sugar_kg: figureOf(syrup.sugarKg),
    ...(balanceOfAllLeft(facts, page, sap, thin, syrup) ?? balanceFigures(thin, page, sap, syrup)),
    ...ratioFigures(finishedSap({ facts, page, collections, sap, thin, syrupSugarKg: syrup.sugarKg }), sap, syrup),
    ...(wasMostlyThick(facts) && NO_RATIO),
    water_off_litres: figureOf(waterOff),
    hours: figureOf(hours),
    boiling_hours: figureOf(boilingHours),
    water_off_l_per_h: figureOf(
      (facts.boilingSeconds ?? 0) < LEAST_BOILING_S ? null : quotient(waterOff, boilingHours),
    ),
    ...fuelFigures(fuel, syrup),
    ...costFigures(fuel, page),
    ...alarmFigures(facts, page),
  });
}

/** Where more sugar came out than went in, some sap was not noted, or it is another amount of syrup: what went into it nobody knows. */
const withinBalance = (figures: BoilFigures): BoilFigures =>
  balanceOf(figures) === 'too-much' ? { ...figures, ratio: null } : figures;

/**
 * What stayed thin: drawn off so, or still in the pans. Syrup that with all of it holds more sugar than went in was made of what was drawn
 * off, which was finished outside: then only what is in the pans stayed.
 */
function stayedThin(facts: BoilFacts, sap: SapIn, syrup: SyrupOut): Thin | null {
  const all = leftThin(facts);
  const over = follows([syrup.sugarKg, all?.sugarKg ?? null, sap.sugarKg], (a, b, c) => a! + b! - c!);
  return over !== null && over.value > 2 * over.sigma ? leftThin({ ...facts, taken: [] }) : all;
}

/** No pan holds more sugar than went in: where the pans show more, they show nothing of the syrup. */
function withinSap(syrup: SyrupOut, { sugarKg }: SapIn): SyrupOut {
  const most = sugarKg === null ? Infinity : sugarKg.value + 2 * sugarKg.sigma;
  if (syrup.litres?.from !== 'pans' || syrup.sugarKg === null || syrup.sugarKg.value <= most) return syrup;
  return { litres: null, kg: null, brix: syrup.brix, sugarKg: null };
}

type Part<Name extends keyof BoilFigures> = Pick<BoilFigures, Name>;

type Balances = Part<'left_sugar_kg' | 'lost_sugar_kg' | 'gap_sugar_kg'>;

/**
 * Where nothing was drawn off and no syrup came of it, by the person's word, what went in is in the pans still, however much water left them:
 * boiling takes no sugar away. Nothing is over to be held against it. null where that is not so, or the pans tell it.
 */
function balanceOfAllLeft(
  { taken, takenUntold }: BoilFacts,
  page: BoilPage,
  sap: SapIn,
  thin: Thin | null,
  syrup: SyrupOut,
): Balances | null {
  const isAllLeft = syrup.litres?.from === 'page' && syrup.litres.value === 0;
  if (thin !== null || !isAllLeft || taken.length > 0 || takenUntold.length > 0) return null;
  const lost = page.lost_kg === undefined ? null : known(page.lost_kg, 0, 'page');
  const left = follows([sap.sugarKg, lost ?? known(0, 0, 'worked-out')], (a, b) => Math.max(0, a! - b!));
  return { left_sugar_kg: figureOf(left), lost_sugar_kg: figureOf(lost), gap_sugar_kg: null };
}

function balanceFigures(
  thin: Thin | null,
  page: BoilPage,
  sap: SapIn,
  syrup: SyrupOut,
): Part<'left_sugar_kg' | 'lost_sugar_kg' | 'gap_sugar_kg'> {
  const left = thin?.sugarKg ?? null;
  const lost = page.lost_kg === undefined ? null : known(page.lost_kg, 0, 'page');
  const gone = lost ?? known(0, 0, 'worked-out');
  // What the pans show rests on the sap itself: it says nothing of whether the sugar adds up.
  const measured = syrup.litres?.from === 'pans' ? null : syrup.sugarKg;
  const gap = follows([sap.sugarKg, measured, left, gone], (a, b, c, d) => a! - b! - c! - d!);
  return { left_sugar_kg: figureOf(left), lost_sugar_kg: figureOf(lost), gap_sugar_kg: figureOf(gap, true) };
}

/** Whether the sugar adds up within what was measured. Where nobody can say what stayed in the pans, more in the syrup than went in is told all the same. */
export function balanceOf(figures: BoilFigures): Balance {
  const { gap_sugar_kg: gap, sap_sugar_kg: sap, syrup_litres: litres } = figures;
  if (gap === null) {
    const isOver = (leastSugarKg(figures) ?? -Infinity) > (sap?.high ?? Infinity) && litres?.from !== 'pans';
    return isOver ? 'too-much' : null;
  }
  if (gap.low === null || gap.high === null) return null;
  if (gap.low > 0) return 'missing';
  return gap.high < 0 ? 'too-much' : 'closes';
}

/** Of what was thick when it was poured in, a ratio to syrup tells nothing of sap. */
const NO_RATIO = { ratio: null, exact_ratio: null, ratio_by_86: null, ratio_by_revised_86: null };

/** Whether half of the sugar that went in had been boiled before, or more. */
function wasMostlyThick({ pours }: BoilFacts): boolean {
  const sugar = (some: BoilFacts['pours']): number =>
    some.reduce((sum, { litres, brix }) => sum + (massOfLitres(litres, brix ?? 0) * (brix ?? 0)) / 100, 0);
  const thick = sugar(pours.filter(({ boiledBefore }) => boiledBefore === true));
  return thick > 0 && 2 * thick >= sugar(pours);
}

type Ratios = 'expected_syrup_litres' | 'ratio' | 'exact_ratio' | 'ratio_by_86' | 'ratio_by_revised_86';

/** All are of the sap that became the syrup; how much syrup all of the sap makes is of all. */
function ratioFigures(finished: FinishedSap, sap: SapIn, syrup: SyrupOut): Part<Ratios> {
  const { brix } = finished;
  const made = (of: number, sapBrix: number, syrupBrix: number) => yieldOf(of, sapBrix, syrupBrix);
  const per = (of: number | null | undefined): number | null => (of === null || of === undefined ? null : 1 / of);
  return {
    expected_syrup_litres: figureOf(
      follows([sap.litres, sap.brix, syrup.brix], (a, b, c) => made(a!, b!, c!)?.litres ?? null),
    ),
    ratio: figureOf(quotient(finished.litres, syrup.litres)),
    exact_ratio: figureOf(follows([brix, syrup.brix], (b, c) => per(made(1, b!, c!)?.litres))),
    ratio_by_86: figureOf(follows([brix, atItsValue(syrup.brix)], (b, c) => per(made(1, b!, c!)?.ruleOf86Litres))),
    ratio_by_revised_86: figureOf(
      follows([brix, atItsValue(syrup.brix)], (b, c) => per(made(1, b!, c!)?.revisedRuleLitres)),
    ),
  };
}

/** The rules take no account of the syrup's own strength, beyond that it is usual. */
const atItsValue = (amount: Known | null): Known | null => (amount === null ? null : { ...amount, sigma: 0 });

/** All water that came in, less what went out in the syrup or stays in the pans. Litres at 20 °C. */
function waterOffLitres(thin: Thin | null, sap: SapIn, syrup: SyrupOut): Known | null {
  const waterIn = follows([sap.litres, sap.brix], (litres, brix) => waterKgOf(litres!, brix!));
  const waterOut = follows([syrup.kg, syrup.brix], (kg, brix) => kg! * (1 - brix! / 100));
  const left = thin?.waterKg ?? null;
  return follows([waterIn, waterOut, left], (a, b, c) => Math.max(0, a! - b! - c!) / massOfLitres(1, 0));
}

type Fuels = 'fuel_kg' | 'fuel_kwh' | 'fuel_cords' | 'fuel_mj' | 'fuel_kg_per_l' | 'fuel_mj_per_l' | 'fuel_price';

function fuelFigures(fuel: FuelTaken, syrup: SyrupOut): Part<Fuels> {
  return {
    fuel_kg: figureOf(fuel.kg),
    fuel_kwh: figureOf(fuel.kwh),
    fuel_cords: figureOf(fuel.cords),
    fuel_mj: figureOf(fuel.mj),
    fuel_kg_per_l: figureOf(fuel.isAllKg ? quotient(fuel.kg, syrup.litres) : null),
    fuel_mj_per_l: figureOf(quotient(fuel.mj, syrup.litres)),
    fuel_price: figureOf(fuel.price),
  };
}

/** Other costs that nobody wrote down are none. */
function costFigures({ price }: FuelTaken, page: BoilPage): Part<'cost' | 'jars' | 'cost_a_jar'> {
  const others = known(page.other_costs ?? 0, 0, 'page');
  const cost = follows([price, others], (fuel, other) => fuel! + other!);
  const count = page.jars?.reduce((sum, jars) => sum + jars.count, 0);
  const jars = count === undefined ? null : known(count, 0, 'page');
  return { cost: figureOf(cost), jars: figureOf(jars), cost_a_jar: figureOf(quotient(cost, jars)) };
}

/** Said during the boil or afterwards, each raising once. */
function alarmFigures(facts: BoilFacts, { no_use: after = [] }: BoilPage): Part<'alarms' | 'alarms_no_use'> {
  const more = after.filter((one) => !facts.noUse.some((other) => isSameRaising(one, other)));
  const count = (value: number): Known => known(value, 0, 'seen');
  return {
    alarms: figureOf(count(facts.raised)),
    alarms_no_use: figureOf(count(facts.noUse.length + more.length)),
  };
}

const isSameRaising = (one: RaisingName, other: RaisingName): boolean =>
  one.alarm === other.alarm && one.pan === other.pan && one.port === other.port && one.raised === other.raised;
