// One pan on a phone: its name and state, the number that matters, where it stands on its bar, and when it is done.
import { Fragment } from 'preact';
import type { JSX } from 'preact';
import { AlarmShape } from '../alarms/alarm-shape.tsx';
import { settings } from '../client/store.ts';
import { hostWords } from '../language/host-words.ts';
import { say } from '../language/say.ts';
import type { Now, Reading } from '../client/types.ts';
import { PLACE, panPlace } from '../pans/bar-scale.ts';
import { forecastWords } from '../pans/forecast-words.ts';
import { isUnderWater, showsRise, signedRise, strength, temperature, underWater } from '../words/amounts.ts';
import { inOrder, isAside } from '../words/alarm-words.ts';
import { depthWords } from '../words/depth-words.ts';
import { heatNow, lastHeat, lastHeatWords } from '../words/last-heat.ts';
import { isEmptied, isDoubtful, isWaitedFor, panName, panNamed, probeLine, stageOf } from '../words/pan-words.ts';

const percent = (place: number): string => `${(100 * place).toFixed(1)}%`;

function Landmark({
  place,
  word,
  celsius,
}: {
  place: number;
  word: string;
  celsius: number | null;
}): JSX.Element | null {
  if (celsius === null) return null;
  return (
    <span style={{ left: percent(place) }}>
      {word} <b>{temperature(celsius, settings.value).replace(/\s.*/u, '')}</b>
    </span>
  );
}

function Bar({ now, reading }: { now: Now; reading: Reading }): JSX.Element | null {
  const limits = now.limits.find(({ pan }) => pan === reading.pan);
  const landmarks = { water: reading.water_c, finish: limits?.finish_c ?? null, scorch: limits?.scorch_c ?? null };
  const celsius = reading.temperature_c ?? lastHeat(now, reading.pan)?.celsius ?? null;
  const place = celsius === null ? null : panPlace(celsius, reading.stage === 'finished', landmarks);
  if (place === null) return null;
  return (
    <>
      <div class="phone-bar" aria-hidden="true">
        <span class="phone-bar-cold" style={{ width: percent(PLACE.water) }} />
        <span
          class="phone-bar-done"
          style={{ left: percent(PLACE.finish), width: percent(PLACE.scorch - PLACE.finish) }}
        />
        <span class="phone-bar-burns" style={{ left: percent(PLACE.scorch), width: percent(1 - PLACE.scorch) }} />
        <span
          class={reading.temperature_c === null ? 'phone-bar-pan phone-bar-then' : 'phone-bar-pan'}
          style={{ left: percent(place) }}
        />
      </div>
      <p class="phone-bar-words">
        <Landmark place={PLACE.water} word={say('pans.water')} celsius={landmarks.water} />
        <Landmark place={PLACE.finish} word={say('pans.done')} celsius={landmarks.finish} />
        <Landmark place={PLACE.scorch} word={say('pans.burns')} celsius={landmarks.scorch} />
      </p>
    </>
  );
}

/** `big` is null where none was read yet. */
function bigWords(
  now: Now,
  { pan, rise_c: rise, temperature_c: celsius, stage }: Reading,
  isRow: boolean,
): { big: string | null; captions: string[] } {
  const shown = settings.value;
  if (celsius === null) {
    const words = lastHeatWords(now, { pan, stage }, shown);
    return { big: lastHeat(now, pan) === null ? null : '–', captions: words === '' ? [] : [words] };
  }
  const exact = temperature(celsius, shown);
  if (rise === null || !showsRise({ rise_c: rise, stage })) {
    const bare = stage === 'off' ? 'pans.at_probe' : 'pans.in_the_pan';
    const caption = rise === null || stage === 'off' ? say(bare) : underWater(rise, shown);
    return { big: `${exact.replace(/\s.*/u, '')}°`, captions: [caption] };
  }
  return {
    big: `${signedRise(rise, shown)}°`,
    // A row has no room for more: what the number is over, the bar beneath it shows.
    captions: isRow ? [exact] : [say(isUnderWater(rise, shown) ? 'pans.under_water' : 'pans.over_water'), exact],
  };
}

/** What stands behind the number, parted by dots: a comma would be taken for one of the numbers' own. */
function Captions({ plain, strong }: { plain: readonly string[]; strong: readonly string[] }): JSX.Element {
  const pieces = [...plain.map((words) => <span>{words}</span>), ...strong.map((words) => <b>{words}</b>)];
  return (
    <>
      {pieces.map((piece, place) => (
        <Fragment key={place}>
          {place > 0 && ' · '}
          {piece}
        </Fragment>
      ))}
    </>
  );
}

/** From afar "off the fire" alone beside a number, or beside none, does not say that there is nothing in it. */
const stageWords = (reading: Reading): string => (isEmptied(reading) ? say('phone.empty_off') : stageOf(reading));

interface PhonePanProps {
  now: Now;
  reading: Reading;
  /** Among many, each takes as little height as it can. */
  isRow: boolean;
}

export function PhonePan({ now, reading, isRow }: PhonePanProps): JSX.Element {
  const calls = inOrder(now.alarms.filter(({ pan }) => pan === reading.pan));
  const worst = calls.find((alarm) => alarm.condition === 'active' && !isAside(alarm));
  // One order at a time: what is about to burn is neither nearly done nor poured over.
  const burns = calls.some(({ alarm, condition }) => alarm === 'scorch-risk' && condition === 'active');
  const forecast = burns ? null : forecastWords(now, reading);
  const warmth = heatNow(reading);
  const { big, captions } = bigWords(now, warmth, isRow);
  const { brix, depth_mm: mm } = reading.stage === 'off' ? { brix: null, depth_mm: null } : reading;
  const strong = [
    ...(brix === null ? [] : [strength(brix, reading.brix_low, reading.brix_high, settings.value)]),
    ...(mm === null || isRow ? [] : [depthWords(mm, panNamed(now.header, reading.pan), settings.value)]),
  ];
  return (
    <article
      class={`phone-pan${reading.stage === 'off' ? ' phone-pan-off' : ''}${worst === undefined ? '' : ` phone-pan-${worst.priority}`}`}
    >
      <h2>
        {worst !== undefined && <AlarmShape priority={worst.priority} flashes={!worst.answered} />}{' '}
        <span class="phone-name">{panName(now.header, reading.pan)}</span>
        <span class="phone-stage">{worst === undefined ? stageWords(reading) : hostWords(worst.title)}</span>
      </h2>
      {big !== null && (
        <p class="phone-big">
          {big}
          {big.endsWith('°') && <span class="phone-unit">{settings.value.temperature}</span>}
        </p>
      )}
      <p class={big === null ? 'phone-unread' : 'phone-caption'}>
        <Captions plain={captions} strong={strong} />
      </p>
      <Bar now={now} reading={warmth} />
      {forecast !== null && reading.stage !== 'off' && (
        <p class={forecast.ofAll === true ? 'phone-forecast phone-of-all' : 'phone-forecast'}>
          <b>{forecast.headline}</b> {forecast.range}
        </p>
      )}
      {isDoubtful(reading.probe) && !isWaitedFor(now, reading) && (
        <p class="phone-doubt">▲ {probeLine(now, reading)}</p>
      )}
    </article>
  );
}
