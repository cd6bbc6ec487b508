// Answers the page's requests for what is kept: recordings and other files of a boil, and photos.
import { Readable } from 'node:stream';
import { askedFile } from './asked-file.ts';
import type { Host } from '../host.ts';

export type Kept = Pick<Host, 'exports' | 'season'>;

/** Body, media type and, where it is to be saved, the name of the file. */
export interface KeptAnswer {
  body: BodyInit;
  type: string;
  saveAs?: string;
}

const LONGEST_PHOTO_BYTES = 11 * 1024 * 1024;

/** `path` starts with a slash. Null where nothing of the kind is asked for; throws with a sentence where it is not there. */
export async function keptAnswer(request: Request, host: Kept): Promise<KeptAnswer | null> {
  const { pathname, searchParams } = new URL(request.url);
  const [room, ...names] = pathname.split('/').slice(1).map(decodeURIComponent);
  if (request.method === 'GET' && (room === 'boils' || room === 'export') && names.length === 1)
    return fileAnswer(names[0]!, searchParams, request.signal, host);
  if (room !== 'photos') return null;
  if (request.method === 'GET' && names.length === 2) {
    const { photo, bytes } = host.season.photo(names[0]!, names[1]!);
    return { body: Uint8Array.from(bytes), type: photo.type };
  }
  return request.method === 'POST' && names.length === 1 ? addedPhoto(request, searchParams, names[0]!, host) : null;
}

function fileAnswer(name: string, query: URLSearchParams, signal: AbortSignal, host: Kept): KeptAnswer | null {
  const said = (field: string): string | undefined => query.get(field) ?? undefined;
  const asked = { paper: said('paper'), text: said('text'), year: said('year'), language: said('language') };
  const file = askedFile(host.exports, name, asked, signal);
  if (file === null) return null;
  const pieces = Readable.from(file.pieces, { objectMode: false });
  return { body: Readable.toWeb(pieces) as unknown as ReadableStream, type: file.type, saveAs: file.path };
}

async function addedPhoto(
  request: Request,
  query: URLSearchParams,
  boil: string,
  host: Kept,
): Promise<KeptAnswer | null> {
  const bytes = new Uint8Array(await request.arrayBuffer());
  if (bytes.length > LONGEST_PHOTO_BYTES) throw new Error('This photo is larger than 10 MB: make it smaller first.');
  const asked = { caption: query.get('caption') ?? '', keepsPlace: query.get('place') === 'keep' };
  const photo = host.season.addPhoto(boil, bytes, asked);
  return { body: JSON.stringify({ photo }), type: 'application/json' };
}
