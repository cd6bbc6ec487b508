// The alarms of what a temperature shows beside a strength: a boil that died, a probe that lies, a cylinder that runs out.
import type { PanSigns } from '../pan/pan-signs.ts';
import type { Finding, PanSeen, Rule } from './rules.ts';

/** Signs of one pan and of what hangs in it and burns under it. */
export interface SignsSeen {
  pan: Pick<PanSigns, 'lost' | 'bare' | 'fell'>;
  /** When somebody last noted a flame of this pan, ms. */
  flameNotedAt: number;
  /** Why its probe cannot be right, or gives nothing though its channel is named; null where there is no reason. */
  doubt: string | null;
  broken: string | null;
  /** Of the cylinder that feeds it: what is left, kg, and for how long, s; null while nobody said. */
  fuel: { kg: number; seconds: number } | null;
}

const ended = (priority: Finding['priority']): Finding => ({
  over: false,
  inside: true,
  priority,
  why: () => '',
  atOnce: true,
});

/** Whoever turned a flame knows why the boil dies, ms. */
const FLAME_EXPLAINS_MS = 10 * 60_000;

function boilLost({ reading, signs, justPoured }: PanSeen): Finding | null {
  const { lost } = signs.pan;
  if (reading.stage === 'off' || reading.stage === 'finished') return ended('medium');
  // No probe hangs in it now: what it was, it stays.
  if (reading.temperature_c === null) return null;
  const turned = lost !== null && signs.flameNotedAt > lost.from - FLAME_EXPLAINS_MS;
  return {
    over: lost !== null && !turned,
    inside: lost === null || turned,
    atOnce: justPoured,
    priority: 'medium',
    why: () =>
      `fell from ${(lost?.fromC ?? 0).toFixed(1)} to ${(reading.temperature_c ?? 0).toFixed(1)} °C and goes on falling`,
  };
}

/** From here on a probe that cannot be believed costs minutes that are not there. */
export const isThick = ({ reading: { stage }, signs }: Pick<PanSeen, 'reading' | 'signs'>): boolean =>
  stage === 'thickening' || stage === 'near-finish' || stage === 'finished' || signs.pan.fell !== null;

function probeSuspect(seen: PanSeen): Finding | null {
  const { reading, portLost, signs } = seen;
  const doubted = reading.probe === 'stuck' || reading.probe === 'suspect';
  const unwatched = reading.stage === 'off' || reading.probe === null || portLost;
  return {
    over: doubted && !unwatched,
    // A probe that is late or lost has not become right by that.
    inside: unwatched || reading.probe === 'ok',
    priority: isThick(seen) ? 'high' : 'medium',
    why: () => signs.doubt ?? '',
  };
}

/** A cylinder that is empty so soon is called, s; it is over once it lasts so much longer. */
const FUEL_LEAD_S = 20 * 60;
const FUEL_DEADBAND = 1.25;

function fuelLow({ reading, signs: { fuel } }: PanSeen): Finding | null {
  if (fuel === null || reading.stage === 'off') return ended('low');
  const minutes = Math.round(fuel.seconds / 60);
  return {
    over: fuel.seconds <= FUEL_LEAD_S,
    inside: fuel.seconds > FUEL_LEAD_S * FUEL_DEADBAND,
    priority: 'low',
    why: () =>
      `about ${fuel.kg.toFixed(1)} kg left, ${minutes < 1 ? 'less than a minute' : `${minutes} min`} at this flame`,
  };
}

export const SIGN_RULES: readonly Rule[] = [
  { alarm: 'boil-lost', onDelayMs: 0, offDelayMs: 30_000, asksLeads: false, find: boilLost },
  { alarm: 'probe-suspect', onDelayMs: 0, offDelayMs: 30_000, asksLeads: false, find: probeSuspect },
  { alarm: 'fuel-low', onDelayMs: 0, offDelayMs: 0, asksLeads: false, find: fuelLow },
];
