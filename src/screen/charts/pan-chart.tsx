// One pan's chart: draws the stretch that is shown from the whole curve that the page keeps, and takes drag, wheel and keys.
import type { JSX } from 'preact';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { isFirstPour } from '../../protocol/first-pour.ts';
import type { Ghost } from '../../protocol/compare-messages.ts';
import { settings } from '../client/store.ts';
import type { MarkView, Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { KeyButton } from '../shell/key-button.tsx';
import { celsiusShown } from '../words/amounts.ts';
import { fromTo, hoursAndMinutes, wallMs } from '../words/clock.ts';
import { ghostWords } from '../words/compare-words.ts';
import { kindWords, panOfMark } from '../words/mark-words.ts';
import { panName } from '../words/pan-words.ts';
import { correctionsOf, CorrectionMarkers, stepsOf, ToldCorrection } from './correction-marks.tsx';
import { curveChart } from './curve-chart.ts';
import type { CurveChart } from './curve-chart.ts';
import type { CallSign, Flag } from './drawing.ts';
import { curvePoints } from './curve-points.ts';
import type { CurvePoints, Point } from './curve-points.ts';
import { watchGestures } from './gestures.ts';
import { handDots } from './hand-dots.ts';
import type { Spot } from './label-places.ts';
import { shownCorrection } from './shown-correction.ts';
import { followed, lastHour, moved, shownAhead, wholeBoil, zoomed } from './time-window.ts';
import type { TimeWindow } from './time-window.ts';
import { showsGhost, useGhost } from './use-ghost.ts';
import { refreshMs, useCurve } from './use-curve.ts';
import type { KeptCurve } from './use-curve.ts';

/** Rows of the curve for each px of the chart: its lines are wider than that. */
const ROWS_PER_PX = 0.5;
const KEY_STEP = 0.25;
const KEY_ZOOM = 1.5;

type Span = 'hour' | 'whole' | 'free';

const windowOf = (span: 'hour' | 'whole', now: number, ahead: number, isOver: boolean): TimeWindow =>
  span === 'hour' ? lastHour(now, ahead, isOver) : wholeBoil(now + ahead, isOver);

const flagWord = (each: MarkView, { marks }: Now): string =>
  each.mark.kind === 'flame' && each.mark.level === 0
    ? say('chart.flame_off')
    : kindWords(each.mark.kind, isFirstPour(each, marks));

function flagsOf(now: Now, pan: string): Flag[] {
  return now.marks
    .filter((each) => !each.withdrawn && (panOfMark(each.mark) === pan || ('to' in each.mark && each.mark.to === pan)))
    .map((each) => ({ x: each.at, word: flagWord(each, now) }))
    .sort((a, b) => a.x - b.x);
}

function callsOf(now: Now, pan: string): CallSign[] {
  return now.history.raisings.flatMap((each) =>
    each.pan === pan && each.raisedAt <= now.t ? [{ x: each.raisedAt, priority: each.priority }] : [],
  );
}

/** Sea level, and how far over it maple is done, °C: for where nobody knows better. */
const SEA_LEVEL_C = 100;
const DONE_OVER_C = 4;

/** Where water boils and where the pan is done, °C. */
function usualOf({ readings, limits }: Now, pan: string): number[] {
  const water = readings.find((each) => each.pan === pan)?.water_c ?? SEA_LEVEL_C;
  return [water, limits.find((each) => each.pan === pan)?.finish_c ?? water + DONE_OVER_C];
}

/** What lies in a window as far as it is there at the moment that is shown, in the units that a person chose. */
function pointsOf(
  { pyramid, ahead }: KeptCurve,
  now: Now,
  pan: string,
  { from, to }: TimeWindow,
  width: number,
): CurvePoints {
  const rows = Math.max(60, Math.round(width * ROWS_PER_PX));
  const seen = pyramid.between(Math.max(0, from), Math.min(to, now.t), rows);
  return curvePoints({ pan, ...seen, ahead }, (celsius) => celsiusShown(celsius, settings.value));
}

function ghostPoints({ t, celsius }: Ghost): Point[] {
  return t.map((x, i) => {
    const value = celsius[i] ?? null;
    return { x, y: value === null ? null : celsiusShown(value, settings.value) };
  });
}

/** Whether the best past boil is drawn, too; nothing where there is none. */
function GhostButton({ ghost, now }: { ghost: Ghost | null; now: Now }): JSX.Element | null {
  if (now.view !== 'live' || now.ended || (ghost === null && showsGhost.value)) return null;
  return (
    <KeyButton letter="G" pressed={showsGhost.value} act={() => (showsGhost.value = !showsGhost.value)}>
      {say('chart.best_past')}
    </KeyButton>
  );
}

interface PanChartProps {
  now: Now;
  pan: string;
  /** Nothing comes after now, whether or not somebody ended the boil. */
  isOver?: boolean;
}

/** The chart with its buttons. */
export function PanChart({ now, pan, isOver = now.ended }: PanChartProps): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<CurveChart | null>(null);
  const latest = useRef(now);
  latest.current = now;
  const [span, setSpan] = useState<Span>(isOver ? 'whole' : 'hour');
  const [shown, setShown] = useState<TimeWindow>(() => windowOf(isOver ? 'whole' : 'hour', now.t, 0, isOver));
  const curve = useCurve(now, pan);
  const ghost = useGhost(now, pan);
  const [spots, setSpots] = useState<(Spot | null)[]>([]);
  // They stay while the chart is dragged, which draws sixty times a second.
  const corrections = useMemo(() => correctionsOf(now, pan), [now, pan, settings.value]);
  const told = shownCorrection.value;

  const ahead = shownAhead(now.t, curve?.ahead?.t.at(-1) ?? null);
  const latestAhead = useRef(ahead);
  const over = useRef(isOver);
  over.current = isOver;
  latestAhead.current = ahead;

  const change = (make: (before: TimeWindow, end: number) => TimeWindow): void => {
    setSpan('free');
    setShown((before) => make(before, latest.current.t + latestAhead.current));
  };
  const choose = (next: 'hour' | 'whole'): void => {
    setSpan(next);
    setShown(windowOf(next, latest.current.t, latestAhead.current, isOver));
  };

  useLayoutEffect(() => {
    const element = canvas.current;
    if (element === null) return;
    // The same places again are no news, so that a drawing asks for no other.
    chart.current = curveChart(element, (next) =>
      setSpots((before) => (JSON.stringify(before) === JSON.stringify(next) ? before : next)),
    );
    const stop = watchGestures(element, {
      move: (share) => change((before, end) => moved(before, share, end, over.current)),
      zoom: (factor, anchor) => change((before, end) => zoomed(before, factor, anchor, end, over.current)),
    });
    return () => {
      stop();
      chart.current?.destroy();
    };
  }, []);

  useEffect(() => {
    const timer = setInterval(() => {
      const [end, more] = [latest.current.t, latestAhead.current];
      setShown((before) => (span === 'free' ? followed(before, end + more, false) : windowOf(span, end, more, isOver)));
    }, refreshMs(now.view));
    return () => clearInterval(timer);
  }, [span, now.view, isOver]);

  // The first answer tells how far ahead there is to show.
  const isAhead = ahead > 0;
  useEffect(() => {
    if (span !== 'free') setShown(windowOf(span, latest.current.t, latestAhead.current, isOver));
  }, [isAhead, isOver]);

  // Drawn before the page is shown again, so that the curve stays under the finger that drags it.
  useLayoutEffect(() => {
    if (curve === null) return;
    chart.current?.draw({
      points: pointsOf(curve, now, pan, shown, canvas.current?.clientWidth ?? 800),
      from: shown.from,
      to: shown.to,
      now: now.t,
      flags: flagsOf(now, pan),
      calls: callsOf(now, pan),
      wallOffsetMs: wallMs(now, 0),
      usual: usualOf(now, pan).map((celsius) => celsiusShown(celsius, settings.value)),
      dots: handDots(now, pan).map(({ x, y }) => ({ x, y: celsiusShown(y, settings.value) })),
      steps: stepsOf(corrections, told),
      ghost: ghost === null ? null : ghostPoints(ghost),
      unit: `°${settings.value.temperature}`,
    });
  }, [
    curve?.stamp,
    ghost,
    shown,
    now.marks.length,
    now.history.raisings.length,
    corrections.length,
    told,
    settings.value,
  ]);

  // A correction that is chosen in the list of marks may lie outside of what is shown.
  const toldAt = corrections.find(({ key }) => key === told)?.correction.t ?? null;
  useEffect(() => {
    if (toldAt !== null && (toldAt < shown.from || toldAt > shown.to)) choose('whole');
  }, [toldAt]);

  function onKeyDown(event: KeyboardEvent): void {
    const acts: Record<string, () => void> = {
      '+': () => change((before, end) => zoomed(before, 1 / KEY_ZOOM, 0.5, end, isOver)),
      '=': () => change((before, end) => zoomed(before, 1 / KEY_ZOOM, 0.5, end, isOver)),
      '-': () => change((before, end) => zoomed(before, KEY_ZOOM, 0.5, end, isOver)),
      ArrowLeft: () => change((before, end) => moved(before, -KEY_STEP, end, isOver)),
      ArrowRight: () => change((before, end) => moved(before, KEY_STEP, end, isOver)),
      '0': () => choose('hour'),
    };
    const act = acts[event.key];
    if (act === undefined || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    act();
  }

  // A boil by hand may have notes and no reading: an empty picture without a word looks broken.
  const isEmpty =
    curve !== null &&
    curve.ahead === null &&
    handDots(now, pan).length === 0 &&
    curve.pyramid.between(Math.max(0, shown.from), Math.min(shown.to, now.t), 60).low.every((low) => low === null);
  const edges = fromTo(hoursAndMinutes(wallMs(now, shown.from)), hoursAndMinutes(wallMs(now, shown.to)));
  return (
    <section class="chart" aria-label={say('chart.curve_of', { pan: panName(now.header, pan) })}>
      <div class="chart-head">
        <h2 class="chart-edges">{say('chart.head', { pan: panName(now.header, pan), edges })}</h2>
        <GhostButton ghost={ghost} now={now} />
        <button type="button" aria-pressed={span === 'hour'} onClick={() => choose('hour')}>
          {say('chart.last_hour')}
        </button>
        <button type="button" aria-pressed={span === 'whole'} onClick={() => choose('whole')}>
          {say('chart.whole')}
        </button>
        <button
          type="button"
          aria-label={say('chart.closer')}
          onClick={() => change((before, end) => zoomed(before, 1 / KEY_ZOOM, 0.5, end, isOver))}
        >
          +
        </button>
        <button
          type="button"
          aria-label={say('chart.wider')}
          onClick={() => change((before, end) => zoomed(before, KEY_ZOOM, 0.5, end, isOver))}
        >
          −
        </button>
      </div>
      <div class="chart-frame">
        <div
          class="chart-area"
          tabIndex={0}
          role="img"
          data-from={Math.round(shown.from)}
          data-to={Math.round(shown.to)}
          aria-label={say('chart.sentence', { pan: panName(now.header, pan), edges })}
          onKeyDown={onKeyDown}
        >
          <canvas ref={canvas} />
        </div>
        <CorrectionMarkers corrections={corrections} spots={spots} now={now} />
      </div>
      {isEmpty && <p>{say('chart.no_temperature')}</p>}
      <p class="hint screen-only">{say('chart.zoom_hint')}</p>
      {ghost !== null && <p class="hint ghost-words">{ghostWords(ghost)}</p>}
      <ToldCorrection corrections={corrections} now={now} />
    </section>
  );
}
