// A WebP picture without what is said beside it.

const HEAD_BYTES = 12;
const CHUNK_HEAD_BYTES = 8;
/** Chunks of the container (RFC 9649, memory) that belong to the picture. */
const PICTURE: ReadonlySet<string> = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);
/** Flags of VP8X that say that Exif and XMP follow. */
const EXIF_AND_XMP = 0x0c;

/** What stands behind its end goes, too. null where the picture has no end. */
export function bareWebp(bytes: Uint8Array): Uint8Array | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = bytes.length < HEAD_BYTES ? Infinity : CHUNK_HEAD_BYTES + view.getUint32(4, true);
  if (end > bytes.length) return null;
  const kept: Uint8Array[] = [];
  for (let at = HEAD_BYTES; at < end;) {
    if (at + CHUNK_HEAD_BYTES > end) return null;
    const length = view.getUint32(at + 4, true);
    // Chunks stand on even places.
    const next = at + CHUNK_HEAD_BYTES + length + (length % 2);
    if (next > end) return null;
    const name = String.fromCharCode(...bytes.subarray(at, at + 4));
    if (PICTURE.has(name)) kept.push(name === 'VP8X' ? withoutFlags(bytes.slice(at, next)) : bytes.subarray(at, next));
    at = next;
  }
  const whole = Uint8Array.from(Buffer.concat([bytes.subarray(0, HEAD_BYTES), ...kept]));
  new DataView(whole.buffer).setUint32(4, whole.length - CHUNK_HEAD_BYTES, true);
  return kept.length === 0 ? null : whole;
}

function withoutFlags(chunk: Uint8Array): Uint8Array {
  chunk[CHUNK_HEAD_BYTES] = (chunk[CHUNK_HEAD_BYTES] ?? 0) & ~EXIF_AND_XMP;
  return chunk;
}
