// What a plan says, in whole sentences with their ranges.
import { language } from '../language/language.ts';
import type { PlanView } from '../../protocol/plan-schema.ts';
import type { Settings } from '../client/types.ts';
import { say, setApart } from '../language/say.ts';
import {
  depth,
  exactStrength,
  litresOf,
  litresShown,
  massRange,
  number,
  roundTemperature,
  strength,
  syrupRange,
  temperature,
  volume,
  volumeRange,
} from './amounts.ts';
import { hoursAndMinutes } from './clock.ts';
import { jarsWords } from './jar-words.ts';
import { formatRanged } from '../../core/quantities/format.ts';
import type { Ranged, RangeWords } from '../../core/quantities/format.ts';
import { jarsFor, usualJars } from '../../core/quantities/jar-sizes.ts';
import type { JarCount } from '../../core/quantities/jar-sizes.ts';
import { DAY_MS, endsOfTime, HOUR_MS, lengthOfTime } from '../../core/quantities/time.ts';

export type Plan = PlanView['plan'];

const SECONDS_PER_HOUR = 3600;

/** To five minutes: a plan knows no more. */
const inFives = (hours: number): number => Math.round(hours * 12) / 12;

/** s, to five minutes, but what is short. */
const planSeconds = (hours: number): number =>
  SECONDS_PER_HOUR * (hours * SECONDS_PER_HOUR < 600 ? hours : inFives(hours));

/** "3 h 05 min". */
export const planHours = (hours: number): string => lengthOfTime(planSeconds(hours));

export function planRange(low: number, high: number): { low: string; high: string } {
  const [from, to] = endsOfTime(planSeconds(low), planSeconds(high));
  return { low: from, high: to };
}

/** A local moment as the form has it, so many hours later: "17:35", or "02:10 the next day". */
function clockAfter(start: string, hours: number): string {
  const from = Date.parse(`${start}Z`);
  const then = new Date(Math.round((from + hours * HOUR_MS) / 300_000) * 300_000);
  const days = Math.floor(then.getTime() / DAY_MS) - Math.floor(from / DAY_MS);
  const text = hoursAndMinutes(then.getTime());
  if (days === 0) return text;
  return days === 1 ? say('plan.hours.next_day', { time: text }) : say('plan.hours.days_later', { time: text, days });
}

/** A plan knows no tenths of what is many. */
const rough = (litres: number, settings: Settings): string =>
  volume(litres, settings, litresShown(litres, settings) < 10 ? 1 : 0);

const ofSyrup = (plan: Plan, settings: Settings): RangeWords =>
  syrupRange({ value: plan.syrup_litres, low: plan.syrup_low_litres, high: plan.syrup_high_litres }, settings);

/** "1.4 L of syrup, 1.9 kg". */
export function syrupWords(plan: Plan, settings: Settings): string {
  const share = plan.syrup_kg / plan.syrup_litres;
  const kg = { value: plan.syrup_kg, low: plan.syrup_low_litres * share, high: plan.syrup_high_litres * share };
  return say('plan.syrup.main', { litres: ofSyrup(plan, settings).value, mass: massRange(kg, settings).value });
}

/** The middle 80 % of the syrup, and that the sap’s strength is a usual one where nobody measured it. */
export function syrupRangeWords(plan: Plan, settings: Settings): string {
  const { low, high } = ofSyrup(plan, settings);
  const range = { low: low ?? '', high: high ?? '' };
  if (!plan.sap_brix_usual) return say('plan.syrup.range', range);
  return say('plan.syrup.range_usual', { ...range, strength: exactStrength(plan.sap_brix, settings) });
}

/** Longer than this nobody watches a fire alone, h (judgement). */
const ONE_WATCH_H = 14;

/** That somebody has to relieve whoever watches; null for a boil that one person sees through. */
export const longWords = ({ hours }: Plan): string | null =>
  hours === null || hours <= ONE_WATCH_H ? null : say('plan.long', { time: planHours(hours) });

