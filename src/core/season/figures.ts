// The figures of one boil: what went in, what came out and what it took, each with its range and where it comes from.

/** Where a figure comes from. */
export type FigureFrom =
  /** The person's own word on the boil's page. */
  | 'page'
  /** What was noted during the boil. */
  | 'marks'
  /** What was noted, and pours that only their dips told of. */
  | 'marks-and-seen'
  /** Collected sap that was given to this boil. */
  | 'store'
  /** Jars that were filled, times what one holds. */
  | 'jars'
  /** What the model said was in the pans. */
  | 'pans'
  /** The plan that the boil began from. */
  | 'plan'
  /** What is usual for this sap, or the finish that was asked for: nobody measured. */
  | 'usual'
  /** From other figures. */
  | 'worked-out'
  /** What the program saw and counted. */
  | 'seen';

/** A value with its middle 80 %; both ends are null where nobody can say how sure it is. */
export interface Figure {
  value: number;
  low: number | null;
  high: number | null;
  from: FigureFrom;
}

/** All figures of a boil in their order, each with its unit; every one can be sorted by. Litres are litres at 20 °C. */
export const FIGURES = {
  /** Sap that went in. */
  sap_litres: 'L',
  sap_brix: '°Bx',
  sap_sugar_kg: 'kg',
  /** Syrup that came out. */
  syrup_litres: 'L',
  syrup_kg: 'kg',
  syrup_brix: '°Bx',
  syrup_sugar_kg: 'kg',
  /** Syrup that all of this sap makes at this strength, by the exact balance. */
  expected_syrup_litres: 'L',
  /** Sugar that was left in the pans or taken out of them thin. */
  left_sugar_kg: 'kg',
  /** Sugar known to be spilt, burnt, stuck. */
  lost_sugar_kg: 'kg',
  /** Sugar in, less syrup, left and lost: what stuck, spilt or was mistyped. */
  gap_sugar_kg: 'kg',
  /** Litres of sap to one of syrup: as it was, by the exact balance, and by the trade's rules. */
  ratio: 'L/L',
  exact_ratio: 'L/L',
  ratio_by_86: 'L/L',
  ratio_by_revised_86: 'L/L',
  water_off_litres: 'L',
  /** From the first entry to the last. */
  hours: 'h',
  /** Hours during which any pan was seen to boil. */
  boiling_hours: 'h',
  water_off_l_per_h: 'L/h',
  fuel_kg: 'kg',
  fuel_kwh: 'kWh',
  fuel_cords: 'cords',
  /** Heat in all of the fuel, whatever it was. */
  fuel_mj: 'MJ',
  fuel_kg_per_l: 'kg/L',
  fuel_mj_per_l: 'MJ/L',
  /** Money: of the fuel, of all, and of all for each jar. */
  fuel_price: '',
  cost: '',
  jars: '',
  cost_a_jar: '',
  /** Alarms that were raised, and those that were of no use by the person's word. */
  alarms: '',
  alarms_no_use: '',
} as const;

export type FigureName = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as FigureName[];

/** null is "not known". */
export type BoilFigures = Record<FigureName, Figure | null>;

/** How the sugar adds up: within what was measured, or sugar is missing, or too much came out. null where it cannot be told. */
export type Balance = 'closes' | 'missing' | 'too-much' | null;

/** What became of a boil's pans; several may hold at once. */
export const OUTCOMES = ['finished', 'past-finish', 'scorch-risk', 'burnt', 'unfinished'] as const;
export type BoilOutcome = (typeof OUTCOMES)[number];
