// One pan at a glance: the number that matters, the bar, the forecast and the facts.
import { notedStrength, plannedStrength } from '../../protocol/planned-strength.ts';
import type { JSX } from 'preact';
import { isTopUpAdvised } from '../../core/quantities/top-up-advice.ts';
import { isBurnt } from '../../core/quantities/burnt.ts';
import { foremost } from '../../protocol/alarm-titles.ts';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { settings } from '../client/store.ts';
import type { Advice, AlarmView, Limits, Now, Reading, Settings } from '../client/types.ts';
import { Tell } from '../explain/tell.tsx';
import {
  exactStrength,
  isUnderWater,
  litresShown,
  number,
  showsRise,
  signedRate,
  signedRise,
  strength,
  strengthEnds,
  temperature,
  underWater,
  volume,
} from '../words/amounts.ts';
import { depthWords, notedAndCounted } from '../words/depth-words.ts';
import { roomWords, shallowWords } from '../words/advice-words.ts';
import { inOrder, isAside, priorityWord } from '../words/alarm-words.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import { ago, timeOfDay } from '../words/clock.ts';
import { readAgo, readByHand } from '../words/hand-words.ts';
import { heatNow, lastHeat, lastHeatWords } from '../words/last-heat.ts';
import { shallowThen } from '../words/planned-sap.ts';
import {
  isAtOdds,
  firstNote,
  isDoubtful,
  isEmptied,
  isWaitedFor,
  panName,
  panNamed,
  probeLine,
  stageOf,
} from '../words/pan-words.ts';
import { strengthRestsOn } from '../words/strength-below-boil.ts';
import { BigText } from './big-text.tsx';
import { forecastWords, isPast, whyMoved } from './forecast-words.ts';
import { LeftOutLine } from './left-out-line.tsx';
import { NotKnown } from './not-known.tsx';
import { PanBar } from './pan-bar.tsx';
import { PouredQuestion } from './poured-question.tsx';

