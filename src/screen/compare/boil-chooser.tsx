// Which boils are laid over each other: all that are kept, each to be ticked, six at most.
import type { JSX } from 'preact';
import { useState } from 'preact/hooks';
import { MOST_COMPARED } from '../../protocol/compare-messages.ts';
import type { BoilListing } from '../client/types.ts';
import { BoilTicks } from '../notebook/boil-ticks.tsx';
import { goTo } from '../shell/routes.ts';
import { say } from '../language/say.ts';

interface ChooserProps {
  boils: readonly BoilListing[];
  chosen: readonly string[];
  /** How many practice boils are not among them, for a person hid them. */
  hidden: number;
}

/** Goes to the comparison of these boils. */
export const compareBoils = (boils: readonly string[]): void => goTo('compare', ...boils);

export function BoilChooser({ boils, chosen, hidden }: ChooserProps): JSX.Element {
  const ended = boils.filter(({ running }) => !running);
  // It stays as it is while boils are ticked: whoever ticks a second may want a third.
  const [isOpen] = useState(chosen.length < 2);
  const isFull = chosen.length >= MOST_COMPARED;
  const toggle = (boil: string): void =>
    compareBoils(chosen.includes(boil) ? chosen.filter((each) => each !== boil) : [...chosen, boil]);
  const leftOut = hidden > 0 && <p class="hint">{say('compare.hidden', { count: hidden })}</p>;
  if (ended.length === 0) {
    return (
      <>
        <p>{say('compare.no_boil')}</p>
        {leftOut}
      </>
    );
  }
  return (
    <details class="finder" open={isOpen}>
      <summary>{say('compare.choose', { chosen: chosen.length, most: MOST_COMPARED })}</summary>
      <BoilTicks boils={ended} ticked={chosen} isFull={isFull} toggle={toggle} />
      {isFull && <p class="hint">{say('compare.full')}</p>}
      {leftOut}
    </details>
  );
}
