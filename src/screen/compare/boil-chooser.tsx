// Which boils are laid over each other: all that are kept, each to be ticked, six at most.
import type { JSX } from 'preact';
import { MOST_COMPARED } from '../../protocol/compare-messages.ts';
import type { BoilListing } from '../client/types.ts';
import { goTo } from '../shell/routes.ts';
import { dayAndTime } from '../words/clock.ts';

interface ChooserProps {
  boils: readonly BoilListing[];
  chosen: readonly string[];
}

export const compareBoils = (boils: readonly string[]): void => goTo('compare', ...boils);

export function BoilChooser({ boils, chosen }: ChooserProps): JSX.Element {
  const ended = boils.filter(({ running }) => !running);
  const isFull = chosen.length >= MOST_COMPARED;
  const toggle = (boil: string): void =>
    compareBoils(chosen.includes(boil) ? chosen.filter((each) => each !== boil) : [...chosen, boil]);
  if (ended.length === 0) return <p>No boil is kept yet: boils can be compared once they are over.</p>;
  return (
    <details class="finder" open={chosen.length < 2}>
      <summary>
        Choose boils ({chosen.length} of {MOST_COMPARED})
      </summary>
      <ul class="boil-ticks">
        {ended.map(({ boil, name, started, practice }) => {
          const isChosen = chosen.includes(boil);
          return (
            <li key={boil}>
              <label class="check">
                <input
                  type="checkbox"
                  checked={isChosen}
                  disabled={!isChosen && isFull}
                  onChange={() => toggle(boil)}
                />
                <span>
                  <b>{name === '' ? 'A boil without a name' : name}</b>, {dayAndTime(started)}
                  {practice && <span class="tag tag-practice">practice</span>}
                </span>
              </label>
            </li>
          );
        })}
      </ul>
      {isFull && <p class="hint">Six are chosen: take one away to choose another.</p>}
    </details>
  );
}