/** null where the fires are not known. */
export function hoursWords(plan: Plan, start: string): { main: string; range: string } | null {
  const { hours, hours_low: low, hours_high: high } = plan;
  if (hours === null || low === null || high === null) return null;
  const span = say('plan.hours.span', planRange(low, high));
  if (start === '')
    return { main: say('plan.hours.about', { time: planHours(hours) }), range: say('plan.hours.likely', { span }) };
  return {
    main: say('plan.hours.done_about', { clock: clockAfter(start, hours) }),
    range: say('plan.hours.on_fire', {
      time: planHours(hours),
      span,
      from: clockAfter(start, low),
      until: clockAfter(start, high),
    }),
  };
}

const ofFuel = ({ unit, amount: value, low, high }: Plan['fuel'][number], settings: Settings): RangeWords => {
  const ranged = { value, low, high };
  return unit === 'kg'
    ? massRange(ranged, settings)
    : formatRanged(ranged, 1, (kwh, digits) => `${number(kwh, digits)} kWh`);
};

/** Each fuel of the plan with its middle 80 %. */
export function fuelWords(plan: Plan, settings: Settings): { main: string; range: string }[] {
  return plan.fuel.map((fuel) => {
    const { value, low, high } = ofFuel(fuel, settings);
    return {
      main: say('plan.fuel.main', { amount: value, fuel: fuel.kind }),
      range: say('plan.syrup.range', { low: low ?? '', high: high ?? '' }),
    };
  });
}

/** On the dial of today, in the degrees that are shown, and beneath in the others, for dials have either. */
export function finishWords(plan: Plan, settings: Settings): { main: string; range: string } {
  const others = { ...settings, temperature: settings.temperature === 'C' ? ('F' as const) : ('C' as const) };
  const both = (celsius: number): string => `${temperature(celsius, settings)} (${temperature(celsius, others)})`;
  return {
    main: say('plan.finish.main', { shown: temperature(plan.finish_celsius, settings) }),
    range: say(plan.place_known ? 'plan.finish.range' : 'plan.finish.range_at_sea', {
      other: temperature(plan.finish_celsius, others),
      strength: exactStrength(plan.finish_brix, settings),
      water: both(plan.water_celsius),
    }),
  };
}

type Stay = NonNullable<Plan['stay']>;

/** What is boiled and all, in whole litres or tenths of gallons, in the unit shown. */
function stayShown(stay: Stay, settings: Settings): { surely: number; all: number; digits: number } {
  const all = litresShown(stay.boil_litres_low + stay.keep_litres, settings);
  const digits = all < 20 ? 1 : 0;
  const [surely, whole] = [litresShown(stay.boil_litres_low, settings), all].map((value) =>
    Number(value.toFixed(digits)),
  ) as [number, number];
  return { surely, all: whole, digits };
}

/** The sap of a boil that is made of the plan, as the plan says it, L: what is kept for another day is none of it. */
export const boiledLitres = (stay: Stay, settings: Settings): number =>
  litresOf(stayShown(stay, settings).surely, settings);

/** What is boiled and what is kept, in amounts that add up to all. */
function staySaid(stay: Stay, settings: Settings): Record<'boil' | 'keep' | 'all' | 'even', string> {
  const { surely, all, digits } = stayShown(stay, settings);
  const words = (value: number): string => volume(litresOf(value, settings), settings, digits);
  return {
    boil: words(surely),
    keep: words(all - surely),
    all: words(all),
    even: words(litresShown(stay.boil_litres, settings)),
  };
}

/** What to boil and what to keep where somebody has to leave; null where nobody does. */
export function stayWords({ stay }: Plan, settings: Settings): { main: string; range: string } | null {
  if (stay === null) return null;
  const time = planHours(stay.hours);
  if (stay.keep_litres === 0) return { main: say('plan.stay.all'), range: say('plan.stay.all_odds', { time }) };
  const { boil, keep, all, even } = staySaid(stay, settings);
  const odds = say('plan.stay.odds', { boil, time, even, all: even === all ? 'yes' : 'no' });
  return {
    main: say('plan.stay.main', { boil, keep }),
    range: say('plan.stay.keep', { odds, cold: roundTemperature(4, settings) }),
  };
}

