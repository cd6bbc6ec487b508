// Turns away what a page of another address, or one without a session, asks for; and gives every answer its security headers.
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Gate } from './gate.ts';

const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; media-src 'self'; " +
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'cache-control': 'no-store',
  'x-frame-options': 'DENY',
};

export interface Address {
  /** Filled in once the server listens. */
  port: number;
  /** By which names or addresses the server is asked for; this machine's own loopback unless told. */
  names?: readonly string[];
}

const LOOPBACK = ['127.0.0.1', 'localhost'];

/** The cookie's name holds the port, for a browser keeps one set of cookies for all ports of an address. */
export function sessionCookieName(address: Address): string {
  return `panwarden-${address.port}`;
}

/** Answers only what asks for this address by its own name, from its own page: 421 for another name, 403 for another page. */
export function guardServer(server: FastifyInstance, address: Address): void {
  server.addHook('onRequest', async (request, reply) => {
    reply.headers(SECURITY_HEADERS);
    const hosts = (address.names ?? LOOPBACK).map((name) => `${name}:${address.port}`);
    if (!hosts.includes(request.headers.host ?? '')) return refuse(reply, 421, 'This address is not served here.');
    const { origin } = request.headers;
    const mustTell = request.ws || request.method !== 'GET';
    const isOurs = origin !== undefined && hosts.some((host) => origin === `http://${host}`);
    if (origin === undefined ? mustTell : !isOurs) {
      return refuse(reply, 403, 'Only the page that this program serves may ask for this.');
    }
    return undefined;
  });
}

/** Puts what is behind it under the session: without the cookie there is no answer but 401. */
export function requireSession(gate: Gate, address: Address) {
  return async (request: FastifyRequest, reply: FastifyReply) => {
    if (gate.knows(cookieOf(request, sessionCookieName(address)))) return undefined;
    return refuse(reply, 401, 'Open the address that the program printed when it started.');
  };
}

/** The value of a cookie as it was sent; undefined where it is not among them. */
export function cookieOf(request: FastifyRequest, name: string): string | undefined {
  for (const pair of (request.headers.cookie ?? '').split(';')) {
    const [key, value] = pair.trim().split('=', 2);
    if (key === name) return value;
  }
  return undefined;
}

/** Answers with a status and a sentence for the person. */
export function refuse(reply: FastifyReply, status: number, why: string): FastifyReply {
  return reply.code(status).send({ why });
}
