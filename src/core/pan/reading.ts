// What the program says of one pan at one moment; null is "not known", never 0.

export type Stage = 'unknown' | 'warming' | 'boiling' | 'thickening' | 'near-finish' | 'finished' | 'off';

export type ProbeState = 'ok' | 'late' | 'lost' | 'broken' | 'stuck' | 'suspect';

/** Field names, order and meaning are those of a `reading` line (see recording.md); low and high bound the middle 80 %. */
export interface PanReading {
  pan: string;
  temperature_c: number | null;
  /** Water's boiling point at these pans now. */
  water_c: number | null;
  rise_c: number | null;
  rate_c_per_min: number | null;
  brix: number | null;
  brix_low: number | null;
  brix_high: number | null;
  /** Litres in the pan, counted at 20 °C. */
  litres: number | null;
  depth_mm: number | null;
  evaporation_l_per_h: number | null;
  finish_in_s: number | null;
  finish_low_s: number | null;
  finish_high_s: number | null;
  scorch_in_s: number | null;
  /** Until min_depth_mm is reached. */
  top_up_in_s: number | null;
  stage: Stage;
  /** null for a pan that has none. */
  probe: ProbeState | null;
}
