// A past boil as it was and as it would have been: both lines in one chart, and the difference of each call in words.
import type { JSX } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Call, PanStrip, ReplayDifferences } from '../../protocol/replay-messages.ts';
import { LineKey, LinesChart } from '../charts/lines-chart.tsx';
import type { ChartLine } from '../charts/lines-chart.tsx';
import { tickMoments } from '../charts/time-window.ts';
import { ask, settings } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { FirstFew } from '../shell/first-few.tsx';
import { strengthShown, unitSymbols } from '../words/amounts.ts';
import { hoursAndMinutes, timeOfDay, wallMs } from '../words/clock.ts';
import { panName } from '../words/pan-words.ts';
import { differenceWords } from '../words/replay-words.ts';
import { savedWords } from '../words/saved-words.ts';
import { seek } from './replay-control.ts';
import { say } from '../language/say.ts';

const POINTS = 600;
const SHOWN_FIRST = 8;

function useDifferences(now: Now): ReplayDifferences | null {
  const [found, setFound] = useState<ReplayDifferences | null>(null);
  const choices = JSON.stringify(now.replay?.choices ?? null);
  useEffect(() => {
    let isShown = true;
    ask({ replay_differences: { points: POINTS } }).then(
      (data) => isShown && setFound(data as ReplayDifferences),
      () => undefined, // Taken away meanwhile: the panel goes, too.
    );
    return () => void (isShown = false);
  }, [now.boil, choices, now.replay?.readUntil]);
  return found;
}

/** Strengths over the wall clock; where it is read no further, the line ends. */
function lineOf(strip: PanStrip | null, columnMs: number, now: Now, name: string, stroke: number): ChartLine {
  const points = (strip?.brix ?? []).map((brix, i) => ({
    x: wallMs(now, (i + 1) * columnMs),
    y: brix === null ? null : strengthShown(brix, settings.value),
  }));
  return { name, stroke, points };
}

const marksOf = (calls: readonly Call[], pan: string, now: Now) =>
  calls.flatMap((call) => (call.pan === pan ? [{ x: wallMs(now, call.raised), priority: call.priority }] : []));

const clockTicks = ({ least, greatest }: { least: number; greatest: number }, most: number) =>
  tickMoments(least, greatest, most).map((at) => ({ at, word: hoursAndMinutes(at) }));

export function DifferencesPanel({ now, pan }: { now: Now; pan: string }): JSX.Element {
  const latest = useDifferences(now);
  const drawn = useRef<ReplayDifferences | null>(null);
  if (latest !== null && latest.readUntil > 0) drawn.current = latest;
  const found = drawn.current;
  // What was drawn before stays, pale, while other choices are read: nothing jumps away under the eyes.
  const isBeingRead = latest === null || latest.readUntil === 0;
  if (found === null) return <p role="status">{say('replay.than.reading')}</p>;
  const strips = found.pans.find((each) => each.pan === pan) ?? null;
  const lines = [
    lineOf(strips?.was ?? null, found.columnMs, now, say('replay.than.believed'), 0),
    lineOf(strips?.would ?? null, found.columnMs, now, say('replay.than.other'), 1),
  ];
  const isWhole = !isBeingRead && found.readUntil >= found.length;
  const saved = savedWords(found, pan, now);
  return (
    <div class={isBeingRead ? 'being-read' : undefined} aria-busy={isBeingRead}>
      {!isWhole && (
        <p role="status">
          {isBeingRead
            ? say('replay.than.reading')
            : say('replay.than.read_until', { time: timeOfDay(now, found.readUntil) })}
        </p>
      )}
      {isWhole && saved !== null && <p class="saved">{saved}</p>}
      <LinesChart
        sentence={say('replay.than.sentence', { pan: panName(now.header, pan) })}
        lines={lines}
        yTitle={`${panName(now.header, pan)}, ${unitSymbols(settings.value).strength}`}
        xTitle={say('compare.by.clock')}
        xTicks={clockTicks}
        rows={[
          { word: say('replay.than.called'), marks: marksOf(found.calls.was, pan, now) },
          { word: say('replay.than.would'), marks: marksOf(found.calls.would, pan, now) },
        ]}
        height={400}
      />
      <LineKey lines={lines} />
      <h3>{say('replay.than.otherwise')}</h3>
      {found.differences.length === 0 ? (
        <p>{isWhole ? say('replay.than.nothing') : say('replay.than.still_read')}</p>
      ) : (
        <FirstFew
          items={found.differences}
          shown={SHOWN_FIRST}
          rest={(count) => say('replay.more', { count })}
          row={(each, i) => (
            <li key={i}>
              <button type="button" class="moment" onClick={() => seek(now, each.was ?? each.would ?? 0)}>
                {timeOfDay(now, each.was ?? each.would ?? 0)}
              </button>{' '}
              {differenceWords(each, now)}
            </li>
          )}
        />
      )}
      {isWhole && (
        <p class="hint">
          {say('replay.than.counts', { was: found.calls.was.length, would: found.calls.would.length })}
        </p>
      )}
    </div>
  );
}