/** The rise over water where it is known and the pan boils, else the bare temperature, each with its caption. */
function BigNumber({ now, reading }: { now: Now; reading: Reading }): JSX.Element {
  const shown = settings.value;
  const { rise_c: rise, temperature_c: celsius } = reading;
  const exact = celsius === null ? null : temperature(celsius, shown);
  if (rise !== null && exact !== null && showsRise(reading)) {
    return (
      <>
        <BigText>
          <Tell pan={reading.pan} what="rise">
            {signedRise(rise, shown)}
            <small>
              °<small>{shown.temperature}</small>
            </small>
          </Tell>
        </BigText>
        <p class="caption">
          {isUnderWater(rise, shown) ? say('pans.under_water') : say('pans.over_water')}{' '}
          <b>
            <Tell pan={reading.pan} what="temperature">
              {exact}
            </Tell>
          </b>
          <ReadAgo now={now} reading={reading} />
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
      <p class={exact === null ? 'caption caption-then' : 'caption'}>
        {exact === null ? (
          firstNote(now, reading) === null &&
          (isEmptied(reading) ? say('pans.empty') : lastHeatWords(now, reading, shown))
        ) : reading.stage === 'off' ? (
          say('pans.at_probe')
        ) : rise === null ? (
          say('pans.in_the_pan')
        ) : (
          <Tell pan={reading.pan} what="rise">
            {underWater(rise, shown)}
          </Tell>
        )}
        <ReadAgo now={now} reading={reading} />
      </p>
    </>
  );
}

/** From afar a number that somebody read a while ago would look as if it were read now; near by, its line at the foot tells when it was. */
function ReadAgo({ now, reading }: { now: Now; reading: Reading }): JSX.Element | null {
  const words = readAgo(now, reading);
  return words === null ? null : <b class="read-ago"> {words}</b>;
}

interface FactsProps {
  now: Now;
  reading: Reading;
  advice: Advice | null;
  /** It is to boil on: nobody calls to take it off. */
  goesOn: boolean;
  /** When to top it up stands above them already. */
  topUpTold: boolean;
}

function Facts({ now, reading, advice, goesOn, topUpTold }: FactsProps): JSX.Element {
  const shown = settings.value;
  const roughly = advice?.litresRoughly ?? null;
  const room = advice === null ? null : roomWords(advice, shown);
  const { pan, rate_c_per_min: rate, brix, litres, depth_mm: mm, top_up_in_s: topUp } = reading;
  const planned = plannedStrength(now, reading);
  const cold = planned ?? notedStrength(now, reading);
  const restsOn = strengthRestsOn(now, reading);
  const noted = notedAndCounted(now, pan, shown);
  const isByTime = !topUpTold && goesOn && topUp !== null && topUp < 4 * 3600 && isTopUpAdvised(reading);
  return (
    <dl class="facts">
      {cold !== null && (
        <div>
          <dt>
            {say('pans.strength')} <small>{say(planned === null ? 'pans.by_pour' : 'pans.as_planned')}</small>
          </dt>
          <dd>{exactStrength(cold, shown)}</dd>
        </div>
      )}
      {brix !== null && (
        <div>
          <dt>
            {say('pans.strength')}
            {restsOn !== null && <small> {restsOn}</small>}
          </dt>
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
                  {depthWords(mm, panNamed(now.header, pan), shown)}
                </Tell>
              </>
            )}
            {noted !== null && <small> ({noted})</small>}
          </dd>
        </div>
      )}
      {litres === null && roughly !== null && (
        <div>
          <dt>{say('pans.in_pan')}</dt>
          <dd>
            {say('pans.litres_roughly', {
              low: number(litresShown(roughly.low, shown), 1),
              high: volume(roughly.high, shown, 1),
            })}
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
      {isByTime && (
        <div>
          <dt class="one-line">{say('pans.top_up_by')}</dt>
          <dd>
            <Tell pan={pan} what="top-up">
              {timeOfDay(now, now.t + topUp * 1000)}
            </Tell>
          </dd>
        </div>
      )}
      {(isByTime || (topUpTold && goesOn)) && room !== null && (
        <div>
          <dt class="one-line">{say('marks.top_up')}</dt>
          <dd>
            <small>{room}</small>
          </dd>
        </div>
      )}
    </dl>
  );
}

/** The middle 80 % in small print, unless the strength itself is already printed as a range, or is in doubt. */
function rangeOf(reading: Reading, shown: Settings): JSX.Element | null {
  const { brix, brix_low: low, brix_high: high } = reading;
  if (isAtOdds(reading)) return null;
  if (brix === null || low === null || high === null || high - low > 10 || high - low < 0.2) return null;
  const [least, most] = strengthEnds(low, high, shown);
  if (least === most || brix < low || brix > high) return null;
  return (
    <>
      {' '}
      <small class="range">
        {least}–{most}
      </small>
    </>
  );
}

/** How old the youngest reading of the pan's probes is. */
function lastHeard(now: Now, pan: string): string {
  const ages = now.probes.flatMap((probe) =>
    probe.pan === pan && probe.ageSeconds !== null ? [probe.ageSeconds] : [],
  );
  return ages.length === 0 ? '' : say('pans.last_heard', { ago: ago(Math.min(...ages)) });
}

/** What was put aside is still so, and is said without its colour. */
function AsideLine({ now, alarm }: { now: Now; alarm: AlarmView }): JSX.Element {
  const until = timeOfDay(now, alarm.asideUntil ?? now.t);
  return <p class="card-aside">{say('pans.aside', { time: until, title: hostWords(alarm.title) })}</p>;
}

/** Calls that say to take the pan off or the heat away: to go on with it is no advice meanwhile. */
const TAKE_OFF: ReadonlySet<AlarmView['alarm']> = new Set(['finish', 'past-finish', 'scorch-risk']);

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
  // What was going on when the boil ended goes on no more.
  const stage = isPast(now) && reading.stage !== 'off' ? say('pans.boil_ended') : stageOf(reading);
  const warmth = heatNow(reading);
  const active = inOrder(alarms).filter((alarm) => alarm.condition === 'active');
  const standing = active.filter((alarm) => !isAside(alarm));
  const worst = foremost(standing);
  const away = active.find(isAside);
  // Of burnt sugar nothing is forecast, and no measurement would help.
  const burnt = isBurnt(reading.temperature_c);
  // One order at a time: while it is about to burn, nobody reads that it is nearly syrup, or done and to be taken off.
  const burns = burnt || standing.some(({ alarm }) => alarm === 'scorch-risk');
  const forecast = burns ? null : forecastWords(now, reading);
  const moved = forecast === null ? null : whyMoved(now, reading, settings.value);
  const advice = now.advice.find((each) => each.pan === reading.pan) ?? null;
  const shallow = shallowThen(now, advice);
  const doubtful = isDoubtful(reading.probe) && !isWaitedFor(now, reading);
  const isAsked = reading.stage !== 'off' && !burnt && !isPast(now);
  const goesOn = isAsked && !standing.some(({ alarm }) => TAKE_OFF.has(alarm));
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
        <span class="card-called">
          <kbd aria-hidden="true">{letter}</kbd> <b title={name}>{name}</b>
        </span>{' '}
        {worst === undefined ? (
          <span class="stage">{!burns && stage}</span>
        ) : (
          <span class="stage">
            <AlarmShape priority={worst.priority} flashes={!worst.answered} /> <b>{priorityWord(worst.priority)}</b>
          </span>
        )}
      </button>
      <BigNumber now={now} reading={warmth} />
      <PanBar
        reading={warmth}
        limits={limits}
        last={isEmptied(reading) ? null : (lastHeat(now, reading.pan)?.celsius ?? null)}
        said={firstNote(now, reading) !== null}
      />
      {/* Its line is kept, so that a call moves nothing that is being read. */}
      <p class="card-alarm">{worst !== undefined && hostWords(worst.title)}</p>
      {away !== undefined && <AsideLine now={now} alarm={away} />}
      {forecast !== null && (
        <p class={forecast.ofAll === true ? 'forecast forecast-of-all' : 'forecast'}>
          {/* From afar a bare time under "Soon" would not say what for: there it is one line with what is called. */}
          {worst !== undefined && <b class="forecast-call">{hostWords(worst.title)}</b>}{' '}
          {reading.finish_in_s === null ? (
            <b>{forecast.headline}</b>
          ) : (
            <Tell pan={reading.pan} what={forecast.about ?? 'finish'}>
              <b>{forecast.headline}</b> {forecast.range !== null && <span>{forecast.range}</span>}
            </Tell>
          )}
        </p>
      )}
      {forecast?.small !== undefined && <p class="moved">{forecast.small}</p>}
      {moved !== null && <p class="moved">{moved}</p>}
      {burnt && <p class="advice">{say('pan.burnt')}</p>}
      {reading.stage !== 'off' && !burnt && (
        <Facts now={now} reading={reading} advice={advice} goesOn={goesOn} topUpTold={forecast?.about === 'top-up'} />
      )}
      <PouredQuestion now={now} pan={reading.pan} canMark={canMark} />
      <LeftOutLine now={now} pan={reading.pan} canMark={canMark} />
      {shallow !== null && goesOn && <p class="advice">{shallowWords(now, shallow, settings.value)}</p>}
      {isAsked && <NotKnown now={now} reading={reading} advice={advice} canMark={canMark} />}
      <p class={doubtful ? 'probe probe-doubtful' : 'probe'}>
        <span>
          {readByHand(now, reading, settings.value, limits.finish_c) ?? probeLine(now, reading)}
          {doubtful && lastHeard(now, reading.pan)}
        </span>
        {worst !== undefined && !burns && <span>{stage}</span>}
      </p>
    </article>
  );
}
