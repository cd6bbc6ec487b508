// What a hostile page or a crowd of them does to the server: 200 sockets asked for, wrong hosts, origins and tokens, 10 MB of headers.
import { request } from 'node:http';
import { connect } from 'node:net';

const TURN_MS = 20;
const HEADER_BYTES = 10_000_000;

export interface Crowd {
  /** So many were let in, so many turned away. */
  admitted: number;
  refused: number;
  leave(): void;
}

/** Asks for so many sockets at once with the page's own cookie; those that are let in listen to everything. */
export async function crowd(origin: string, cookie: string, count: number): Promise<Crowd> {
  const address = `${origin.replace('http:', 'ws:')}/socket`;
  const sockets = Array.from({ length: count }, () => {
    // The second argument is undici's own form, which may name headers.
    const socket = new WebSocket(address, { headers: { origin, cookie } } as unknown as string[]);
    const isIn = new Promise<boolean>((resolve) => {
      socket.onopen = () => resolve(true);
      socket.onerror = () => resolve(false);
    });
    return { socket, isIn };
  });
  const answers = await Promise.all(sockets.map(({ isIn }) => isIn));
  const admitted = answers.filter((isIn) => isIn).length;
  return {
    admitted,
    refused: count - admitted,
    leave: () => sockets.forEach(({ socket }) => socket.close()),
  };
}

/** Statuses that came back, and how often; `cut` where the connection was ended without one. */
export type Answers = Record<string, number>;

/** Asks for what nobody may have, fifty times a second, until it is stopped; gives what was answered. */
export function hostility(origin: string): () => Answers {
  const answers: Answers = {};
  const count = (name: string): void => void (answers[name] = (answers[name] ?? 0) + 1);
  const tries = [
    () => ask(origin, '/', { host: 'evil.example' }, count),
    () => ask(origin, '/import', { origin: 'http://evil.example' }, count, 'POST'),
    () => ask(origin, '/session', { origin, 'content-type': 'application/json' }, count, 'POST', '{"token":"wrong"}'),
    () => pourHeaders(origin, count),
  ];
  let turn = 0;
  const timer = setInterval(() => tries[turn++ % tries.length]?.(), TURN_MS);
  return () => {
    clearInterval(timer);
    return answers;
  };
}

function ask(
  origin: string,
  path: string,
  headers: Record<string, string>,
  count: (name: string) => void,
  method = 'GET',
  body = '',
): void {
  const asked = request(`${origin}${path}`, { method, headers }, (answer) => {
    count(String(answer.statusCode));
    answer.resume();
  });
  asked.on('error', () => count('cut'));
  asked.end(body);
}

/** Headers without an end; counted once, by the status line or the cut. */
function pourHeaders(origin: string, count: (name: string) => void): void {
  const { hostname, port } = new URL(origin);
  const socket = connect(Number(port), hostname);
  let said = 'cut';
  socket.on('data', (data) => (said = /^HTTP\/1\.1 (\d+)/.exec(data.toString())?.[1] ?? said));
  socket.on('error', () => undefined);
  socket.on('close', () => count(said));
  socket.write(`GET / HTTP/1.1\r\nHost: ${hostname}:${port}\r\nX: `);
  socket.write('x'.repeat(HEADER_BYTES));
}
