// What the program and the process that reads one port say to each other.

export type ToReader =
  | { open: { path: string; baud: number } }
  /** The bytes that were sent last are dealt with: the next may come. */
  | { next: true }
  | { close: true };

export type FromReader =
  | { opened: true }
  | { failed: string }
  /** At most 16 KiB, and no more before `next`. */
  | { bytes: Uint8Array }
  | { gone: true }
  | { closed: true }
  /** Once a second: how much processor time it took since the last, ms. */
  | { beat: number };
