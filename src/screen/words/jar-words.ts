// Jars as a person writes them: "12 x 250 mL, 3 x 0.5 L", and back into litres.
import type { Jars } from '../../protocol/season-messages.ts';
import type { Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import { typedNumber } from './amounts.ts';

/** Litres; a fluid ounce, a pint and a quart are a gallon's 128th, 8th and 4th in the USA, its 160th, 8th and 4th elsewhere. */
function unitLitres(settings: Settings): Record<string, number> {
  const [gallon, ounces] = settings.volume === 'imperial-gallon' ? [4.54609, 160] : [3.785411784, 128];
  const ounce = gallon / ounces;
  return { ml: 0.001, cl: 0.01, l: 1, oz: ounce, 'fl oz': ounce, pt: gallon / 8, qt: gallon / 4, gal: gallon };
}

/** "12 x 250 mL", or fluid ounces for who counts in gallons. */
export function jarsWords(jars: readonly Pick<Jars, 'litres' | 'count'>[], settings: Settings): string {
  const isMetric = settings.volume === 'litre';
  const each = isMetric ? 0.001 : unitLitres(settings)['oz']!;
  const unit = isMetric ? 'mL' : say('unit.fluid_ounce');
  return jars.map(({ litres, count }) => `${count} x ${inField(litres / each, 1)} ${unit}`).join(', ');
}

/** How jars are written, in the units that were chosen. */
export const jarsExample = ({ volume }: Settings): string =>
  say(volume === 'litre' ? 'notebook.end.jars_example' : 'notebook.end.jars_example_gallons');

/** Less than this sticks to the vessel and the filter, litres (judgement). */
const LEAST_LEFT_L = 0.02;

/** What fills no jar of so much syrup, litres; null where it is nothing worth a word. */
export function leftOver(syrupLitres: number, jars: readonly Pick<Jars, 'litres' | 'count'>[]): number | null {
  const left = syrupLitres - jars.reduce((sum, { litres, count }) => sum + litres * count, 0);
  return left < LEAST_LEFT_L ? null : left;
}

/** null where it cannot be read. Empty is no jars. */
export function jarsTyped(text: string, settings: Settings): Jars[] | null {
  const units = unitLitres(settings);
  const jars = text
    .split(/[,;+]\s+|[;+]/)
    .filter((part) => part.trim() !== '')
    .map((part): Jars | null => {
      const found = /^\s*(\d{1,5})\s*(?:x|×|\*)\s*([\d.,]+)\s*(ml|cl|l|fl\.? ?oz|oz(?: liq\.?)?|pt|qt|gal)\s*$/i.exec(
        part,
      );
      const each = typedNumber(found?.[2] ?? '');
      const unit = units[(found?.[3] ?? '').toLowerCase().replaceAll('.', '').replace(' liq', '')];
      if (found === null || each === null || each <= 0 || unit === undefined) return null;
      return { litres: Number((each * unit).toFixed(5)), count: Number(found[1]) };
    });
  return jars.includes(null) ? null : (jars as Jars[]);
}
