// The whole boil at a glance: its lines, alarms and marks over time, with the moment that is shown to be dragged along it.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { ReplayStrip } from '../../protocol/replay-messages.ts';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { tickMoments } from '../charts/time-window.ts';
import type { Now } from '../client/types.ts';
import { selectedPan } from '../pans/selected-pan.ts';
import { useWidth } from '../shell/use-width.ts';
import { hoursAndMinutes, timeOfDay, wallMs } from '../words/clock.ts';
import { panName } from '../words/pan-words.ts';
import { seek, seekBy } from './replay-control.ts';
import { useStrip } from './strip-data.ts';
import { clustersOf, pathOf, scaleOf, snapped } from './strip-shapes.ts';
import type { StripLine } from './strip-shapes.ts';
import { say } from '../language/say.ts';

const LINES_PX = 62;
/** Symbols nearer than this are one, px: a symbol is 24 wide, and the count at its corner wants room, too. */
const APART_PX = 36;
const SNAP_PX = 9;
const TICK_PX = 90;
/** A drag asks for a new moment so often at most. */
const DRAG_EVERY_MS = 120;
const SECOND_MS = 1000;
/** How far a key goes, ms of boil time. */
const STEPS: Record<string, number> = {
  ArrowLeft: -10 * SECOND_MS,
  ArrowDown: -10 * SECOND_MS,
  ArrowRight: 10 * SECOND_MS,
  ArrowUp: 10 * SECOND_MS,
  PageDown: -600 * SECOND_MS,
  PageUp: 600 * SECOND_MS,
};

const at = (t: number, length: number): string => `${((100 * t) / Math.max(1, length)).toFixed(3)}%`;

interface PictureProps {
  strip: ReplayStrip;
  pan: string | null;
  line: StripLine;
  width: number;
  started: number;
}

/** A word at an edge stands inside of it. */
const edgeOf = (share: number): string | undefined =>
  share < 0.03 ? 'strip-first' : share > 0.97 ? 'strip-last' : undefined;

/** From this share of the strip on, the time beside a dragged moment has no room to its right. */
const WORDS_LEFT_FROM = 0.9;

/** All that does not move while the replay runs. */
function Picture({ strip, pan, line, width, started }: PictureProps): JSX.Element {
  const { length, readUntil, pans } = strip;
  const scale = scaleOf(pans, line);
  const columns = Math.max(1, length / strip.columnMs);
  const chosenLast = [...pans].sort((a, b) => Number(a.pan === pan) - Number(b.pan === pan));
  const apartMs = (APART_PX / Math.max(1, width)) * length;
  const ticks = tickMoments(started, started + length, Math.max(2, Math.floor(width / TICK_PX)));
  return (
    <>
      <span class="strip-alarms">
        {clustersOf(strip.calls, apartMs).map(({ at: t, priority, calls }) => (
          <span key={t} class="strip-alarm" style={{ left: at(t, length) }}>
            <AlarmShape priority={priority} flashes={false} />
            {calls.length > 1 && <b>{calls.length}</b>}
          </span>
        ))}
      </span>
      <svg class="strip-lines" viewBox={`0 0 ${columns} ${LINES_PX}`} preserveAspectRatio="none">
        {strip.gaps.map(({ from, to }) => (
          <rect
            key={from}
            class="strip-gap"
            x={from / strip.columnMs}
            width={(to - from) / strip.columnMs}
            height={LINES_PX}
          />
        ))}
        {scale !== null &&
          chosenLast.map((each) => (
            <g key={each.pan} class={each.pan === pan ? 'strip-chosen' : 'strip-other'}>
              {line === 'temperature' && each.pan === pan && (
                <path class="strip-finish" d={pathOf(each.finish, scale, LINES_PX)} />
              )}
              <path d={pathOf(line === 'strength' ? each.brix : each.low, scale, LINES_PX)} />
              {line === 'temperature' && <path d={pathOf(each.high, scale, LINES_PX)} />}
            </g>
          ))}
      </svg>
      <span class="strip-marks">
        {strip.marks.map(({ t }, i) => (
          <span key={i} style={{ left: at(t, length) }} />
        ))}
      </span>
      <span class="strip-hours">
        {ticks.map((wall) => (
          <span key={wall} class={edgeOf((wall - started) / length)} style={{ left: at(wall - started, length) }}>
            {hoursAndMinutes(wall)}
          </span>
        ))}
      </span>
      {readUntil < length && (
        <span class="strip-unread" style={{ left: at(readUntil, length) }}>
          {say('replay.strip.reading')}
        </span>
      )}
    </>
  );
}

