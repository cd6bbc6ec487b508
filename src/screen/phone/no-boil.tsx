// What a phone shows while no boil runs: that it is over, when that was and what came of it, or that none was lit.
import { lengthOfTime } from '../../core/quantities/time.ts';
import type { JSX } from 'preact';
import { settings } from '../client/store.ts';
import type { Now } from '../client/types.ts';
import { say } from '../language/say.ts';
import { exactStrength, syrupVolume } from '../words/amounts.ts';
import { timeOfDay } from '../words/clock.ts';

function syrupWords({ syrup }: Now): string {
  if (syrup === null || syrup === undefined) return say('phone.syrup_unknown');
  const amount = syrupVolume(syrup.litres, settings.value);
  return syrup.brix === null
    ? say('phone.syrup', { amount })
    : say('phone.syrup_of', { amount, strength: exactStrength(syrup.brix, settings.value) });
}

export function NoBoil({ now }: { now: Now }): JSX.Element {
  if (!now.ended || now.endedAt === null) return <p class="phone-quiet">{say('phone.comes_up')}</p>;
  const seconds = now.endedAt / 1000;
  return (
    <section class="phone-quiet" aria-label={say('pans.is_over')}>
      <h2>{now.header?.name ?? say('pans.this_boil')}</h2>
      <p>{say('phone.ended', { time: timeOfDay(now, now.endedAt), length: lengthOfTime(seconds) })}</p>
      {now.mode === 'live' && <p>{syrupWords(now)}</p>}
      <p class="hint">{say('phone.comes_up')}</p>
    </section>
  );
}
