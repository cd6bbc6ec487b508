// A PNG picture without what is said beside it.

const SIGNATURE_BYTES = 8;
/** Length, name and check of a chunk (PNG, third edition, section 5.3, memory). */
const FRAME_BYTES = 12;
/** Chunks that hold words, times and Exif; and the program's own ones, which nobody knows. */
const WORDS: ReadonlySet<string> = new Set(['eXIf', 'tEXt', 'zTXt', 'iTXt', 'tIME', 'dSIG']);
/** Chunks that belong to the picture although a viewer may pass over them. */
const PICTURE: ReadonlySet<string> = new Set([
  ...['cHRM', 'gAMA', 'iCCP', 'sBIT', 'sRGB', 'cICP', 'mDCV', 'cLLI', 'bKGD', 'hIST', 'tRNS', 'pHYs', 'sPLT'],
  ...['acTL', 'fcTL', 'fdAT'],
]);

/** What stands behind its end goes, too. null where the picture has no end. */
export function barePng(bytes: Uint8Array): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kept = [bytes.subarray(0, SIGNATURE_BYTES)];
  for (let at = SIGNATURE_BYTES; at + FRAME_BYTES <= bytes.length;) {
    const end = at + FRAME_BYTES + view.getUint32(at);
    if (end > bytes.length) return null;
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (isPicture(name)) kept.push(bytes.subarray(at, end));
    if (name === 'IEND') return Uint8Array.from(Buffer.concat(kept));
    at = end;
  }
  return null;
}

/** A name that begins with a capital is needed to show the picture. */
const isPicture = (name: string): boolean => !WORDS.has(name) && (/^[A-Z]/.test(name) || PICTURE.has(name));
