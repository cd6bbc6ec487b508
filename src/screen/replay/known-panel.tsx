// What a person could know at the moment that is shown, and what came later, told apart.
import type { JSX } from 'preact';
import type { Now } from '../client/types.ts';
import { timeOfDay } from '../words/clock.ts';
import { panName } from '../words/pan-words.ts';
import { cameWords, saidWords } from '../words/replay-words.ts';
import { say } from '../language/say.ts';

export function KnownPanel({ now }: { now: Now }): JSX.Element | null {
  const known = now.replay?.known ?? [];
  if (known.length === 0) return null;
  return (
    <section class="panel known" aria-label={say('replay.known.label')}>
      <h2>{say('replay.known.title', { time: timeOfDay(now, now.t) })}</h2>
      <ul>
        {known.map((each) => (
          <li key={each.pan}>
            <b>{say('replay.known.pan', { pan: panName(now.header, each.pan) })}</b>{' '}
            <span class="known-said">{saidWords(each, now)}</span>{' '}
            <span class="known-came">
              <span aria-hidden="true">→ </span>
              {cameWords(each, now)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
