// The straight line of a boil: water per sugar falls evenly with the heat put in, so its slope tells when a strength is reached.

/**
 * Weighted least squares with forgetting, of u = water per sugar (kg/kg) against heat time x (s at full flame).
 * Sums are kept about the newest point, so x = 0 is always now. A plain record: it can be cloned and stored.
 */
export interface EvaporationLine {
  sw: number;
  sx: number;
  sy: number;
  sxx: number;
  sxy: number;
  /** Weighted square of the values, for the scatter about the line. */
  syy: number;
  points: number;
  /** How many points are still remembered, faded like the sums. */
  remembered: number;
  /** Heat time from the first point to now, s. */
  span: number;
}

export interface LineNow {
  u: number;
  uSigma: number;
  /** Fall of u per second of heat time. */
  k: number;
  kSigma: number;
}

export function startLine(): EvaporationLine {
  return { sw: 0, sx: 0, sy: 0, sxx: 0, sxy: 0, syy: 0, points: 0, remembered: 0, span: 0 };
}

/** Heat goes on for dx seconds: the origin moves, and old points fade with the time constant `memory`, s. */
export function moveOn(line: EvaporationLine, dx: number, memory: number): void {
  if (line.points === 0 || dx <= 0) return;
  line.sxx += dx * dx * line.sw - 2 * dx * line.sx;
  line.sxy -= dx * line.sy;
  line.sx -= dx * line.sw;
  line.span += dx;
  const keep = Math.exp(-dx / memory);
  line.sw *= keep;
  line.sx *= keep;
  line.sy *= keep;
  line.sxx *= keep;
  line.sxy *= keep;
  line.syy *= keep;
  line.remembered *= keep;
}

/** A value seen now, with its standard uncertainty. */
export function addPoint(line: EvaporationLine, u: number, sigma: number): void {
  const w = 1 / (sigma * sigma);
  line.sw += w;
  line.sy += w * u;
  line.syy += w * u * u;
  line.points += 1;
  line.remembered += 1;
}

/** Neighbouring blocks share their errors (lag, wind, foam): their count says more than it should by this factor. */
const SHARED_ERRORS = 4;

/**
 * Level and slope now with standard errors, or null while the points do not span `leastSpan` seconds
 * of heat or the slope is not surely downwards (two standard errors).
 */
export function lineNow(line: EvaporationLine, leastSpan: number): LineNow | null {
  if (line.points < 3 || line.span < leastSpan) return null;
  const det = line.sw * line.sxx - line.sx * line.sx;
  if (!(det > 0)) return null;
  const slope = (line.sw * line.sxy - line.sx * line.sy) / det;
  const u = (line.sxx * line.sy - line.sx * line.sxy) / det;
  const scatter = Math.max(1, scatterAbout(line, u, slope)) * SHARED_ERRORS;
  const kSigma = Math.sqrt((line.sw / det) * scatter);
  const uSigma = Math.sqrt((line.sxx / det) * scatter);
  if (!(-slope > 2 * kSigma)) return null;
  return { u, uSigma, k: -slope, kSigma };
}

/** Weighted mean square of the residuals a degree of freedom, in units of the points' own variance. */
function scatterAbout(line: EvaporationLine, u: number, slope: number): number {
  const residual =
    line.syy -
    2 * u * line.sy -
    2 * slope * line.sxy +
    u * u * line.sw +
    2 * u * slope * line.sx +
    slope * slope * line.sxx;
  return residual / Math.max(1, line.remembered - 2);
}

/** Water per sugar, kg/kg, of a strength in °Brix (greater than 0). */
export function waterPerSugar(brix: number): number {
  return (100 - brix) / brix;
}

/** Strength in °Brix of a water-per-sugar ratio. */
export function brixOfWaterPerSugar(u: number): number {
  return 100 / (1 + u);
}
