// Reads the log that file-log.c has written: every change to the files of a data folder, in order.
export type Change =
  | { kind: 'open'; id: number; path: string; isNew: boolean }
  | { kind: 'write'; id: number; offset: number; bytes: Buffer }
  | { kind: 'truncate'; id: number; size: number }
  | { kind: 'sync'; id: number; failed: boolean }
  | { kind: 'unlink'; path: string }
  | { kind: 'rename'; from: string; to: string }
  | { kind: 'sync-folder'; path: string };

export function readChanges(log: Buffer): Change[] {
  let at = 0;
  const number = () => Number(log.readBigInt64LE((at += 8) - 8));
  const bytes = () => {
    const length = number();
    return log.subarray(at, (at += length));
  };
  const text = () => bytes().toString('utf8');
  const changes: Change[] = [];
  while (at < log.length) {
    const letter = String.fromCharCode(log[at++] ?? 0);
    changes.push(changeOf(letter, number, bytes, text));
  }
  return changes;
}

function changeOf(letter: string, number: () => number, bytes: () => Buffer, text: () => string): Change {
  switch (letter) {
    case 'O':
    case 'N':
      return { kind: 'open', id: number(), path: text(), isNew: letter === 'N' };
    case 'W':
      return { kind: 'write', id: number(), offset: number(), bytes: bytes() };
    case 'T':
      return { kind: 'truncate', id: number(), size: number() };
    case 'S':
    case 'F':
      return { kind: 'sync', id: number(), failed: letter === 'F' };
    case 'U':
      return { kind: 'unlink', path: text() };
    case 'R':
      return { kind: 'rename', from: text(), to: text() };
    case 'D':
      return { kind: 'sync-folder', path: text() };
    default:
      throw new Error(`the log holds a letter that it should not: ${letter}`);
  }
}
