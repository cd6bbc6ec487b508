// Typed numbers of a set-up when other units are chosen while it stands in a form: the amounts stay, their numbers change.
import {
  celsiusFromDifference,
  differenceFromCelsius,
  kgFromMass,
  massFromKg,
  pressureFromHpa,
} from '../../core/quantities/units.ts';
import type { Settings } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import {
  brixOf,
  celsiusOf,
  celsiusShown,
  hpaOf,
  litresOf,
  litresShown,
  metresOf,
  metresShown,
  mmOf,
  mmShown,
  strengthShown,
  typedNumber,
  wattsOf,
  powerShown,
} from '../words/amounts.ts';
import type { BoilDraft, PanDraft } from './boil-draft.ts';
import type { VesselDraft } from './vessel-draft.ts';

/** A quantity as it is typed: into its unit of record and back, and how many decimals are worth writing in the new unit. */
export interface TypedQuantity {
  of: (shown: number, settings: Settings) => number;
  shown: (value: number, settings: Settings) => number;
  digits: (settings: Settings) => number;
}

const STRENGTH_DIGITS = { brix: 1, baume: 2, sg: 4 } as const;

const PRESSURE_DIGITS = { hpa: 0, kpa: 1, inhg: 2 } as const;

export const typedQuantities = {
  volume: { of: litresOf, shown: litresShown, digits: ({ volume }) => (volume === 'litre' ? 1 : 2) },
  fill: { of: litresOf, shown: litresShown, digits: ({ volume }) => (volume === 'litre' ? 2 : 3) },
  strength: { of: brixOf, shown: strengthShown, digits: ({ strength }) => STRENGTH_DIGITS[strength] },
  length: { of: mmOf, shown: mmShown, digits: ({ length }) => (length === 'mm' ? 0 : 2) },
  height: { of: metresOf, shown: metresShown, digits: () => 0 },
  weight: {
    of: (shown, { mass }) => kgFromMass(shown, mass),
    shown: (kg, { mass }) => massFromKg(kg, mass),
    digits: () => 1,
  },
  power: { of: wattsOf, shown: powerShown, digits: ({ power }) => (power === 'watt' ? 1 : 0) },
  temperature: { of: celsiusOf, shown: celsiusShown, digits: () => 1 },
  pressure: {
    of: hpaOf,
    shown: (hpa, { pressure }) => pressureFromHpa(hpa, pressure),
    digits: ({ pressure }) => PRESSURE_DIGITS[pressure],
  },
  rise: {
    of: (shown, { temperature }) => celsiusFromDifference(shown, temperature),
    shown: (celsius, { temperature }) => differenceFromCelsius(celsius, temperature),
    digits: () => 2,
  },
} as const satisfies Record<string, TypedQuantity>;

/** The same amount in the units of `to`; what is no number, and what the units leave as it is, stays as it was typed. */
export function retyped(typed: string, { of, shown, digits }: TypedQuantity, from: Settings, to: Settings): string {
  const value = typedNumber(typed);
  if (value === null || shown(1, from) === shown(1, to)) return typed;
  return inField(shown(of(value, from), to), digits(to));
}

function vesselIn(vessel: VesselDraft, from: Settings, to: Settings): VesselDraft {
  const size = (typed: string): string => retyped(typed, typedQuantities.length, from, to);
  return {
    shape: vessel.shape,
    diameter: size(vessel.diameter),
    length: size(vessel.length),
    width: size(vessel.width),
    top: size(vessel.top),
    height: size(vessel.height),
    fill: vessel.fill.map(({ depth, volume }) => ({
      depth: size(depth),
      volume: retyped(volume, typedQuantities.fill, from, to),
    })),
  };
}

function panIn(pan: PanDraft, from: Settings, to: Settings): PanDraft {
  const finish = pan.finish === 'rise' ? typedQuantities.rise : typedQuantities.strength;
  return {
    ...pan,
    vessel: vesselIn(pan.vessel, from, to),
    power: retyped(pan.power, typedQuantities.power, from, to),
    finishAt: retyped(pan.finishAt, finish, from, to),
    ceiling: retyped(pan.ceiling, typedQuantities.temperature, from, to),
    leastDepth: retyped(pan.leastDepth, typedQuantities.length, from, to),
  };
}

/** A set-up that was typed in the units of `from`, in those of `to`. */
export const boilDraftIn = (draft: BoilDraft, from: Settings, to: Settings): BoilDraft => ({
  ...draft,
  altitude: retyped(draft.altitude, typedQuantities.height, from, to),
  pans: draft.pans.map((pan) => panIn(pan, from, to)),
});
