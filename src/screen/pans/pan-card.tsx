// One pan at a glance: the number that matters, the bar, the forecast and the facts.
import type { JSX } from 'preact';
import { isBurnt } from '../../core/quantities/burnt.ts';
import { foremost } from '../../protocol/alarm-titles.ts';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { settings } from '../client/store.ts';
import type { Advice, AlarmView, Limits, Now, Reading, Settings } from '../client/types.ts';
import { Tell } from '../explain/tell.tsx';
import {
  depth,
  isUnderWater,
  signedRate,
  signedRise,
  strength,
  strengthEnds,
  temperature,
  volume,
} from '../words/amounts.ts';
import { roomWords, shallowWords } from '../words/advice-words.ts';
import { inOrder, isAside, priorityWord } from '../words/alarm-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { ago, timeOfDay } from '../words/clock.ts';
import { isDoubtful, panName, probeWords, stageWords } from '../words/pan-words.ts';
import { BigText } from './big-text.tsx';
import { forecastWords } from './forecast-words.ts';
import { NotKnown } from './not-known.tsx';
import { PanBar } from './pan-bar.tsx';
import { PouredQuestion } from './poured-question.tsx';

/** The rise over water where it is known and the pan is on the fire, else the bare temperature, each with its caption. */
function BigNumber({ reading }: { reading: Reading }): JSX.Element {
  const shown = settings.value;
  const { rise_c: rise, temperature_c: celsius } = reading;
  const exact = celsius === null ? null : temperature(celsius, shown);
  // A pan off the fire is as warm as it is: how far that is from a boil says nothing any more.
  if (rise !== null && exact !== null && reading.stage !== 'off') {
    return (
      <>
        <BigText>
          <Tell pan={reading.pan} what="rise">
            {signedRise(rise, shown)}
            <small>°</small>
          </Tell>
        </BigText>
        <p class="caption">
          {isUnderWater(rise, shown) ? say('pans.under_water') : say('pans.over_water')}{' '}
          <b>
            <Tell pan={reading.pan} what="temperature">
              {exact}
            </Tell>
          </b>
        </p>
      </>
    );
  }
  return (
    <>
      <BigText>
        {exact === null ? (
          '–'
        ) : (
          <Tell pan={reading.pan} what="temperature">
            {exact.replace(/\s.*/u, '')}
            <small>°{shown.temperature}</small>
          </Tell>
        )}
      </BigText>
      <p class="caption">{exact === null ? say('pans.temperature_unknown') : say('pans.in_the_pan')}</p>
    </>
  );
}

function Facts({ now, reading, advice }: { now: Now; reading: Reading; advice: Advice | null }): JSX.Element {
  const shown = settings.value;
  const room = advice === null ? null : roomWords(advice, shown);
  const { pan, rate_c_per_min: rate, brix, litres, depth_mm: mm, top_up_in_s: topUp } = reading;
  return (
    <dl class="facts">
      {brix !== null && (
        <div>
          <dt>{say('pans.strength')}</dt>
          <dd>
            <Tell pan={pan} what="strength">
              {strength(brix, reading.brix_low, reading.brix_high, shown)}
              {rangeOf(reading, shown)}
            </Tell>
          </dd>
        </div>
      )}
      {litres !== null && (
        <div>
          <dt>{say('pans.in_pan')}</dt>
          <dd>
            <Tell pan={pan} what="litres">
              {volume(litres, shown)}
            </Tell>
            {mm !== null && (
              <>
                ,{' '}
                <Tell pan={pan} what="depth">
                  {say('pans.deep', { depth: depth(mm, shown) })}
                </Tell>
              </>
            )}
          </dd>
        </div>
      )}
      {rate !== null && (
        <div>
          <dt>{say('pans.climbs')}</dt>
          <dd>
            <Tell pan={pan} what="rate">
              {signedRate(rate, shown)}
            </Tell>
          </dd>
        </div>
      )}
      {topUp !== null && topUp < 4 * 3600 && (
        <div>
          <dt>{say('pans.top_up_by')}</dt>
          <dd>
            <Tell pan={pan} what="top-up">
              {timeOfDay(now, now.t + topUp * 1000)}
            </Tell>
            {room !== null && <small> {room}</small>}
          </dd>
        </div>
      )}
    </dl>
  );
}

/** The middle 80 % in small print, unless the strength itself is already printed as a range. */
function rangeOf({ brix, brix_low: low, brix_high: high }: Reading, shown: Settings): JSX.Element | null {
  if (brix === null || low === null || high === null || high - low > 10 || high - low < 0.2) return null;
  const [least, most] = strengthEnds(low, high, shown);
  if (least === most || brix < low || brix > high) return null;
  return (
    <small>
      {' '}
      {least}–{most}
    </small>
  );
}