/** Sends the moments of a drag on, not faster than they can be shown, and always the last. */
function usePacedSeek(now: Now): (t: number, isLast: boolean) => void {
  const latest = useRef(now);
  latest.current = now;
  const sentMs = useRef(0);
  return (t, isLast) => {
    if (!isLast && performance.now() - sentMs.current < DRAG_EVERY_MS) return;
    sentMs.current = performance.now();
    seek(latest.current, t);
  };
}

export function WholeStrip({ now, line }: { now: Now; line: StripLine }): JSX.Element {
  const strip = useStrip(now);
  const [frame, width] = useWidth(1300);
  const [dragged, setDragged] = useState<number | null>(null);
  const isHeld = useRef(false);
  const sendSeek = usePacedSeek(now);
  const length = now.replay?.length ?? now.t;
  const shown = Math.min(length, dragged ?? now.t);

  const pan = selectedPan(now);
  const started = wallMs(now, 0);
  const share = shown / Math.max(1, length);
  const drawn = say(line === 'strength' ? 'replay.strip.strength' : 'replay.strip.temperature');
  const caption = pan === null ? drawn : say('replay.strip.of_pan', { pan: panName(now.header, pan), line: drawn });
  const picture = useMemo(
    () => strip !== null && <Picture {...{ strip, pan, line, width, started }} />,
    [strip, pan, line, width, started],
  );

  const momentAt = (clientX: number): number => {
    const box = frame.current?.getBoundingClientRect();
    const share = box === undefined ? 0 : (clientX - box.left) / Math.max(1, box.width);
    return Math.min(length, Math.max(0, share * length));
  };
  const pressed = (event: PointerEvent): void => {
    const moments = [...(strip?.calls ?? []).map(({ raised }) => raised), ...(strip?.marks ?? []).map(({ t }) => t)];
    const t = snapped(momentAt(event.clientX), moments, (SNAP_PX / Math.max(1, width)) * length);
    frame.current?.setPointerCapture(event.pointerId);
    isHeld.current = true;
    setDragged(t);
    sendSeek(t, true);
  };
  const moved = (event: PointerEvent): void => {
    if (!isHeld.current) return;
    const t = momentAt(event.clientX);
    setDragged(t);
    sendSeek(t, false);
  };
  const released = (): void => {
    if (dragged === null || !isHeld.current) return;
    isHeld.current = false;
    sendSeek(dragged, true);
  };
  // What was let go stays there until the replay has come.
  useEffect(() => {
    if (!isHeld.current) setDragged(null);
  }, [now.t]);
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS[event.key];
    const isEnd = event.key === 'Home' || event.key === 'End';
    if ((step === undefined && !isEnd) || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    if (step === undefined) seek(now, event.key === 'Home' ? 0 : length);
    else seekBy(step);
  };

  return (
    <div
      class="strip"
      ref={frame}
      role="slider"
      tabIndex={0}
      aria-label={say('replay.strip.go_to')}
      aria-valuemin={0}
      aria-valuemax={Math.round(length / SECOND_MS)}
      aria-valuenow={Math.round(shown / SECOND_MS)}
      aria-valuetext={say('replay.strip.now', {
        time: timeOfDay(now, shown),
        length: lengthOfTime(shown / SECOND_MS),
      })}
      data-read={strip !== null && strip.readUntil >= strip.length ? 'whole' : 'part'}
      onPointerDown={pressed}
      onPointerMove={moved}
      onPointerUp={released}
      onPointerCancel={released}
      onKeyDown={onKeyDown}
    >
      {picture}
      <span
        class={share > WORDS_LEFT_FROM ? 'strip-now strip-now-late' : 'strip-now'}
        style={{ left: at(shown, length) }}
      >
        {dragged !== null && <b>{timeOfDay(now, dragged)}</b>}
      </span>
      {/* Last, so that the moment passes behind it; on the left, where a pan only warms up. */}
      <span class="strip-caption">{caption}</span>
    </div>
  );
}
