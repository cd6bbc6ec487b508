// The simulated people: they see what needs a hand, get there in their own time, and type it in late or not at all.
import type { Mark } from '../boil/entries.ts';
import { SIMULATED_HAND } from '../boil/practice-marks.ts';
import { perform } from './acts.ts';
import { depthMillimetres, massKg, strengthBrix } from './liquid.ts';
import { nextUniform } from './random.ts';
import type { Deed, When } from './scenario.ts';
import { panNamed, type DeedProgress, type PanState, type SimulationState } from './state.ts';

type SightWhen = Extract<When, { sight: unknown }>;

/** Does everything that is due at t (ms), in the order of the scenario. */
export function doDueDeeds(state: SimulationState, t: number): void {
  state.scenario.deeds.forEach((deed, index) => {
    const progress = state.deeds[index];
    if (progress === undefined) return;
    notice(state, deed.when, progress, t);
    if (progress.dueAt === null || progress.dueAt > t) return;
    progress.dueAt = null;
    if (deed.looksAgain === true && 'sight' in deed.when && !seen(panNamed(state, deed.when.pan), deed.when)) return;
    progress.done += 1;
    if ('sight' in deed.when) progress.restsUntil = t + (deed.when.restSeconds ?? 0) * 1000;
    carryOut(state, deed, t);
  });
}

function notice(state: SimulationState, when: When, progress: DeedProgress, t: number): void {
  if (progress.dueAt !== null) return;
  if ('at' in when) {
    if (progress.done === 0) progress.dueAt = when.at;
    return;
  }
  const looking = t >= (when.from ?? 0) && t < (when.until ?? Infinity) && t >= progress.restsUntil;
  if (!looking || progress.done >= (when.times ?? 1)) return;
  if (seen(panNamed(state, when.pan), when)) progress.dueAt = t + (when.delaySeconds ?? 0) * 1000;
}

function seen(pan: PanState, { sight, value }: SightWhen): boolean {
  if (pan.off || massKg(pan.liquid) === 0) return false;
  if (sight === 'brix-above') return strengthBrix(pan.liquid) > value;
  if (sight === 'depth-below') return depthMillimetres(pan.liquid, pan.hearth.areaM2) < value;
  return sight === 'celsius-above' ? pan.liquid.celsius > value : pan.liquid.celsius < value;
}

function carryOut(state: SimulationState, deed: Deed, t: number): void {
  const isForgotten = nextUniform(state.random.hands) < (deed.forgotten ?? 0);
  const [least, most] = deed.late ?? [0, 0];
  const lateMs = Math.round(1000 * (least + (most - least) * nextUniform(state.random.hands)));
  for (const act of deed.acts) {
    const mark = perform(state, act, t);
    if (mark !== null && !isForgotten) typeDeed(state, deed, mark, t, lateMs);
  }
}

/** Chance is drawn only where the deed asks for it, so that a deed without such slips stays as it was. */
function typeDeed(state: SimulationState, { misread, doubled }: Deed, mark: Mark, t: number, lateMs: number): void {
  const isWrong = misread !== undefined && nextUniform(state.random.hands) < misread.share;
  const typed = isWrong ? timesFactor(mark, misread.factor) : mark;
  typeIn(state, typed, t, lateMs);
  if (doubled === undefined || nextUniform(state.random.hands) >= doubled) return;
  const againMs = 1000 * Math.round(10 + 50 * nextUniform(state.random.hands));
  typeIn(state, typed, t, lateMs + againMs);
}

function timesFactor(mark: Mark, factor: number): Mark {
  if (mark.kind === 'depth') return { ...mark, mm: Math.round(mark.mm * factor) };
  const hasLitres = mark.kind === 'top-up' || mark.kind === 'transfer' || mark.kind === 'draw-off';
  return hasLitres && mark.litres !== undefined ? { ...mark, litres: mark.litres * factor } : mark;
}

function typeIn(state: SimulationState, mark: Mark, t: number, lateMs: number): void {
  const happened = lateMs > 0 ? { happened: t } : {};
  state.marksMade += 1;
  const id = mark.id ?? `${SIMULATED_HAND}${state.marksMade}`;
  state.pending.push({ t: t + lateMs, mark: { ...mark, id, ...happened } });
}
