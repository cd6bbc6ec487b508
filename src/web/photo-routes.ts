// Photos by HTTP: one to keep with a boil, one to look at.
import type { FastifyInstance, FastifyReply } from 'fastify';
import type { Host } from '../host/host.ts';
import type { Gate } from './gate.ts';
import { refuse, requireSession } from './guard.ts';
import type { Address } from './guard.ts';

const LONGEST_PHOTO_BYTES = 10 * 1024 * 1024;
/** A little longer, so that the sentence on what is too long is ours. */
const LONGEST_BODY_BYTES = LONGEST_PHOTO_BYTES + 1_048_576;

interface Boil {
  Params: { boil: string };
  Querystring: { caption?: string; place?: string };
}

/** Gives a boil’s photos to a page that is let in, and takes new ones; what is no photo, or is not there, is refused with a sentence. */
export function addPhotoRoutes(server: FastifyInstance, host: Host, gate: Gate, address: Address): void {
  const onRequest = requireSession(gate, address);

  server.get<{ Params: { boil: string; id: string } }>('/photos/:boil/:id', { onRequest }, async (request, reply) =>
    answerWith(reply, 404, () => {
      const { photo, bytes } = host.season.photo(request.params.boil, request.params.id);
      return reply
        .header('content-type', photo.type)
        .header('x-content-type-options', 'nosniff')
        .header('cache-control', 'private, max-age=86400, immutable')
        .send(Buffer.from(bytes));
    }),
  );

  void server.register(async (scope) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser('*', { parseAs: 'buffer' }, (_request, body, done) => done(null, body));
    const options = { onRequest, bodyLimit: LONGEST_BODY_BYTES };
    scope.post<Boil>('/photos/:boil', options, async (request, reply) =>
      answerWith(reply, 400, () => {
        const bytes = Buffer.isBuffer(request.body) ? new Uint8Array(request.body) : new Uint8Array(0);
        const { caption = '', place } = request.query;
        const keepsPlace = place === 'keep';
        return { photo: host.season.addPhoto(request.params.boil, bytes, { caption, keepsPlace }) };
      }),
    );
  });
}

function answerWith(reply: FastifyReply, status: number, work: () => unknown): unknown {
  try {
    return work();
  } catch (error) {
    return refuse(reply, status, error instanceof Error ? error.message : String(error));
  }
}
