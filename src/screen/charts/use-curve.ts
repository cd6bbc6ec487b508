// Keeps a pan's whole curve in the page: asks the host for what is new, again and again, and never twice for the rest.
import { useEffect, useRef, useState } from 'preact/hooks';
import { ask } from '../client/store.ts';
import type { Curve, Now } from '../client/types.ts';
import { CurvePyramid } from './curve-pyramid.ts';
import { takenBackOf, withoutTakenBack } from './taken-back.ts';

/** Asked for at once: as many rows of two seconds as the host hands out at most. */
const STRETCH_MS = 2 * 3_600_000;
const MOST_POINTS = 4000;
/** The last row may have grown since it was asked for. */
const AGAIN_MS = 4000;
const REFRESH_MS = 3000;
/** A replay can run through half an hour in that time, and its curve grows as fast as its clock. */
const REPLAY_REFRESH_MS = 500;

/** How often a chart of the live boil or of a replay is brought up to date, ms. */
export const refreshMs = (view: Now['view']): number => (view === 'replay' ? REPLAY_REFRESH_MS : REFRESH_MS);

export interface KeptCurve {
  pyramid: CurvePyramid;
  /** What is expected from now on, as last asked. */
  ahead: Curve['ahead'];
  /** Grows with each answer. */
  stamp: number;
}

/** Reads a curve on, stretch by stretch. */
class CurveReader {
  readonly pyramid = new CurvePyramid();
  readonly #pan: string;
  /** Up to here it was asked for, ms. */
  #reached = 0;
  #shownT = 0;

  constructor(pan: string) {
    this.#pan = pan;
  }

  /** The next stretch up to now; `isBehind` where there is more. */
  async next(now: Now): Promise<{ ahead: Curve['ahead']; isBehind: boolean }> {
    // A replay that went back hands out less than was asked for meanwhile.
    if (now.t < this.#shownT) this.#reached = Math.min(this.#reached, this.pyramid.lastT ?? 0);
    this.#shownT = now.t;
    const from = Math.max(0, this.#reached - AGAIN_MS);
    const to = Math.min(Math.max(Math.ceil(now.t), from), from + STRETCH_MS);
    const wish = { view: now.view, pan: this.#pan, from, to, points: MOST_POINTS };
    const curve = (await ask({ curve: wish })) as Curve;
    this.pyramid.append(withoutTakenBack(curve, takenBackOf(now, this.#pan)));
    this.#reached = Math.max(this.#reached, to);
    return { ahead: curve.ahead, isBehind: this.#reached < Math.floor(now.t) };
  }
}

/** The curve of one pan of one boil, and of one choice of settings where those of a replay are others. */
export function useCurve(now: Now, pan: string): KeptCurve | null {
  const latest = useRef(now);
  latest.current = now;
  const [kept, setKept] = useState<KeptCurve | null>(null);
  const choices = JSON.stringify(now.replay?.choices ?? null);
  // What was taken back since the curve was read stands in it: it is read anew.
  const takenBack = JSON.stringify(takenBackOf(now, pan));
  useEffect(() => {
    const reader = new CurveReader(pan);
    let isShown = true;
    let timer: ReturnType<typeof setTimeout> | undefined;
    async function goOn(): Promise<void> {
      let pause = refreshMs(latest.current.view);
      try {
        const { ahead, isBehind } = await reader.next(latest.current);
        if (isBehind) pause = 0;
        // The stretch that is looked at is the last one: until it is there nothing would be seen of the others.
        else if (isShown) setKept((before) => ({ pyramid: reader.pyramid, ahead, stamp: (before?.stamp ?? 0) + 1 }));
      } catch {
        // The connection's own banner says it; what is drawn stays.
      }
      if (isShown) timer = setTimeout(() => void goOn(), pause);
    }
    void goOn();
    return () => {
      isShown = false;
      clearTimeout(timer);
    };
  }, [pan, now.view, now.boil, choices, takenBack]);
  return kept;
}
