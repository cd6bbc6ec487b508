// What must be read before a fire is lit, and the trial of the sound.
import { say, sayDrawn } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { settings } from '../client/store.ts';
import { allowSound, playBurst, soundState } from '../sound/player.ts';

const CAUTIONS: readonly MessageKey[] = [
  'cautions.stay',
  'cautions.propane',
  'cautions.scald',
  'cautions.mains',
  'cautions.children',
];

const CAUTIONS_ID = 'cautions';

/** What matters most, above the fields: the button that starts the boil is in sight before the cautions themselves are. */
export function CautionsLine(): JSX.Element {
  return (
    <p class="cautions-line">
      <span>▲ {sayDrawn('cautions.first', { b: (words) => <b>{words}</b> })}</span>{' '}
      <button type="button" onClick={() => document.getElementById(CAUTIONS_ID)?.scrollIntoView({ block: 'center' })}>
        {say('cautions.all')}
      </button>
    </p>
  );
}

export function Cautions(): JSX.Element {
  return (
    <section id={CAUTIONS_ID} class="panel cautions" aria-label={say('cautions.title')}>
      <h2>{say('cautions.title')}</h2>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution}>{sayDrawn(caution, { b: (words) => <b>{words}</b> })}</li>
        ))}
      </ul>
    </section>
  );
}

interface SoundCheckProps {
  heard: boolean;
  setHeard: (heard: boolean) => void;
}

export function SoundCheck({ heard, setHeard }: SoundCheckProps): JSX.Element {
  const [played, setPlayed] = useState(false);
  const play = async (): Promise<void> => {
    if ((await allowSound()) && playBurst('high', settings.value.loudness)) setPlayed(true);
  };
  return (
    <section class="panel" aria-label={say('cautions.sound')}>
      <h2>{say('cautions.hear')}</h2>
      <p class="row">
        <button type="button" onClick={() => void play()}>
          {say('cautions.play')}
        </button>
        <label class="check">
          <input
            type="checkbox"
            checked={heard}
            disabled={!played}
            onChange={(event) => setHeard(event.currentTarget.checked)}
          />
          {say('cautions.heard')}
        </label>
      </p>
      {soundState.value === 'none' && <p class="problem">{say('cautions.none')}</p>}
    </section>
  );
}
