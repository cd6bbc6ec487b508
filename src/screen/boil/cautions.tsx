// What must be read before a fire is lit, and the trial of the sound.
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import { allowSound, playBurst, soundState } from '../sound/player.ts';

export function Cautions(): JSX.Element {
  return (
    <section class="panel cautions" aria-label="Before you light the fire">
      <h2>Before you light the fire</h2>
      <ul>
        <li>
          <b>Somebody stays.</b> Never leave a boil. Panwarden cannot shut a burner, smell gas or see a flame.
        </li>
        <li>
          <b>Propane burns outdoors only</b>, never in a garage or a tent, with the cylinder upright. Have a carbon
          monoxide alarm wherever there is a flame.
        </li>
        <li>
          <b>Steam and syrup scald.</b> Cool a burn with cool water for 10 to 15 minutes; see a doctor if in doubt.
        </li>
        <li>
          <b>Keep mains leads away from the steam</b>, on a protected outlet, with a loop that lets drops fall off.
        </li>
      </ul>
    </section>
  );
}

interface SoundCheckProps {
  heard: boolean;
  setHeard: (heard: boolean) => void;
}

export function SoundCheck({ heard, setHeard }: SoundCheckProps): JSX.Element {
  const play = async (): Promise<void> => {
    if (await allowSound()) playBurst('high', settings.value.loudness);
  };
  return (
    <section class="panel" aria-label="Sound">
      <h2>Can you hear it from where you will be?</h2>
      <p class="row">
        <button type="button" onClick={() => void play()}>
          ♪ Play the loudest call
        </button>
        <label class="check">
          <input type="checkbox" checked={heard} onChange={(event) => setHeard(event.currentTarget.checked)} />I heard
          it
        </label>
      </p>
      {soundState.value === 'none' && (
        <p class="problem">✕ This machine gives no sound. You will have to watch the screen.</p>
      )}
    </section>
  );
}
