// Whether a mark counts, and what it does to what is in a pan: whether it pours something in, and whether it takes all of it out.
import type { Mark } from './entries.ts';

/** Whether a mark acts on what is believed: it was not taken back, nor is it asked about because it can hardly be meant. */
export const counts = ({ withdrawn, questioned }: { withdrawn: boolean; questioned: boolean }): boolean =>
  !withdrawn && !questioned;

/** Whether a mark says that something was poured into the pan: sap, or what was in another. */
export const poursInto = (mark: Mark, pan: string): boolean =>
  mark.kind === 'top-up' ? mark.pan === pan : mark.kind === 'transfer' && mark.to === pan;

/** Whether a mark says that all of it was taken out of the pan: nothing is left of what was poured in before. */
export const empties = (mark: Mark, pan: string): boolean =>
  (mark.kind === 'draw-off' && mark.pan === pan && mark.all === true) ||
  (mark.kind === 'transfer' && mark.from === pan && mark.all === true);
