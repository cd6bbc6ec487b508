// Kept boils to be ticked, each by its name, when it was begun, and whether it was practice.
import type { JSX } from 'preact';
import type { BoilListing } from '../client/types.ts';
import { dayAndTime } from '../words/clock.ts';
import { say, sayDrawn } from '../language/say.ts';
import { boilName } from '../words/boil-name.ts';

interface BoilTicksProps {
  boils: readonly BoilListing[];
  /** Ids of those that are ticked. */
  ticked: readonly string[];
  /** No other can be ticked until one is taken away. */
  isFull?: boolean;
  toggle: (boil: string) => void;
}

export function BoilTicks({ boils, ticked, isFull = false, toggle }: BoilTicksProps): JSX.Element {
  return (
    <ul class="boil-ticks">
      {boils.map(({ boil, name, started, practice }) => {
        const isTicked = ticked.includes(boil);
        return (
          <li key={boil}>
            <label class="check">
              <input type="checkbox" checked={isTicked} disabled={!isTicked && isFull} onChange={() => toggle(boil)} />
              <span>
                {sayDrawn('notebook.tick', {
                  name: boilName(name),
                  when: dayAndTime(started),
                  b: (words) => <b>{words}</b>,
                })}
                {practice && <span class="tag tag-practice">{say('notebook.practice')}</span>}
              </span>
            </label>
          </li>
        );
      })}
    </ul>
  );
}
