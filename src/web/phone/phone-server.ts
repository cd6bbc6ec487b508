// Serves the phones' page in the local network: a door that trades an invitation for a cookie, and a socket that shows the pans.
import fastifyStatic from '@fastify/static';
import fastifyWebsocket from '@fastify/websocket';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import type { Host } from '../../host/host.ts';
import type { KeptPhone, PhoneServing } from '../../host/phones.ts';
import { cookieOf, guardServer, refuse } from '../guard.ts';
import type { Address } from '../guard.ts';
import { plainServer, portOf } from '../plain-server.ts';
import { Crowd } from './crowd.ts';
import { PhoneSocket } from './phone-socket.ts';
import type { RawSocket } from './phone-socket.ts';

const LONGEST_MESSAGE_BYTES = 1024;
const WRONG_TRIES_A_MINUTE = 5;
const MINUTE_MS = 60_000;
/** A phone stays let in over the winter; it is put out by hand. */
const COOKIE_SECONDS = 365 * 24 * 3600;

const letInSchema = z.strictObject({ token: z.string().max(200), name: z.string().max(200) });

export interface PhoneServerOptions {
  /** The built screen. */
  folder: string;
  /** A clock that never steps, for the lock after wrong tries. */
  nowMs: () => number;
}

/** Throws with a sentence when the address or the port cannot be had. */
export async function servePhones(
  host: Host,
  { folder, nowMs }: PhoneServerOptions,
  where: { address: string; port: number },
): Promise<PhoneServing> {
  const address: Address = { port: 0, names: [where.address] };
  const cookie = (): string => `panwarden-phone-${address.port}`;
  const crowd = new Crowd();
  const phoneOf = (request: FastifyRequest): KeptPhone | null => host.phones.known(cookieOf(request, cookie()));
  const server = plainServer({ headerBytes: 8192, bodyBytes: LONGEST_MESSAGE_BYTES, requestMs: 30_000 });
  await server.register(fastifyWebsocket, { options: { maxPayload: LONGEST_MESSAGE_BYTES } });
  guardServer(server, address);
  await server.register(fastifyStatic, {
    root: folder,
    index: 'phone.html',
    cacheControl: false,
    // The desktop's own page has no business here.
    allowedPath: (path) => /^\/($|phone\.html$|assets\/)/.test(path),
  });
  addDoor(server, host, { phoneOf, cookie, nowMs });
  server.route({
    method: 'GET',
    url: '/socket',
    websocket: true,
    onRequest: async (request, reply) => (phoneOf(request) === null ? refuse(reply, 401, NOT_LET_IN) : undefined),
    preHandler: async (request, reply) =>
      crowd.hasRoomFor(request.ip) ? undefined : refuse(reply, 503, 'Too many phones look on: close one first.'),
    handler: (raw: RawSocket, request) => {
      const phone = phoneOf(request);
      if (phone !== null) crowd.add(new PhoneSocket(raw, host, phone.id, request.ip));
    },
  });
  address.port = await listen(server, where);
  return {
    url: `http://${where.address}:${address.port}/`,
    port: address.port,
    connected: () => crowd.phones(),
    putOut: (id) => crowd.each(id, (socket) => socket.end()),
    tellAgain: (id) => crowd.each(id, (socket) => socket.tellWhatItMay()),
    close: () => server.close(),
  };
}

const NOT_LET_IN = 'This phone is not let in: scan a new code on the screen by the pans, under Settings.';

interface Door {
  phoneOf: (request: FastifyRequest) => KeptPhone | null;
  cookie: () => string;
  nowMs: () => number;
}

/** Wrong invitations are counted for all addresses together: nobody guesses faster from many. */
function addDoor(server: FastifyInstance, host: Host, { phoneOf, cookie, nowMs }: Door): void {
  let wrongMs: number[] = [];
  server.post('/let-in', { bodyLimit: LONGEST_MESSAGE_BYTES }, async (request, reply) => {
    const body = letInSchema.safeParse(request.body);
    const known = phoneOf(request);
    if (known !== null) {
      if (body.success) host.phones.letInAgain(known.id, body.data.token, body.data.name);
      return reply.code(204).send();
    }
    wrongMs = wrongMs.filter((triedMs) => nowMs() - triedMs < MINUTE_MS);
    if (wrongMs.length >= WRONG_TRIES_A_MINUTE) return refuse(reply, 429, 'Too many wrong tries: wait a minute.');
    const letIn = body.success ? host.phones.letIn(body.data.token, body.data.name) : null;
    if (letIn === null) {
      wrongMs.push(nowMs());
      return refuse(reply, 401, NOT_LET_IN);
    }
    const rules = `Path=/; Max-Age=${COOKIE_SECONDS}; HttpOnly; SameSite=Strict`;
    return reply.header('set-cookie', `${cookie()}=${letIn.secret}; ${rules}`).code(204).send();
  });
  server.get('/session', async (request: FastifyRequest, reply: FastifyReply) =>
    phoneOf(request) === null ? refuse(reply, 401, NOT_LET_IN) : reply.code(204).send(),
  );
}

/** A port that was used before and is taken now is given up for a free one. */
async function listen(server: FastifyInstance, { address, port }: { address: string; port: number }): Promise<number> {
  try {
    await server.listen({ host: address, port }).catch(async (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EADDRINUSE' || port === 0) throw error;
      await server.listen({ host: address, port: 0 });
    });
  } catch (error) {
    await server.close();
    throw new Error(
      `The phones' page cannot be served at ${address}: ${(error as Error).message}. Choose another network, or switch it off and on again.`,
    );
  }
  return portOf(server);
}
