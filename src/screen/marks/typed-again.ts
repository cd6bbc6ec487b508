// What stands in a form that corrects a note: the note's own numbers and words, in the units shown.
import type { Mark, Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { celsiusShown, litresShown, mmShown, strengthShown } from '../words/amounts.ts';
import type { Values } from './mark-form.ts';
import { IN_THE_HAND } from './measure-forms.ts';

/** No unit is typed more finely: a specific gravity in the fourth. */
const DIGITS = 4;

/** The values that a form would make the mark of; empty for what nobody typed. */
export function typedAgain(mark: Mark, settings: Settings): Values {
  return Object.fromEntries(
    Object.entries(valuesOf(mark, settings)).filter((value): value is [string, string] => value[1] !== undefined),
  );
}

const shown = <T>(value: T | undefined, as: (value: T) => number): string | undefined =>
  value === undefined ? undefined : inField(as(value), DIGITS);

function valuesOf(mark: Mark, settings: Settings): Record<string, string | undefined> {
  const celsius = (value: number | undefined) => shown(value, (each) => celsiusShown(each, settings));
  const volume = (value: number | undefined) => shown(value, (each) => litresShown(each, settings));
  const strength = (value: number | undefined) => shown(value, (each) => strengthShown(each, settings));
  switch (mark.kind) {
    case 'top-up':
      return { volume: volume(mark.litres), strength: strength(mark.brix), temperature: celsius(mark.celsius) };
    case 'draw-off':
      return { volume: volume(mark.litres), strength: strength(mark.brix) };
    case 'transfer':
      return { to: mark.to, volume: volume(mark.litres) };
    case 'flame':
      return { percent: inField(100 * mark.level, 0) };
    case 'density':
      return { ...densityValues(mark), temperature: celsius(mark.celsius) };
    case 'depth':
      return { depth: shown(mark.mm, (mm) => mmShown(mm, settings)) };
    case 'reading':
      return { temperature: celsius(mark.celsius) };
    case 'water-check':
      return { probe: mark.probe ?? IN_THE_HAND, temperature: celsius(mark.celsius) };
    case 'pressure':
      return { at: mark.at ?? 'station', value: inField(mark.hpa, 1), temperature: celsius(mark.outdoor_celsius) };
    case 'remind':
      return { text: mark.text, minutes: inField(mark.seconds / 60, 0) };
    case 'note':
      return { text: mark.text };
    default:
      return {};
  }
}

function densityValues(mark: Extract<Mark, { kind: 'density' }>): Record<string, string | undefined> {
  const scale = mark.brix !== undefined ? 'brix' : mark.baume !== undefined ? 'baume' : 'sg';
  return {
    instrument: mark.instrument ?? 'hydrometer',
    scale,
    value: shown(mark[scale], (value) => value),
    reference: mark.reference_celsius === 20 ? '20' : '15.56',
    compensated: mark.compensated === true ? 'yes' : 'no',
  };
}
