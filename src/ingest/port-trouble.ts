// Puts into a sentence why a port cannot be opened or went away: which port, the cause and the cure.
import { portCalled } from '../protocol/boards.ts';
import type { Whereabouts } from './device-identity.ts';
import { portRights, type PortRights } from './port-rights.ts';

export type TroubleKind = 'missing' | 'held' | 'forbidden' | 'no-port' | 'unplugged' | 'elsewhere' | 'other';

export interface Trouble {
  kind: TroubleKind;
  sentence: string;
}

export interface NamedPort {
  id: string;
  path: string;
}

/** The serial library gives causes as text only: these are the words of Linux, macOS and Windows, in this order. */
const causes: [RegExp, TroubleKind][] = [
  [/no such (?:file|device)|file not found|ENOENT|ENXIO/i, 'missing'],
  [/cannot lock|resource (?:busy|temporarily unavailable)|EBUSY/i, 'held'],
  [/permission denied|access (?:is )?denied|EACCES|EPERM|operation not permitted/i, 'forbidden'],
  [/inappropriate ioctl|not a (?:tty|typewriter)|is a directory|ENOTTY/i, 'no-port'],
];

const waits = 'It is tried again until it opens.';

/** What an error on opening a port means. `rightsOf` is asked only where the port may not be opened. Never rejects. */
export async function openingTrouble(
  port: NamedPort,
  error: unknown,
  rightsOf: (path: string) => Promise<PortRights | null> = portRights,
): Promise<Trouble> {
  const message = error instanceof Error ? error.message : String(error);
  const kind = causes.find(([words]) => words.test(message))?.[1] ?? 'other';
  const words =
    kind === 'forbidden' ? forbiddenWords(port.path, await rightsOf(port.path)) : openingWords(kind, message);
  return { kind, sentence: `Port ${port.id} (${port.path}) ${words} ${waits}` };
}

function openingWords(kind: TroubleKind, message: string): string {
  switch (kind) {
    case 'missing':
      return 'is not there: plug the board in, or choose the port it has now.';
    case 'held':
      return 'is held by another program: close that program, such as a serial monitor or a second copy of this one.';
    case 'no-port':
      return 'is no serial port: choose the port that the board is plugged into.';
    default:
      return `cannot be opened (${message.trim()}): check the cable, the port and its baud rate.`;
  }
}

/** Nobody is told to join the group of the system itself. */
function forbiddenWords(path: string, rights: PortRights | null): string {
  if (rights === null || (rights.groupMay && rights.member === 'signed-in'))
    return 'may not be opened by this user, or is held by another program: close other programs that use it.';
  const mayNot = 'may not be opened by this user';
  if (!rights.groupMay)
    return `${mayNot}, nor by the group "${rights.group}" that owns it: type "sudo chmod a+rw ${path}" in a terminal; that holds until the board is pulled.`;
  const cure =
    rights.member === 'listed'
      ? 'you are in that group, but only from the next time that you sign in'
      : `type "sudo usermod -aG ${rights.group} $USER" in a terminal`;
  return `${mayNot}: the group "${rights.group}" owns it; ${cure}. Sign out and in again, and start this program again.`;
}

/** A port that was open and is gone. */
export function lostTrouble(port: NamedPort): Trouble {
  return {
    kind: 'unplugged',
    sentence: `Port ${port.id} (${port.path}) went away: check the cable and the board's power. ${waits}`,
  };
}

/** The board of a port answers from another path, and is used there. */
export function movedSentence(port: NamedPort, to: string): string {
  return `The board of port ${portCalled(port)} is on ${to} now, no longer on ${port.path}: it is used there, for the same pans.`;
}

/** The question whether the board of a port that is gone is the one at another path. */
export function perhapsSentence(port: NamedPort, to: string): string {
  return `The board of port ${portCalled(port)} seems to be at ${to} now: use it?`;
}

/** Why the port that a board had is not to be opened, or null. What is not listed may be opened all the same. */
export function whereTrouble(port: NamedPort, place: Whereabouts): Trouble | null {
  const words = whereWords(place);
  return words === null ? null : { kind: 'elsewhere', sentence: `Port ${port.id} (${port.path}) ${words} ${waits}` };
}

function whereWords(place: Whereabouts): string | null {
  switch (place.kind) {
    case 'perhaps':
      return `is not there. A board of the same make is at ${place.path}: use it if it is the same one.`;
    case 'alike':
      return `is not there, and the boards at ${place.paths.join(' and ')} look the same: plug it into the socket that it had, or choose its port.`;
    case 'other-board':
      return 'has another board behind it now: plug in the board that belongs to these pans, or choose its port.';
    default:
      return null;
  }
}
