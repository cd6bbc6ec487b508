// The door of the page: trades its token for the session cookie, and tells whether the cookie is good.
import type { FastifyInstance } from 'fastify';
import { z } from 'zod';
import type { Gate } from './gate.ts';
import { cookieOf, refuse, requireSession, sessionCookieName } from './guard.ts';
import type { Address } from './guard.ts';

const bodySchema = z.object({ token: z.string().max(200) });

/** `POST /session` trades the token of the address, once, for the page’s cookie: 401 for a wrong one, 429 after too many of them. */
export function addSessionRoute(server: FastifyInstance, gate: Gate, address: Address): void {
  server.post('/session', { bodyLimit: 1024 }, async (request, reply) => {
    const name = sessionCookieName(address);
    // A page that is let in already may be opened again by the address it came by.
    if (gate.knows(cookieOf(request, name))) return reply.code(204).send();
    const body = bodySchema.safeParse(request.body);
    const result = gate.exchange(body.success ? body.data.token : '');
    if (result.kind === 'locked') return refuse(reply, 429, 'Too many wrong tries: wait a minute.');
    if (result.kind === 'wrong') {
      return refuse(reply, 401, 'This address has been used or is wrong: open the one the program printed last.');
    }
    reply.header('set-cookie', `${name}=${result.session}; Path=/; HttpOnly; SameSite=Strict`);
    return reply.code(204).send();
  });

  server.get('/session', { onRequest: requireSession(gate, address) }, async (_request, reply) =>
    reply.code(204).send(),
  );
}
