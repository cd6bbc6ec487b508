// The server that both pages stand on: its limits are handed in, its answers to what is not there and what went wrong are the same.
import fastify from 'fastify';
import type { FastifyInstance } from 'fastify';
import { refuse } from './guard.ts';

const MOST_CONNECTIONS = 100;

export interface Limits {
  /** Bytes of a request's headers, and of a body unless its route says otherwise. */
  headerBytes: number;
  bodyBytes?: number;
  /** A request that takes longer is ended, ms. */
  requestMs: number;
}

/** A server with limits on headers, bodies, times and connections, and nothing else on it yet. */
export function plainServer({ headerBytes, bodyBytes, requestMs }: Limits): FastifyInstance {
  const server = fastify({
    http: { maxHeaderSize: headerBytes, headersTimeout: 10_000 },
    requestTimeout: requestMs,
    keepAliveTimeout: 5000,
    ...(bodyBytes === undefined ? {} : { bodyLimit: bodyBytes }),
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

/** The port that a listening server has; throws where it has none. */
export function portOf(server: FastifyInstance): number {
  const bound = server.server.address();
  if (bound === null || typeof bound === 'string') throw new Error('The server has no port.');
  return bound.port;
}
