// Takes place, time and camera out of photos that are built here byte by byte, keeps the picture, and refuses what is no photo.
import { expect, test } from 'vitest';
import { photoType, pictureToKeep } from '../../src/host/photo-metadata.ts';

const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));
const holds = (bytes: Uint8Array, text: string): boolean => Buffer.from(bytes).includes(text, 0, 'latin1');

/** A JPEG segment: marker, length with itself, contents. */
const segment = (marker: number, contents: number[]): number[] => [
  ...[0xff, marker, (contents.length + 2) >> 8, (contents.length + 2) & 255],
  ...contents,
];
/** Exif in big-endian TIFF with one entry, the orientation, and a place as a phone would write it behind. */
const exif = (orientation: number): number[] => [
  ...ascii('Exif\0\0MM'),
  ...[0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0, 0, 0, 0, 0],
  ...ascii('GPS 48.1234 N'),
];
const scan = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56];
const jpeg = (orientation: number): Uint8Array =>
  Uint8Array.from([
    ...[0xff, 0xd8],
    ...segment(0xe0, ascii('JFIF\0')),
    ...segment(0xe1, exif(orientation)),
    ...segment(0xe1, ascii('http://ns.adobe.com/xap/1.0/\0GPSLatitude')),
    ...segment(0xe2, ascii('ICC_PROFILE\0colours')),
    ...segment(0xe2, ascii('MPF\0second picture')),
    ...segment(0xed, ascii('Photoshop 3.0\0City')),
    ...segment(0xfe, ascii('a comment with a place')),
    ...segment(0xdb, ascii('tables')),
    ...scan,
    ...[0xff, 0xd9],
    ...ascii('GPS of a second picture behind the end'),
  ]);

test('a JPEG loses Exif, XMP, IPTC, comments and what stands behind its end, and keeps its picture and its colours', () => {
  const { type, bytes } = pictureToKeep(jpeg(1), false);
  expect(type).toBe('image/jpeg');
  for (const gone of ['GPS', 'Exif', 'xap', 'City', 'comment', 'MPF']) expect(holds(bytes, gone), gone).toBe(false);
  for (const kept of ['JFIF', 'ICC_PROFILE', 'tables']) expect(holds(bytes, kept), kept).toBe(true);
  expect([...bytes.subarray(-2)]).toEqual([0xff, 0xd9]);
  expect(Buffer.from(bytes).includes(Buffer.from(scan))).toBe(true);
});

test('a JPEG that lies on its side still says so, and nothing else', () => {
  const { bytes } = pictureToKeep(jpeg(6), false);
  expect(holds(bytes, 'GPS')).toBe(false);
  const at = Buffer.from(bytes).indexOf('Exif');
  expect([...bytes.subarray(at + 6, at + 32)]).toEqual([
    ...ascii('MM'),
    ...[0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0, 0, 0, 0, 0],
  ]);
  // What was made bare is bare already.
  expect(pictureToKeep(bytes, false).bytes).toEqual(bytes);
});

const chunk = (name: string, contents: number[]): number[] => [
  ...[0, 0, 0, contents.length],
  ...ascii(name),
  ...contents,
  ...[0, 0, 0, 0],
];
const png = Uint8Array.from([
  ...[0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  ...chunk('IHDR', new Array<number>(13).fill(1)),
  ...chunk('gAMA', [0, 0, 1, 1]),
  ...chunk('eXIf', ascii('GPS')),
  ...chunk('iTXt', ascii('XML:com.adobe.xmp place')),
  ...chunk('IDAT', ascii('picture')),
  ...chunk('IEND', []),
  ...ascii('GPS behind'),
]);

test('a PNG loses its words and Exif, and keeps the picture', () => {
  const { type, bytes } = pictureToKeep(png, false);
  expect(type).toBe('image/png');
  for (const gone of ['GPS', 'eXIf', 'place']) expect(holds(bytes, gone), gone).toBe(false);
  for (const kept of ['IHDR', 'gAMA', 'picture', 'IEND']) expect(holds(bytes, kept), kept).toBe(true);
});

const riff = (chunks: number[]): Uint8Array =>
  Uint8Array.from([...ascii('RIFF'), chunks.length + 4, 0, 0, 0, ...ascii('WEBP'), ...chunks]);
const part = (name: string, contents: number[]): number[] => [
  ...ascii(name),
  ...[contents.length, 0, 0, 0],
  ...contents,
  ...(contents.length % 2 === 1 ? [0] : []),
];

test('a WebP loses Exif and XMP with the flags that announce them, and its length is right again', () => {
  const whole = riff([
    ...part('VP8X', [0x2c, 0, 0, 0, 1, 0, 0, 1, 0, 0]),
    ...part('VP8 ', ascii('picture')),
    ...part('EXIF', ascii('GPS')),
    ...part('XMP ', ascii('place')),
  ]);
  const { type, bytes } = pictureToKeep(whole, false);
  expect(type).toBe('image/webp');
  for (const gone of ['GPS', 'place', 'EXIF', 'XMP']) expect(holds(bytes, gone), gone).toBe(false);
  expect(holds(bytes, 'picture')).toBe(true);
  expect(bytes[20]).toBe(0x20);
  expect(new DataView(bytes.buffer).getUint32(4, true)).toBe(bytes.length - 8);
});

test('the place stays where it is wanted: then the photo is kept as it is', () => {
  expect(pictureToKeep(jpeg(1), true).bytes).toEqual(jpeg(1));
});

test.each([jpeg(1).subarray(0, 60), png.subarray(0, 50), riff(part('VP8 ', ascii('picture'))).subarray(0, 20)])(
  'a picture that ends too soon is refused, for nobody knows what it says',
  (cut) => {
    expect(() => pictureToKeep(cut, false)).toThrow('ends too soon');
  },
);

test('what is no photo is refused in words, whatever it is called; a phone’s own kind with what to do', () => {
  expect(photoType(Uint8Array.from(ascii('<svg onload="x">')))).toBeNull();
  expect(() => pictureToKeep(Uint8Array.from(ascii('%PDF-1.7')), false)).toThrow('no JPEG, PNG or WebP');
  const heic = Uint8Array.from([0, 0, 0, 24, ...ascii('ftypheic')]);
  expect(() => pictureToKeep(heic, false)).toThrow('can be told to take photos as JPEG');
  expect(() => pictureToKeep(new Uint8Array(0), true)).toThrow('no JPEG, PNG or WebP');
});