/** How old the youngest reading of the pan's probes is. */
function lastHeard(now: Now, pan: string): string {
  const ages = now.probes.flatMap((probe) =>
    probe.pan === pan && probe.ageSeconds !== null ? [probe.ageSeconds] : [],
  );
  return ages.length === 0 ? '' : say('pans.last_heard', { ago: ago(Math.min(...ages)) });
}

/** When the pan's thermometer was last read, for a pan without a probe; null where nobody has read one. */
function readByHand(now: Now, reading: Reading): string | null {
  if (reading.probe !== null) return null;
  const last = now.marks
    .filter((each) => each.mark.kind === 'reading' && each.mark.pan === reading.pan && !each.withdrawn)
    .reduce<number | null>((latest, { at }) => (latest === null || at > latest ? at : latest), null);
  return last === null ? null : say('pans.read', { time: timeOfDay(now, last), ago: ago((now.t - last) / 1000) });
}

/** What was put aside is still so, and is said without its colour. */
function AsideLine({ now, alarm }: { now: Now; alarm: AlarmView }): JSX.Element {
  const until = timeOfDay(now, alarm.asideUntil ?? now.t);
  return <p class="card-aside">{say('pans.aside', { time: until, title: hostWords(alarm.title) })}</p>;
}

interface PanCardProps {
  now: Now;
  reading: Reading;
  limits: Limits;
  alarms: AlarmView[];
  selected: boolean;
  canMark: boolean;
  /** The key that chooses this pan. */
  letter: string;
  select: () => void;
}

export function PanCard({
  now,
  reading,
  limits,
  alarms,
  selected,
  canMark,
  letter,
  select,
}: PanCardProps): JSX.Element {
  const name = panName(now.header, reading.pan);
  const active = inOrder(alarms).filter((alarm) => alarm.condition === 'active');
  const standing = active.filter((alarm) => !isAside(alarm));
  const worst = foremost(standing);
  const away = active.find(isAside);
  // Of burnt sugar nothing is forecast, and no measurement would help.
  const burnt = isBurnt(reading.temperature_c);
  const forecast = burnt ? null : forecastWords(now, reading);
  const advice = now.advice.find((each) => each.pan === reading.pan) ?? null;
  return (
    <article
      class={`card${selected ? ' card-selected' : ''}${reading.stage === 'off' ? ' card-off' : ''}${worst === undefined ? '' : ` card-${worst.priority}`}`}
      data-pan={reading.pan}
    >
      <button
        type="button"
        class={`card-name${worst === undefined ? '' : ` alarm-word-${worst.priority}`}`}
        aria-pressed={selected}
        aria-keyshortcuts={letter}
        onClick={select}
      >
        <kbd aria-hidden="true">{letter}</kbd> <b>{name}</b>
        {worst === undefined ? (
          <span class="stage">{stageWords(reading.stage)}</span>
        ) : (
          <span class="stage">
            <AlarmShape priority={worst.priority} flashes={!worst.answered} /> <b>{priorityWord(worst.priority)}</b>
          </span>
        )}
      </button>
      <BigNumber reading={reading} />
      <PanBar reading={reading} limits={limits} />
      {worst !== undefined && <p class="card-alarm">{hostWords(worst.title)}</p>}
      {away !== undefined && <AsideLine now={now} alarm={away} />}
      {forecast !== null && (
        <p class="forecast">
          {reading.finish_in_s === null ? (
            <b>{forecast.headline}</b>
          ) : (
            <Tell pan={reading.pan} what="finish">
              <b>{forecast.headline}</b> {forecast.range !== null && <span>{forecast.range}</span>}
            </Tell>
          )}
        </p>
      )}
      {burnt && <p class="advice">{say('pan.burnt')}</p>}
      {reading.stage !== 'off' && !burnt && <Facts now={now} reading={reading} advice={advice} />}
      <PouredQuestion now={now} pan={reading.pan} canMark={canMark} />
      {advice !== null && advice.shallow !== null && !burnt && (
        <p class="advice">{shallowWords(now, advice.shallow, settings.value)}</p>
      )}
      {reading.stage !== 'off' && !burnt && <NotKnown reading={reading} ask={advice?.ask ?? null} canMark={canMark} />}
      <p class={isDoubtful(reading.probe) ? 'probe probe-doubtful' : 'probe'}>
        <span>
          {readByHand(now, reading) ?? probeWords(reading.probe)}
          {isDoubtful(reading.probe) && lastHeard(now, reading.pan)}
        </span>
        {worst !== undefined && <span>{stageWords(reading.stage)}</span>}
      </p>
    </article>
  );
}