/** That all figures are of what can be boiled before somebody leaves; null where that is all of the sap. */
export function onlyUntilWords({ stay }: Plan, settings: Settings): string | null {
  if (stay === null || stay.keep_litres === 0) return null;
  const { boil, all } = staySaid(stay, settings);
  return say('plan.stay.only', { boil, all });
}

/** A range of so many jars is told in tens. */
const MANY_JARS = 20;

/** Full jars of one size: "about 5 × 250 mL", or its ends where the range of the syrup holds several counts. */
function jarRange(plan: Plan, one: JarCount, settings: Settings): { jars: string; ends: string; high: number } {
  const of = (litres: number): number =>
    jarsFor(litres, settings.volume).find(({ litres: each }) => each === one.litres)?.count ?? 0;
  const exact = [of(plan.syrup_low_litres), of(plan.syrup_high_litres)] as const;
  const step = exact[1] - exact[0] >= MANY_JARS ? 10 : 1;
  const [low, high, count] = [...exact, one.count].map((jars) => Math.round(jars / step) * step) as [
    number,
    number,
    number,
  ];
  const ends = low === high ? number(high, 0) : say('plan.jars.ends', { low, high });
  // No line ends within a count of jars.
  const jars = jarsWords([{ ...one, count }], settings).replaceAll(' ', '\u00a0');
  return { jars, ends, high };
}

/** The full jars that the syrup makes, each size with its range: what is left over is known no better than that. */
export function jarsFigure(plan: Plan, settings: Settings): { main: string; range: string } {
  const jars = jarsFor(plan.syrup_litres, settings.volume);
  const usual = usualJars(jars, settings.volume);
  if (usual === undefined) return { main: say('plan.jars.none'), range: say('plan.jars.range') };
  const { ends, high, jars: main } = jarRange(plan, usual, settings);
  const others = jars
    .filter((one) => one !== usual)
    .map((one) => say('plan.jars.other', jarRange(plan, one, settings)));
  return {
    main: say('plan.jars.about', { jars: main }),
    range: say('plan.jars.likely', { ends, high, others: setApart(others), count: others.length }),
  };
}

/** That the vessel that finishes is too wide for so little syrup; null where it is not. */
export function shallowEndWords({ ends_shallow: isShallow, stages, pans }: Plan): string | null {
  const last = stages.at(-1)?.pans[0];
  const pan = pans.find((one) => one.pan === last)?.name;
  return isShallow && pan !== undefined ? say('plan.ends_shallow', { pan }) : null;
}

type PanPlanned = Plan['pans'][number];

/** Whether a pan finishes this batch: one that could, and is poured into another before, is not said to. */
function finishingWords(pan: PanPlanned, plan: Plan, litres: string, settings: Settings): string {
  const { stages, pans, end_unused: unused } = plan;
  if (unused?.pans.includes(pan.pan) === true)
    return unused.why === 'wide' || pan.end_room_mm === null
      ? say('plan.pan.end_wide', { litres })
      : say('plan.pan.end_small', {
          depth: depth(pan.end_room_mm, settings),
          wall: pan.wall_known ? 'known' : 'untold',
        });
  const last = stages.at(-1)?.pans ?? [];
  if (pan.can_finish !== true) return say('plan.pan.too_wide', { litres });
  if (last.length === 0 || last.includes(pan.pan)) return say('plan.pan.can_finish', { litres });
  const names = pans.filter((one) => last.includes(one.pan)).map(({ name }) => name);
  return say('plan.pan.could_finish', { litres, pans: listWords(names) });
}

