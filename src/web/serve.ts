// Serves the screen and its socket on the loopback address, and nowhere else.
import fastifyStatic from '@fastify/static';
import fastifyWebsocket from '@fastify/websocket';
import type { FastifyInstance } from 'fastify';
import type { Host } from '../host/host.ts';
import { Gate } from './gate.ts';
import { guardServer, refuse, requireSession } from './guard.ts';
import { attachPage } from './page-socket.ts';
import type { PageSocket } from './page-socket.ts';
import { addExportRoutes } from './export-routes.ts';
import { addPhotoRoutes } from './photo-routes.ts';
import { servePhones } from './phone/phone-server.ts';
import { addRecordingRoutes } from './recording-routes.ts';
import { plainServer, portOf } from './plain-server.ts';
import { addSessionRoute } from './session-route.ts';

const MOST_PAGES = 20;
const LONGEST_MESSAGE_BYTES = 65_536;

export interface ServeOptions {
  /** 0 takes a free one. */
  port: number;
  /** The built screen. */
  folder: string;
  /** A clock that never steps, for the lock after wrong tries. */
  nowMs: () => number;
}

export interface Served {
  /** With the token that lets one page in. */
  url: string;
  port: number;
  close(): Promise<void>;
}

/** Throws with a sentence when the port cannot be had. */
export async function serveHost(host: Host, options: ServeOptions): Promise<Served> {
  const gate = new Gate(options.nowMs);
  const address = { port: 0 };
  const server = plainServer({ headerBytes: 16_384, requestMs: 300_000 });
  await server.register(fastifyWebsocket, { options: { maxPayload: LONGEST_MESSAGE_BYTES } });
  guardServer(server, address);
  await server.register(fastifyStatic, { root: options.folder, cacheControl: false });
  addSessionRoute(server, gate, address);
  addRecordingRoutes(server, host, gate, address);
  addExportRoutes(server, host, gate, address);
  addPhotoRoutes(server, host, gate, address);
  server.route({
    method: 'GET',
    url: '/socket',
    websocket: true,
    onRequest: requireSession(gate, address),
    preHandler: async (_request, reply) =>
      server.websocketServer.clients.size < MOST_PAGES ? undefined : refuse(reply, 503, 'Too many pages are open.'),
    handler: (socket: PageSocket) => attachPage(socket, host),
  });
  address.port = await listen(server, options.port);
  await host.phones.servedBy((where) => servePhones(host, options, where));
  return {
    url: `http://127.0.0.1:${address.port}/#token=${gate.token}`,
    port: address.port,
    close: () => server.close(),
  };
}

async function listen(server: FastifyInstance, port: number): Promise<number> {
  try {
    await server.listen({ host: '127.0.0.1', port });
  } catch (error) {
    await server.close();
    const { code } = error as NodeJS.ErrnoException;
    const why = code === 'EADDRINUSE' ? 'another program uses it' : String((error as Error).message);
    throw new Error(`The screen cannot be served on port ${port}: ${why}. Give another port, or 0 for a free one.`);
  }
  return portOf(server);
}
