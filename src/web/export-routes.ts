// Files of a boil or a season to take away: tables, SenML, the report on paper and jar labels.
import { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { askedFile } from '../host/export/asked-file.ts';
import type { NewFile } from '../host/export/new-file.ts';
import type { Host } from '../host/host.ts';
import type { Gate } from './gate.ts';
import { refuse, requireSession } from './guard.ts';
import type { Address } from './guard.ts';

interface Asked {
  Params: { file: string };
  Querystring: { paper?: string; text?: string; year?: string; language?: string };
}

/** Each works in slices, but many of them would take all of the slices. */
const MOST_AT_ONCE = 3;
const NO_SUCH_FILE = 'There is no such file.';

/** Gives files made of a boil or a season to a page that is let in, only so many at once (503 beyond them); 404 for what is not there. */
export function addExportRoutes(server: FastifyInstance, host: Host, gate: Gate, address: Address): void {
  const onRequest = requireSession(gate, address);
  let underWay = 0;

  const download = async (request: FastifyRequest<Asked>, reply: FastifyReply): Promise<FastifyReply> => {
    if (underWay >= MOST_AT_ONCE) return refuse(reply, 503, 'Other files are being made: try again in a moment.');
    const left = new AbortController();
    let file: NewFile | null;
    try {
      const { paper, text, year, language } = request.query;
      file = askedFile(host.exports, request.params.file, { paper, text, year, language }, left.signal);
    } catch (error) {
      return refuse(reply, 404, error instanceof Error ? error.message : String(error));
    }
    if (file === null) return refuse(reply, 404, NO_SUCH_FILE);
    underWay += 1;
    reply.raw.once('close', () => {
      underWay -= 1;
      left.abort();
    });
    return answer(reply, file);
  };
  server.get<Asked>('/export/:file', { onRequest }, download);
  /** Where recordings stood before there were other forms. */
  server.get<Asked>('/boils/:file', { onRequest }, download);
}

function answer(reply: FastifyReply, { path, type, pieces }: NewFile): FastifyReply {
  return reply
    .header('content-type', type)
    .header('content-disposition', `attachment; filename*=UTF-8''${encodeURIComponent(path)}`)
    .send(Readable.from(pieces, { objectMode: false }));
}
