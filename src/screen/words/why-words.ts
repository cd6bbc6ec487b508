// The numbers behind an alarm, as the host wrote them down, in the units that the person chose.
import type { Settings } from '../client/types.ts';
import { degrees, depth, exactStrength, mass, signedRate, strengthEnds, temperature } from './amounts.ts';

type Rule = readonly [RegExp, (settings: Settings, numbers: number[]) => string];

const NUMBER = '([-−]?\\d+(?:\\.\\d+)?)';
const pattern = (text: string): RegExp => new RegExp(text.replaceAll('#', NUMBER), 'gu');

/** The longer form of each before the shorter; what none of them fits stays as it was written. */
const RULES: readonly Rule[] = [
  // The times' range stands behind the strength there, and could be read as the strength's.
  [
    /about (\d+) min to (\d+(?:\.\d+)?) °Bx \((\d+)–(\d+)\)/gu,
    (settings, [middle = 0, brix = 0, low = 0, high = 0]) =>
      `about ${middle} min${low === high ? '' : ` (${low}–${high})`} to ${exactStrength(brix, settings)}`,
  ],
  [
    pattern('# °Bx \\(#–#\\)'),
    (settings, [brix = 0, low = 0, high = 0]) =>
      `${exactStrength(brix, settings)} (${strengthEnds(low, high, settings).join('–')})`,
  ],
  [pattern('# °Bx'), (settings, [brix = 0]) => exactStrength(brix, settings)],
  [pattern('# °C/min'), (settings, [rate = 0]) => signedRate(rate, settings)],
  [pattern('rise # °C'), (settings, [rise = 0]) => `rise ${degrees(rise, settings)}`],
  // One unit stands for both numbers, or for none where the tip is in steam.
  [
    pattern('fell from # to # °C'),
    (settings, [from = 0, to = 0]) => `fell from ${temperature(from, settings)} to ${temperature(to, settings)}`,
  ],
  [
    pattern('fell from # to the steam'),
    (settings, [from = 0]) => `fell from ${temperature(from, settings)} to the steam`,
  ],
  [pattern('shows # °C'), (settings, [by = 0]) => `shows ${degrees(by, settings)}`],
  [pattern('lie # °C apart'), (settings, [by = 0]) => `lie ${degrees(by, settings)} apart`],
  [pattern('# °C'), (settings, [celsius = 0]) => temperature(celsius, settings)],
  [pattern('# mm'), (settings, [mm = 0]) => depth(mm, settings)],
  [pattern('# kg'), (settings, [kg = 0]) => mass(kg, settings)],
];

/** "about 9 min (7–12) to 66.9 °Bx", of a boil's own "about 9 min to 66.9 °Bx (7–12)". */
export function whyWords(why: string, settings: Settings): string {
  const whole = new RegExp(RULES.map(([{ source }]) => `(?:${source})`).join('|'), 'gu');
  return why.replace(whole, (found) => inUnits(found, settings));
}

function inUnits(found: string, settings: Settings): string {
  for (const [rule, say] of RULES) {
    const match = new RegExp(`^${rule.source}$`, 'u').exec(found);
    if (match !== null) return say(settings, match.slice(1).map(toNumber));
  }
  return found;
}

const toNumber = (text: string): number => Number(text.replace('−', '-'));