/** What one pan of a plan asks for, in sentences. */
export function panSentences(pan: PanPlanned, plan: Plan, settings: Settings): string[] {
  const { litres_per_hour: rate, litres_per_hour_low: low, litres_per_hour_high: high } = pan;
  const sentences: string[] = [];
  if (rate !== null && low !== null && high !== null) {
    const said = volumeRange({ value: rate, low, high }, settings);
    sentences.push(
      say(pan.seen_before ? 'plan.pan.rate_seen' : 'plan.pan.rate', {
        rate: said.value,
        low: said.low ?? '',
        high: said.high ?? '',
      }),
    );
    if (pan.power_share !== null) sentences.push(say('plan.pan.share', { percent: number(pan.power_share * 100, 0) }));
    else if (!pan.seen_before) sentences.push(say('plan.pan.by_size'));
  } else sentences.push(say('plan.pan.rate_unknown'));
  if (pan.hand_every_hours !== null && pan.fill_mm !== null)
    sentences.push(
      say('plan.pan.hand', {
        time: planHours(pan.hand_every_hours),
        depth: depth(pan.fill_mm, settings),
        wall: pan.wall_known ? 'known' : 'untold',
      }),
    );
  if (pan.smallest_batch_litres !== null)
    sentences.push(finishingWords(pan, plan, rough(pan.smallest_batch_litres, settings), settings));
  return sentences;
}

/** "A, B and C", as the language joins them. */
export const listWords = (names: readonly string[]): string =>
  new Intl.ListFormat(language.value, { type: 'conjunction' }).format(names);

/** How much sap each pan that boils first is filled with; null where of none of them a size is known. */
function fillWords({ pans }: Plan, settings: Settings): string | null {
  const fills = pans.flatMap(({ name, fill_litres: litres, fill_mm: mm }) =>
    litres === null || mm === null
      ? []
      : [say('plan.stage.fill_one', { pan: name, litres: rough(litres, settings), depth: depth(mm, settings) })],
  );
  return fills.length === 0 ? null : say('plan.stage.fill', { pans: setApart(fills) });
}

/** How much sap each pan takes at a time, and how often; null where nobody knows, or where none is left to pour. */
function refillWords({ pans, stages }: Plan, settings: Settings): string | null {
  const refills = pans.flatMap(({ name, refill_litres: litres, hand_every_hours: hours }) =>
    litres === null || hours === null
      ? []
      : [say('plan.stage.refill_one', { pan: name, litres: rough(litres, settings), time: planHours(hours) })],
  );
  if (refills.length > 0) return say('plan.stage.refill', { pans: setApart(refills) });
  const filled = pans.reduce((sum, { fill_litres: litres }) => sum + (litres ?? 0), 0);
  return filled > 0.99 * (stages[0]?.litres ?? Infinity) ? say('plan.stage.all_in') : null;
}

/** What has to leave the last vessel, and by its index the stage out of whose pans it is poured; null where nothing has to, or it should never go in. */
function drawnOff({ draw_off: out, stages }: Plan): (NonNullable<Plan['draw_off']> & { stage: number }) | null {
  if (out === null) return null;
  const last = stages.length - 1;
  const isAtOnce = out.from_hours <= stages[last]!.from_hours;
  return isAtOnce && last === 0 ? null : { ...out, stage: isAtOnce ? last - 1 : last };
}

/**
 * What is filled in, lit, poured in again and poured together, in order; the first stage is the lighting of the fire, the
 * last the leaving.
 */
