// Recordings by HTTP: a file to import into the notebook or only to open.
import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Host } from '../host/host.ts';
import type { Gate } from './gate.ts';
import { refuse, requireSession } from './guard.ts';
import type { Address } from './guard.ts';

const LONGEST_RECORDING_BYTES = 2_000_000_000;

/** `POST /import` and `/opened`: recordings from a page that is let in, of at most two gigabytes; a damaged one is refused with a sentence. */
export function addRecordingRoutes(server: FastifyInstance, host: Host, gate: Gate, address: Address): void {
  const onRequest = requireSession(gate, address);

  void server.register(async (scope) => {
    scope.removeAllContentTypeParsers();
    scope.addContentTypeParser('*', (_request, payload, done) => done(null, payload));
    const options = { onRequest, bodyLimit: LONGEST_RECORDING_BYTES };
    scope.post('/import', options, (request, reply) =>
      answerWith(reply, async () => host.importRecording(bodyOf(request), 'the file')),
    );
    scope.post('/opened', options, (request, reply) =>
      answerWith(reply, async () => host.openRecording(bodyOf(request), 'the file')),
    );
  });
}

async function answerWith(reply: FastifyReply, work: () => Promise<unknown>): Promise<unknown> {
  try {
    return await work();
  } catch (error) {
    return refuse(reply, 400, error instanceof Error ? error.message : String(error));
  }
}

function bodyOf(request: FastifyRequest): AsyncIterable<Uint8Array> {
  return request.body instanceof Readable ? request.body : Readable.from([]);
}
