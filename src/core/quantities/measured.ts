// A value together with how sure it is and where it comes from: what a screen needs to answer "how do you know?".

/** What a value rests on: a probe's number, something a person noted, a model, an assumption. */
export type OriginKind =
  | 'probe'
  | 'hand-reading'
  | 'boiling-check'
  | 'pressure'
  | 'reference-pot'
  | 'altitude'
  | 'weather'
  | 'density-reading'
  | 'earlier-boil'
  | 'volume'
  | 'depth'
  | 'nominal-power'
  | 'evaporation'
  | 'sugar-model'
  | 'sap-strength'
  | 'head'
  | 'assumed';

/** One thing that a value rests on, and how much of its uncertainty comes from there. */
export interface Origin {
  kind: OriginKind;
  /** When it was seen, ms of boil time; null where it has no time. */
  at: number | null;
  /**
   * What it contributes to the standard uncertainty, in the unit of the value it stands behind. After a calculation it
   * has a sign: which way the value moves with it.
   */
  sigma: number;
  /** Id of the probe or pan it came from, where there is one. */
  of?: string | undefined;
}

/** `sigma` is the standard uncertainty (1 σ), in the unit of `value`, 0 or more. */
export interface Measured {
  value: number;
  sigma: number;
  origins: readonly Origin[];
}
