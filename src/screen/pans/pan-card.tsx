// One pan at a glance: the number that matters, the bar, the forecast and the facts.
import type { JSX } from 'preact';
import { formatStrength } from '../../core/quantities/format.ts';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { settings } from '../client/store.ts';
import type { AlarmView, Limits, Now, Reading } from '../client/types.ts';
import { depth, signedRate, signedRise, temperature, volume } from '../words/amounts.ts';
import { inOrder, priorityWord } from '../words/alarm-words.ts';
import { timeOfDay } from '../words/clock.ts';
import { isDoubtful, notKnownYet, panName, probeWords, stageWords } from '../words/pan-words.ts';
import { forecastWords } from './forecast-words.ts';
import { PanBar } from './pan-bar.tsx';

/** The rise over water where it is known, else the bare temperature, each with its caption. */
function BigNumber({ reading }: { reading: Reading }): JSX.Element {
  const shown = settings.value;
  const { rise_c: rise, temperature_c: celsius } = reading;
  const exact = celsius === null ? null : temperature(celsius, shown);
  if (rise !== null && exact !== null) {
    return (
      <>
        <p class="big">{signedRise(rise, shown)}<small>°</small></p>
        <p class="caption">{rise < 0 ? 'under' : 'over'} boiling water <b>{exact}</b></p>
      </>
    );
  }
  return (
    <>
      <p class="big">{exact === null ? '–' : exact.replace(/\s.*/u, '')}<small>{exact === null ? '' : '°'}</small></p>
      <p class="caption">{exact === null ? 'temperature not known' : 'in the pan'}</p>
    </>
  );
}

function Facts({ now, reading }: { now: Now; reading: Reading }): JSX.Element {
  const shown = settings.value;
  const { rate_c_per_min: rate, brix, brix_low: low, brix_high: high, litres, depth_mm: mm, top_up_in_s: topUp } = reading;
  const inPan = [litres === null ? null : volume(litres, shown), mm === null ? null : `${depth(mm, shown)} deep`];
  return (
    <dl class="facts">
      {brix !== null && <div><dt>Strength</dt><dd>{formatStrength(brix, low, high)}{rangeOf(brix, low, high)}</dd></div>}
      {litres !== null && <div><dt>In the pan</dt><dd>{inPan.filter((part) => part !== null).join(', ')}</dd></div>}
      {rate !== null && <div><dt>Going</dt><dd>{signedRate(rate, shown)}</dd></div>}
      {topUp !== null && topUp < 4 * 3600 && <div><dt>Top up by</dt><dd>{timeOfDay(now, now.t + topUp * 1000)}</dd></div>}
    </dl>
  );
}

/** The middle 80 % in small print, unless the strength itself is already printed as a range. */
function rangeOf(brix: number, low: number | null, high: number | null): JSX.Element | null {
  if (low === null || high === null || high - low > 10 || high - low < 0.2) return null;
  const digits = high - low <= 2 ? 1 : 0;
  if (low.toFixed(digits) === high.toFixed(digits) || brix < low || brix > high) return null;
  return <small> {low.toFixed(digits)}–{high.toFixed(digits)}</small>;
}

function NotKnown({ reading }: { reading: Reading }): JSX.Element | null {
  const [first, ...rest] = notKnownYet(reading);
  if (first === undefined) return null;
  const others = rest.length === 0 ? '' : ` (and ${rest.map((each) => each.what).join(', ')})`;
  return <p class="not-known">Not known yet: {first.what}{others}. {first.how}.</p>;
}

interface PanCardProps {
  now: Now;
  reading: Reading;
  limits: Limits;
  alarms: AlarmView[];
  selected: boolean;
  /** The key that chooses this pan. */
  letter: string;
  select: () => void;
}

export function PanCard({ now, reading, limits, alarms, selected, letter, select }: PanCardProps): JSX.Element {
  const name = panName(now.header, reading.pan);
  const worst = inOrder(alarms).find((alarm) => alarm.condition === 'active');
  const forecast = forecastWords(now, reading);
  return (
    <article class={`card${selected ? ' card-selected' : ''}${worst === undefined ? '' : ` card-${worst.priority}`}`} data-pan={reading.pan}>
      <button type="button" class="card-name" aria-pressed={selected} aria-keyshortcuts={letter} onClick={select}>
        <kbd aria-hidden="true">{letter}</kbd> <b>{name}</b>
        <span class="stage">{stageWords(reading.stage)}</span>
      </button>
      {worst !== undefined && (
        <p class={`card-alarm alarm-word-${worst.priority}`}>
          <AlarmShape priority={worst.priority} flashes={!worst.answered} />
          <b>{priorityWord(worst.priority)}:</b> {worst.title}
        </p>
      )}
      <BigNumber reading={reading} />
      <PanBar reading={reading} limits={limits} />
      {forecast !== null && (
        <p class="forecast"><b>{forecast.headline}</b> {forecast.range !== null && <span>{forecast.range}</span>}</p>
      )}
      <Facts now={now} reading={reading} />
      <NotKnown reading={reading} />
      <p class={isDoubtful(reading.probe) ? 'probe probe-doubtful' : 'probe'}>{probeWords(reading.probe)}</p>
    </article>
  );
}
