// What a disk may hold after a power cut: all that was synced, and of everything later any sectors or none.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Change } from './change-log.ts';

const SECTOR = 512;

interface Later {
  offset: number;
  bytes: Buffer;
  /** A change of size instead of a write. */
  size: number | null;
}

interface DiskFile {
  durable: Buffer;
  later: Later[];
}

type NameChange = (names: Map<string, DiskFile>) => void;

/** Plays changes up to the cut; `random` gives 0 to 1 and decides what of the rest came through. */
export class Disk {
  /** As the programs saw them. */
  readonly #names = new Map<string, DiskFile>();
  readonly #opened = new Map<number, DiskFile>();
  /** As they are on disk, and the changes of names that are not, in order. */
  readonly #durableNames = new Map<string, DiskFile>();
  #laterNames: NameChange[] = [];

  play(change: Change): void {
    switch (change.kind) {
      case 'open':
        this.#open(change);
        break;
      case 'write':
        this.#file(change.id).later.push({ offset: change.offset, bytes: change.bytes, size: null });
        break;
      case 'truncate':
        this.#file(change.id).later.push({ offset: 0, bytes: Buffer.alloc(0), size: change.size });
        break;
      case 'sync':
        // After a sync that failed nobody knows: what was written before may be lost although later ones succeed.
        if (!change.failed) settle(this.#file(change.id), () => true);
        break;
      case 'unlink':
        this.#rename((names) => names.delete(change.path));
        break;
      case 'rename':
        this.#rename((names) => {
          const file = names.get(change.from);
          names.delete(change.from);
          if (file !== undefined) names.set(change.to, file);
        });
        break;
      case 'sync-folder':
        this.#settleNames(this.#laterNames.length);
    }
  }

  /** Writes what is left after a cut now. Names change in order, as a journal keeps them; sectors in any. */
  cut(random: () => number): void {
    this.#settleNames(Math.floor(random() * (this.#laterNames.length + 1)));
    for (const [path, file] of this.#durableNames) {
      const share = [0, 0.5, 0.95, 1][Math.floor(random() * 4)] ?? 0;
      settle(file, () => random() < share);
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, file.durable);
    }
  }

  #open({ id, path, isNew }: Extract<Change, { kind: 'open' }>): void {
    const known = this.#names.get(path);
    const file = isNew || known === undefined ? { durable: Buffer.alloc(0), later: [] } : known;
    if (file !== known) this.#rename((names) => names.set(path, file));
    this.#opened.set(id, file);
  }

  #file(id: number): DiskFile {
    const file = this.#opened.get(id);
    if (file === undefined) throw new Error(`the log names a file that was not opened: ${id}`);
    return file;
  }

  #rename(change: NameChange): void {
    change(this.#names);
    this.#laterNames.push(change);
  }

  #settleNames(count: number): void {
    for (const change of this.#laterNames.slice(0, count)) change(this.#durableNames);
    this.#laterNames = this.#laterNames.slice(count);
  }
}

/** Applies what was written since the last sync, sector by sector as far as `comes` says so. */
function settle(file: DiskFile, comes: () => boolean): void {
  for (const { offset, bytes, size } of file.later) {
    if (size !== null) {
      if (comes()) file.durable = resized(file.durable, size);
      continue;
    }
    for (let at = 0; at < bytes.length;) {
      const end = Math.min(bytes.length, at + SECTOR - ((offset + at) % SECTOR));
      if (comes()) write(file, offset + at, bytes.subarray(at, end));
      at = end;
    }
  }
  file.later = [];
}

function write(file: DiskFile, offset: number, bytes: Buffer): void {
  if (file.durable.length < offset + bytes.length) file.durable = resized(file.durable, offset + bytes.length);
  bytes.copy(file.durable, offset);
}

/** The same bytes at another size, zeros behind them. A file grows by a sector at a time, so it is given room to grow on. */
function resized(bytes: Buffer, size: number): Buffer {
  // What lies behind the end was never written: to make a file shorter takes a room of its own.
  if (size >= bytes.length && size <= bytes.buffer.byteLength) return Buffer.from(bytes.buffer, 0, size);
  const room = Buffer.alloc(2 * size);
  bytes.copy(room, 0, 0, Math.min(size, bytes.length));
  return room.subarray(0, size);
}