export function stageSentences(
  plan: Plan,
  start: string,
  nameOf: (pan: string) => string,
  settings: Settings,
): string[] {
  const clock = (hours: number): string =>
    start === '' ? say('plan.stage.after', { time: planHours(hours) }) : clockAfter(start, hours);
  const asStrong = (brix: number): string => strength(brix, brix * 0.9, brix * 1.1, settings);
  const out = drawnOff(plan);
  const poured = out === null ? plan.stages : plan.stages.slice(0, out.stage + 1);
  const sentences = poured.map((stage, index) => {
    const when = clock(stage.from_hours);
    const pans = listWords(stage.pans.map(nameOf));
    if (index === 0) return start === '' ? say('plan.stage.first', { pans }) : say('plan.stage.light', { when, pans });
    const before = plan.stages[index - 1]!.pans;
    const emptied = before.filter((pan) => !stage.pans.includes(pan));
    const isLit = !stage.pans.some((pan) => before.includes(pan));
    // Nobody boils down in it alone what is poured out of it again.
    const isOut = stage.pans.length === 1 && (out !== null || index < plan.stages.length - 1);
    const said = {
      when,
      from: listWords(emptied.map(nameOf)),
      pans,
      count: isOut ? 0 : stage.pans.length,
      time: planHours(stage.hours),
      litres: rough(stage.litres, settings),
      strength: asStrong(stage.brix),
    };
    const pour = isLit
      ? say('plan.stage.pour_end', { ...said, fits: stage.fits === true ? 'yes' : 'no' })
      : say('plan.stage.pour', said);
    const full = stage.too_full.map(({ pan, room_mm: room }) =>
      say('plan.stage.too_full', { pan: nameOf(pan), depth: depth(room, settings) }),
    );
    return [pour, ...full].join(' ');
  });
  if (out !== null)
    sentences.push(
      say('plan.stage.draw_off', {
        when: clock(out.from_hours),
        litres: rough(out.litres, settings),
        strength: asStrong(out.brix),
        from: listWords(plan.stages[out.stage]!.pans.map(nameOf)),
        pan: nameOf(plan.stages.at(-1)!.pans[0]!),
      }),
    );
  const unused = plan.end_unused;
  if (unused !== null && sentences.length > 0)
    sentences.push(
      say('plan.stage.unused', {
        pans: listWords(unused.pans.map(nameOf)),
        count: unused.pans.length,
        why: unused.why,
        last: listWords(plan.stages.at(-1)!.pans.map(nameOf)),
      }),
    );
  const [light, ...later] = sentences;
  if (light === undefined) return [];
  const beside = [fillWords(plan, settings), light, refillWords(plan, settings)].filter((one) => one !== null);
  const steps = [...beside, ...later];
  // A plan with a stay has a start, from which the stay counts.
  if (plan.stay !== null) steps.push(say('plan.stage.leave', { when: clockAfter(start, plan.stay.hours) }));
  return steps;
}

/** A change, with the digits that the range of what has changed allows; null for one that would read as nought. */
function changeWords(
  change: number,
  [low, high]: [number, number],
  write: (ranged: Ranged) => RangeWords,
): string | null {
  const [value, half] = [Math.abs(change), (high - low) / 2];
  const words = write({ value, low: value - half, high: value + half }).value;
  return /[1-9]/u.test(words) ? words : null;
}

/** What changed against a plan that was put beside, in words; empty where nothing did. */
export function differenceWords(plan: Plan, beside: Plan, settings: Settings): string[] {
  const said: string[] = [];
  if (plan.hours !== null && beside.hours !== null) {
    const hours = inFives(plan.hours) - inFives(beside.hours);
    if (Math.abs(hours) > 1 / 24)
      said.push(say(hours < 0 ? 'plan.than.sooner' : 'plan.than.longer', { time: planHours(Math.abs(hours)) }));
  }
  const syrup = plan.syrup_litres - beside.syrup_litres;
  const litres = changeWords(syrup, [plan.syrup_low_litres, plan.syrup_high_litres], (ranged) =>
    syrupRange(ranged, settings),
  );
  if (litres !== null) said.push(say(syrup < 0 ? 'plan.than.less_syrup' : 'plan.than.more_syrup', { litres }));
  const { fuel_kg: fuel, fuel_low_kg: low, fuel_high_kg: high } = plan;
  if (fuel === null || low === null || high === null || beside.fuel_kg === null) return said;
  const kg = changeWords(fuel - beside.fuel_kg, [low, high], (ranged) => massRange(ranged, settings));
  if (kg !== null) said.push(say(fuel < beside.fuel_kg ? 'plan.than.less_fuel' : 'plan.than.more_fuel', { mass: kg }));
  return said;
}
