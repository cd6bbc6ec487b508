// What each alarm means and what to do about it, in words.
import type { AlarmName } from '../boil/entries.ts';
import type { PanReading } from '../pan/reading.ts';
import { isBurnt } from '../quantities/burnt.ts';

export interface AlarmWords {
  title: string;
  means: string;
  todo: string;
}

export const ALARM_WORDS: Record<AlarmName, AlarmWords> = {
  'near-finish': {
    title: 'Nearly syrup',
    means: 'This pan will soon be at its finish, and the last minutes go fast.',
    todo: 'Go to the pan and stay there. Have the hydrometer or refractometer and a way off the heat ready.',
  },
  finish: {
    title: 'At its finish',
    means: 'By all that is known this pan has the strength you asked for, or may have it any moment.',
    todo: 'Check with your own instrument, then take it off the heat.',
  },
  'past-finish': {
    title: 'Past its finish',
    means: 'It goes on getting stronger and will soon be too thick, then burn.',
    todo: 'Take it off the heat now. A little sap thins it again.',
  },
  'scorch-risk': {
    title: 'About to burn',
    means: 'At this heat it burns soon, if it does not burn already.',
    todo: 'Turn the heat off first. Then, while it does not smoke, pour in sap or water at once. Mind the steam.',
  },
  'low-level': {
    title: 'Running low',
    means: 'Too little liquid for this vessel soon; a shallow pan burns.',
    todo: 'Top up, or turn the flame down.',
  },
  'boil-lost': {
    title: 'No longer boiling',
    means: 'The temperature falls though nothing was poured in.',
    todo: 'Look at the flame, and smell for gas before you light it again.',
  },
  'probe-lost': {
    title: 'Probe lost',
    means: 'Nothing valid comes from this probe: this pan is not watched.',
    todo: 'Watch this pan yourself. Look at the plug, the lead and the tip.',
  },
  'probe-suspect': {
    title: 'Probe cannot be right',
    means: 'Numbers come, but they cannot be true.',
    todo: 'Watch this pan yourself. See that the tip is in the liquid.',
  },
  'port-lost': {
    title: 'Board lost',
    means: 'The board with the probes went away or cannot be opened: its pans are not watched.',
    todo: 'Watch these pans yourself. Look at the USB plug and the cable; it is tried again by itself.',
  },
  'fuel-low': { title: 'Gas running out', means: 'The cylinder will soon be empty.', todo: 'Have a full one ready.' },
  reminder: {
    title: 'Reminder',
    means: 'You asked to be reminded now.',
    todo: 'Do it, then say that you have seen it.',
  },
  'not-recording': {
    title: 'Not being written down',
    means: 'The boil cannot be kept on disk just now; watching goes on.',
    todo: 'Make room on the disk or bring the folder back. What was not written is kept in memory until then.',
  },
  'no-sound': {
    title: 'No sound',
    means: 'This machine cannot make the sound: a call could not be heard.',
    todo: 'Turn the sound on and try it in Settings, or stay within sight of the screen.',
  },
  'power-low': {
    title: 'Battery running down',
    means: 'The laptop runs from its battery and will not last.',
    todo: 'Plug it in, away from steam.',
  },
};

/** Past the limit, while there may still be something to save. */
const BURNING: AlarmWords = {
  title: 'Burning',
  means: 'It is past the point where it burns.',
  todo: ALARM_WORDS['scorch-risk'].todo,
};

/** Of a pan at its finish that does not burn yet: what goes off the fire keeps its syrup, what is poured into it does not. */
const READY_TOO: AlarmWords = {
  ...ALARM_WORDS['scorch-risk'],
  todo: 'Turn the heat off first, and take the pan off the burner: it is at its finish. Only if it goes on heating, and does not smoke, pour in sap or water.',
};

/** Whether no time is left until it burns. */
export const isBurning = ({ scorch_in_s: left }: Pick<PanReading, 'scorch_in_s'>): boolean => left === 0;

/** So hot that a pour would do harm: usual advice on burning sugar, common practice. */
const BURNT: AlarmWords = {
  title: 'Burning',
  means: 'At this heat nothing in it is syrup any more.',
  todo: 'Turn the heat off and stay back. Pour nothing in: it would spit and flash into steam. Put a lid on flames, and call the fire service if they spread.',
};

const FELL_ENDS = ', and nobody noted why: was something poured in, or is the tip out of the syrup?';

/** Why a call stands whose pan fell out of thick syrup unexplained: from and to which °C, printed. */
export const fellWords = (from: string, to: string): string => `fell from ${from} to ${to} °C${FELL_ENDS}`;

/** How strong it is now nobody knows: the call is of what it was before it fell, and says so. */
const TITLES_BEFORE: Partial<Record<AlarmName, string>> = {
  'near-finish': 'Was nearly syrup',
  finish: 'Was at its finish',
  'past-finish': 'Was past its finish',
  'scorch-risk': 'Was burning, or about to',
  'low-level': 'Was running low',
};
const FELL = {
  means: 'It may be thinner now, or the probe does not show it any more: it is watched again once that is known.',
  todo: 'Look into the pan. Put the tip back if it is out; note what was poured in. If it is still thick, take it off the heat.',
};

/** Of a pan so near its end that sap would undo hours of boiling. */
const LOW_AND_THICK = {
  means: 'Too little is left for this vessel soon, and it is nearly syrup; a shallow pan burns.',
  todo: 'Turn the flame down, or pour it into a smaller pot. Sap poured in now would thin it again.',
};

/** Why a pan is called of which nobody knows how much is left. */
export const MAY_BE_LOW = 'may be low, by what went in and boiled away: look how deep it is';
const LOW_BY_COUNT: AlarmWords = {
  title: 'May be low',
  means: 'No thermometer shows this pan: by what went in and boiled away, little may be left. A shallow pan burns.',
  todo: 'Look how deep it is, and note that. If it is low, top up, or turn the flame down.',
};

/**
 * The words of an alarm as its pan stands now; `reading` is null for one that is about no pan, `why` is what the call
 * stands on, and `isNearlySyrup` whether the pan is called for its finish as well.
 */
export function alarmWords(alarm: AlarmName, reading: PanReading | null, why = '', isNearlySyrup = false): AlarmWords {
  if (why.endsWith(FELL_ENDS)) return { title: TITLES_BEFORE[alarm] ?? ALARM_WORDS[alarm].title, ...FELL };
  if (why === MAY_BE_LOW) return LOW_BY_COUNT;
  if (alarm === 'low-level' && (isNearlySyrup || reading?.stage === 'near-finish' || reading?.stage === 'finished'))
    return { ...ALARM_WORDS[alarm], ...LOW_AND_THICK };
  if (alarm !== 'scorch-risk' || reading === null) return ALARM_WORDS[alarm];
  if (isBurnt(reading.temperature_c)) return BURNT;
  if (isBurning(reading)) return BURNING;
  return reading.stage === 'finished' ? READY_TOO : ALARM_WORDS[alarm];
}
