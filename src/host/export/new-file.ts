// A file that is to be written: where, of what type, and its content in pieces.

export interface NewFile {
  path: string;
  /** Media type. */
  type: string;
  pieces: AsyncIterable<Uint8Array | string> | Iterable<Uint8Array | string>;
}
