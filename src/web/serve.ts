// Serves the screen and its socket on the loopback address, and nowhere else.
import fastifyStatic from '@fastify/static';
import fastifyWebsocket from '@fastify/websocket';
import fastify from 'fastify';
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
import { addSessionRoute } from './session-route.ts';

const MOST_PAGES = 20;
const MOST_CONNECTIONS = 100;
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
  const server = makeServer();
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

function makeServer(): FastifyInstance {
  const server = fastify({
    http: { maxHeaderSize: 16_384, headersTimeout: 10_000 },
    requestTimeout: 300_000,
    keepAliveTimeout: 5000,
    forceCloseConnections: true,
  });
  server.server.maxConnections = MOST_CONNECTIONS;
  server.setNotFoundHandler((_request, reply) => refuse(reply, 404, 'There is nothing at this address.'));
  server.setErrorHandler((error: { statusCode?: number; message: string }, _request, reply) => {
    const status = error.statusCode ?? 500;
    return refuse(reply, status, status < 500 ? error.message : 'Something went wrong in the program.');
  });
  return server;
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
  const bound = server.server.address();
  if (bound === null || typeof bound === 'string') throw new Error('The server has no port.');
  return bound.port;
}
