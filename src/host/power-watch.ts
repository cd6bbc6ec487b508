// Says when the machine runs from its battery, and judges whether that will last.
import type { PageReport } from '../protocol/messages.ts';
import type { Power } from './power.ts';

/** Less than this never lasts through what is left of a boil and the clearing up, s (judgement). */
const LEAST_LEFT_S = 45 * 60;
/** Where no time is told: a battery this far down is nearly empty, % (judgement). */
const LEAST_PERCENT = 20;
/** An estimate that jumps for one look calls nobody. */
const LOOKS_IN_A_ROW = 2;

/** The page's words for the same. */
export function pagePower(battery: PageReport['battery']): Power | null {
  if (battery === null) return null;
  const { charging, level, seconds_left: secondsLeft } = battery;
  return { onBattery: !charging, percent: 100 * level, secondsLeft: charging ? null : secondsLeft };
}

/** The system's word goes before the page's, which fills in the time where the system does not tell it. */
export function joinedPower(system: Power | null, page: Power | null): Power | null {
  if (system === null || page === null) return system ?? page;
  const secondsLeft = system.secondsLeft ?? (system.onBattery && page.onBattery ? page.secondsLeft : null);
  return { ...system, percent: system.percent ?? page.percent, secondsLeft };
}

function lengthText(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  return minutes < 120 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** "64 %, about 50 min left"; what is not known is left out. */
function leftText({ percent, secondsLeft }: Power): string {
  const parts = [
    percent === null ? null : `${Math.round(percent)} %`,
    secondsLeft === null ? 'how long it lasts is not known' : `about ${lengthText(secondsLeft)} left`,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

/** What one look finds: a sentence when it is news, and the alarm's numbers while the battery will not last. */
export interface PowerFound {
  news: string | null;
  why: string | null;
}

export class PowerWatch {
  #wasOnBattery: boolean | null = null;
  #shortLooks = 0;
  #isCalling: boolean;

  /** `isCalling` where a restart found the alarm standing. */
  constructor(isCalling = false) {
    this.#isCalling = isCalling;
  }

  /** One look; `neededS` is how long the last pan still takes, null where that is not known. */
  look(power: Power | null, neededS: number | null): PowerFound {
    if (power === null) return { news: null, why: null };
    const news = this.#news(power);
    this.#shortLooks = willNotLast(power, neededS) ? this.#shortLooks + 1 : 0;
    // Once called, only the mains end it: an estimate that grows again does not fill a battery.
    this.#isCalling = power.onBattery && (this.#isCalling || this.#shortLooks >= LOOKS_IN_A_ROW);
    const needs = neededS === null ? '' : `; the last pan needs about ${lengthText(neededS)}`;
    return { news, why: this.#isCalling ? `battery: ${leftText(power)}${needs}` : null };
  }

  #news(power: Power): string | null {
    const before = this.#wasOnBattery;
    this.#wasOnBattery = power.onBattery;
    if (power.onBattery && before !== true) return `This machine runs from its battery: ${leftText(power)}.`;
    return !power.onBattery && before === true ? 'This machine has mains power again.' : null;
  }
}

function willNotLast({ onBattery, percent, secondsLeft }: Power, neededS: number | null): boolean {
  if (!onBattery) return false;
  if (secondsLeft !== null) return secondsLeft < Math.max(LEAST_LEFT_S, neededS ?? 0);
  return percent !== null && percent <= LEAST_PERCENT;
}
