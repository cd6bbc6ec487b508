// Puts into a sentence why a port cannot be opened or went away: which port, the cause and the cure.

export type TroubleKind = 'missing' | 'held' | 'forbidden' | 'no-port' | 'unplugged' | 'other';

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

/** What an error on opening a port means. */
export function openingTrouble(port: NamedPort, error: unknown): Trouble {
  const message = error instanceof Error ? error.message : String(error);
  const kind = causes.find(([words]) => words.test(message))?.[1] ?? 'other';
  return { kind, sentence: `Port ${port.id} (${port.path}) ${openingWords(kind, message)} ${waits}` };
}

function openingWords(kind: TroubleKind, message: string): string {
  switch (kind) {
    case 'missing':
      return 'is not there: plug the board in, or choose the port it has now.';
    case 'held':
      return 'is held by another program: close that program, such as a serial monitor or a second copy of this one.';
    case 'forbidden':
      return (
        'may not be opened by this user, or is held by another program: close other programs that use it; on Linux ' +
        'join the group that owns it ("sudo usermod -aG dialout $USER" on Debian, group uucp on Arch) and sign in again.'
      );
    case 'no-port':
      return 'is no serial port: choose the port that the board is plugged into.';
    default:
      return `cannot be opened (${message.trim()}): check the cable, the port and its baud rate.`;
  }
}

/** A port that was open and is gone. */
export function lostTrouble(port: NamedPort): Trouble {
  return {
    kind: 'unplugged',
    sentence: `Port ${port.id} (${port.path}) went away: check the cable and the board's power. ${waits}`,
  };
}
