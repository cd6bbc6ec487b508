// How fast water leaves a pan: by nominal power until the pan's own rise, or a depth seen by eye, tells it better.
import { addTo, correctByStrength } from './contents.ts';
import { moveOn } from './evaporation-line.ts';
import type { PanModel } from './pan-state.ts';
import type { PanDesign } from './setup.ts';
import { boiledOffKgPerS } from '../physics/heat.ts';

/** Memory of the line, s of heat: long enough for a steady slope, short enough to follow a burner. */
const MEMORY_S = 900;
/** Under a ceiling only density readings make the line, hours apart. */
const CEILING_MEMORY_S = 8 * 3600;

/** Water leaves by what was learnt or, until then, by the burner's nominal power. */
export function evaporate(pan: PanModel, design: PanDesign, seconds: number): void {
  if (pan.off) return;
  moveOn(pan.line, seconds * pan.flame, design.ceilingC === null ? MEMORY_S : CEILING_MEMORY_S);
  const rate = evaporationKgPerS(pan, design);
  if (rate === null || pan.phase !== 'boiling') return;
  pan.evaporatedKg += rate * seconds;
  addTo(pan.contents, 0, -rate * seconds);
  pan.contents.countedKg += rate * seconds;
  if (pan.learntKgPerS === null) pan.contents.nominalKg += rate * seconds;
}

/** Water leaving now, kg/s, or null when neither strength nor power tells. */
export function evaporationKgPerS(pan: PanModel, design: PanDesign): number | null {
  if (pan.off || pan.flame === 0) return 0;
  if (pan.phase !== 'boiling' && design.ceilingC === null) return null;
  if (pan.learntKgPerS !== null) return pan.learntKgPerS * pan.flame;
  if (design.usefulPowerW === null || design.ceilingC !== null) return null;
  return boiledOffKgPerS(design.usefulPowerW * pan.flame, 100);
}

/** A slope known to this share tells the evaporation. */
const TELLING_SLOPE = 0.15;

/** The rise corrects the contents where it knows the strength better than the count does. */
export function learn(pan: PanModel, sigmaBrix: number): void {
  if (pan.brix === null || pan.brix <= 0 || pan.fit === null) return;
  correctByStrength(pan.contents, pan.brix, sigmaBrix);
  const { sugarKg } = pan.contents;
  if (sugarKg === null || pan.contents.sugarGuessed || pan.fit.kSigma > TELLING_SLOPE * pan.fit.k) return;
  pan.learntKgPerS = pan.fit.k * sugarKg;
}

/** A volume seen by eye tells the evaporation once so much of the water was counted off since the last one. */
const TELLING_LOSS = 0.15;

/** The water that a depth shows, against what was counted, corrects the evaporation: called before the contents change. */
export function learnFromVolume(pan: PanModel, design: PanDesign, waterSeenKg: number): void {
  const { waterKg, countedKg } = pan.contents;
  const rate = evaporationKgPerS(pan, design);
  if (
    waterKg === null ||
    rate === null ||
    rate === 0 ||
    pan.flame === 0 ||
    countedKg < TELLING_LOSS * (waterKg + countedKg)
  )
    return;
  const factor = (countedKg + waterKg - waterSeenKg) / countedKg;
  if (factor > 0.2 && factor < 3) pan.learntKgPerS = (rate / pan.flame) * factor;
}
