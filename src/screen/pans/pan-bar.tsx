// A pan's bar: from the water point through the finish to the scorch limit, with the pan on it.
import { say } from '../language/say.ts';
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Explained, Limits, Reading } from '../client/types.ts';
import { Tell } from '../explain/tell.tsx';
import { temperature } from '../words/amounts.ts';
import { isDoubtful } from '../words/pan-words.ts';
import { PLACE, panPlace, placeOf } from './bar-scale.ts';

const percent = (place: number): string => `${(place * 100).toFixed(1)}%`;

interface LandmarkProps {
  place: number;
  word: string;
  celsius: number;
  /** null for the water point. */
  pan: string | null;
  what: Explained;
}

function Landmark({ place, word, celsius, pan, what }: LandmarkProps): JSX.Element {
  return (
    <span class="bar-label" style={{ left: percent(place) }}>
      <Tell pan={pan} what={what}>
        <b>{word}</b> <span>{temperature(celsius, settings.value).replace(/\s.*/u, '')}</span>
      </Tell>
    </span>
  );
}

function inWords(reading: Reading, limits: Limits): string {
  const at = (celsius: number | null): string =>
    celsius === null ? say('pans.not_known') : temperature(celsius, settings.value);
  return say('pans.bar', {
    now: at(reading.temperature_c),
    water: at(reading.water_c),
    done: at(limits.finish_c),
    burns: at(limits.scorch_c),
  });
}

interface PanBarProps {
  reading: Reading;
  limits: Limits;
  /** What it showed last where its temperature is not known now, °C: drawn as an outline. */
  last: number | null;
  /** Its card says already that nothing is known yet. */
  said: boolean;
}

export function PanBar({ reading, limits, last, said }: PanBarProps): JSX.Element {
  const { water_c: water, temperature_c: now } = reading;
  const celsius = now ?? last;
  const landmarks = { water, finish: limits.finish_c, scorch: limits.scorch_c };
  const place = celsius === null ? null : panPlace(celsius, reading.stage === 'finished', landmarks);
  const drawable = water !== null && placeOf(water, landmarks) !== null;
  if (!drawable) return <div class="bar bar-empty">{!said && say('pans.bar_unknown')}</div>;
  return (
    <div class="bar">
      <div class="bar-track" role="img" aria-label={inWords(reading, limits)}>
        <span class="bar-cold" style={{ width: percent(PLACE.water) }} />
        {limits.finish_c !== null && (
          <span class="bar-done" style={{ left: percent(PLACE.finish), width: percent(PLACE.scorch - PLACE.finish) }} />
        )}
        <span class="bar-burns" style={{ left: percent(PLACE.scorch), width: percent(1 - PLACE.scorch) }} />
        {place !== null && (
          <span
            class={now === null || isDoubtful(reading.probe) ? 'bar-pan bar-pan-doubtful' : 'bar-pan'}
            style={{ left: percent(place) }}
          />
        )}
      </div>
      <div class="bar-labels">
        <Landmark place={PLACE.water} word={say('pans.water')} celsius={water} pan={null} what="water" />
        {limits.finish_c !== null && (
          <Landmark
            place={PLACE.finish}
            word={say('pans.done')}
            celsius={limits.finish_c}
            pan={reading.pan}
            what="finish-point"
          />
        )}
        {limits.scorch_c !== null && (
          <Landmark
            place={PLACE.scorch}
            word={say('pans.burns')}
            celsius={limits.scorch_c}
            pan={reading.pan}
            what="scorch-point"
          />
        )}
      </div>
    </div>
  );
}
