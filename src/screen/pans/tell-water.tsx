// The ways to tell how hot water boils here, while nobody has: over the pans, for it is the same at each of them.
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { openFormFor } from '../marks/open-form.ts';
import { BY_HEIGHT } from '../marks/pressure-form.ts';

interface TellWaterProps {
  now: Now;
  /** The pan that stays chosen. */
  pan: string;
}

/** Nothing once it is known, however roughly. */
export function TellWater({ now, pan }: TellWaterProps): JSX.Element | null {
  if (now.water.celsius !== null) return null;
  return (
    <section class="panel row tell-water" aria-label={say('pans.tell_water')}>
      <b>{say('pans.tell_water')}</b>
      <button type="button" onClick={() => openFormFor(pan, 'water-check')}>
        {say('pan.call.water_check')}
      </button>
      <button type="button" onClick={() => openFormFor(pan, 'pressure')}>
        {say('pan.call.pressure')}
      </button>
      <button type="button" onClick={() => openFormFor(pan, 'pressure', { at: BY_HEIGHT })}>
        {say('pan.call.height')}
      </button>
    </section>
  );
}
