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

export function Cautions(): JSX.Element {
  return (
    <section class="panel cautions" aria-label={say('cautions.title')}>
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
