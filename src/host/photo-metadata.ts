// Takes out of a photo what it says beside the picture: place, time, camera and owner; and knows which files are photos at all.
import type { Photo } from '../core/season/records.ts';
import { bareJpeg } from './photo-jpeg.ts';
import { barePng } from './photo-png.ts';
import { bareWebp } from './photo-webp.ts';

export interface Picture {
  type: Photo['type'];
  bytes: Uint8Array;
}

const STRIPPERS: Record<Photo['type'], (bytes: Uint8Array) => Uint8Array | null> = {
  'image/jpeg': bareJpeg,
  'image/png': barePng,
  'image/webp': bareWebp,
};

const startsWith = (bytes: Uint8Array, signature: readonly number[], at = 0): boolean =>
  signature.every((byte, index) => bytes[at + index] === byte);

const RIFF = [0x52, 0x49, 0x46, 0x46];
const WEBP = [0x57, 0x45, 0x42, 0x50];
const FTYP = [0x66, 0x74, 0x79, 0x70];

/** By what is in the file, whatever it is called; null for anything else. */
export function photoType(bytes: Uint8Array): Photo['type'] | null {
  if (startsWith(bytes, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  return startsWith(bytes, RIFF) && startsWith(bytes, WEBP, 8) ? 'image/webp' : null;
}

/** The picture as it is to be kept. Throws an Error with a sentence for what is no photo, or cannot be read to its end. */
export function pictureToKeep(bytes: Uint8Array, keepsPlace: boolean): Picture {
  const type = photoType(bytes);
  if (type === null) throw new Error(`This is no JPEG, PNG or WebP picture.${whatToDo(bytes)}`);
  if (keepsPlace) return { type, bytes };
  const bare = STRIPPERS[type](bytes);
  if (bare === null) {
    throw new Error(
      'This picture ends too soon or is damaged, so what it says of its place could not be taken out. Send it anew, or as a screenshot.',
    );
  }
  return { type, bytes: bare };
}

/** Telephones often keep HEIF files. */
const whatToDo = (bytes: Uint8Array): string =>
  startsWith(bytes, FTYP, 4) ? ' A telephone can be told to take photos as JPEG, or to send them so.' : '';
