// A JPEG picture without what is said beside it, but still the right way up.

/** Markers of ISO/IEC 10918-1 (memory). */
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const COMMENT = 0xfe;
/** Application segments 0 (JFIF), 2 (a colour profile) and 14 (how the colours are kept) belong to the picture. */
const KEPT_APPLICATIONS: ReadonlySet<number> = new Set([0xe0, 0xe2, 0xee]);
const EXIF_SEGMENT = 0xe1;
const COLOUR_PROFILE = 'ICC_PROFILE\0';

const textAt = (bytes: Uint8Array, at: number, length: number): string =>
  String.fromCharCode(...bytes.subarray(at, at + length));

/**
 * Everything but the picture goes: Exif, XMP, IPTC, comments, and whatever stands behind its end, such as a second
 * picture with a place of its own. Only which way is up is said again. null where the picture has no end.
 */
export function bareJpeg(bytes: Uint8Array): Uint8Array | null {
  const kept: Uint8Array[] = [Uint8Array.of(0xff, SOI)];
  let orientation = 1;
  for (let at = 2; at < bytes.length;) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1];
    if (marker === undefined) return null;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (marker === EOI) return together([kept[0]!, upright(orientation), ...kept.slice(1), bytes.subarray(at, at + 2)]);
    const end = segmentEnd(bytes, at, marker);
    if (end === null) return null;
    if (marker === EXIF_SEGMENT) orientation = orientationOf(bytes.subarray(at + 4, end)) ?? orientation;
    if (isPicture(bytes, at, marker)) kept.push(bytes.subarray(at, end));
    at = end;
  }
  return null;
}

function isPicture(bytes: Uint8Array, at: number, marker: number): boolean {
  if (marker === COMMENT) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  if (marker === 0xe2) return textAt(bytes, at + 4, COLOUR_PROFILE.length) === COLOUR_PROFILE;
  return KEPT_APPLICATIONS.has(marker);
}

/** Behind the segment; behind a scan's data where one follows. null where the file ends within. */
function segmentEnd(bytes: Uint8Array, at: number, marker: number): number | null {
  // Restart markers and TEM have no length.
  if ((marker >= 0xd0 && marker <= 0xd7) || marker === 0x01) return at + 2;
  const end = at + 2 + ((bytes[at + 2] ?? 0) << 8) + (bytes[at + 3] ?? 0);
  if (end < at + 4 || end > bytes.length) return null;
  return marker === SOS ? scanEnd(bytes, end) : end;
}

/** In a scan's data FF is followed by 00 or a restart marker; any other marker ends it. */
function scanEnd(bytes: Uint8Array, from: number): number | null {
  for (let at = from; at + 1 < bytes.length; at += 1) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1]!;
    if (next !== 0 && next !== 0xff && !(next >= 0xd0 && next <= 0xd7)) return at;
  }
  return null;
}

const EXIF_HEAD = 'Exif\0\0';
const ORIENTATION_TAG = 0x0112;

/** 1 to 8 (Exif 2.3, memory); null where the segment does not say. */
function orientationOf(segment: Uint8Array): number | null {
  if (textAt(segment, 0, EXIF_HEAD.length) !== EXIF_HEAD || segment.length < 14) return null;
  const tiff = new DataView(segment.buffer, segment.byteOffset + 6, segment.length - 6);
  const little = tiff.getUint16(0) === 0x4949;
  const first = tiff.getUint32(4, little);
  if (first + 2 > tiff.byteLength) return null;
  const count = tiff.getUint16(first, little);
  for (let entry = first + 2, left = count; left > 0 && entry + 12 <= tiff.byteLength; entry += 12, left -= 1) {
    if (tiff.getUint16(entry, little) !== ORIENTATION_TAG) continue;
    const value = tiff.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** An Exif segment that says which way is up and nothing else; empty where it is up already. */
function upright(orientation: number): Uint8Array {
  if (orientation === 1) return new Uint8Array(0);
  const head = [0xff, EXIF_SEGMENT, 0, 34, ...[...EXIF_HEAD].map((letter) => letter.charCodeAt(0))];
  const tiff = [0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 1];
  const entry = [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0];
  return Uint8Array.from([...head, ...tiff, ...entry]);
}

function together(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
