// A hostile page on the same machine gets nothing; the program's own page gets in once and speaks over its socket.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { servedTarn, UPGRADE } from './tarn-page.ts';

let tarn: Awaited<ReturnType<typeof servedTarn>>;
beforeEach(async () => (tarn = await servedTarn()));
afterEach(() => tarn.close());

test('the page is served with its security headers', async () => {
  const { status, headers } = await tarn.ask('/');
  expect(status).toBe(200);
  expect(headers['content-security-policy']).toContain("default-src 'none'; script-src 'self'");
  expect(headers).toMatchObject({
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'no-referrer',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'cache-control': 'no-store',
    'x-frame-options': 'DENY',
  });
});

test.each(['evil.example', '127.0.0.1', 'localhost:1', '[::1]:80'])(
  'the host %s is refused before anything',
  async (host) => {
    expect((await tarn.ask('/', { headers: { host } })).status).toBe(421);
    const headers = { ...UPGRADE, host, origin: tarn.origin, cookie: await tarn.letIn() };
    expect((await tarn.ask('/socket', { headers })).status).toBe(421);
  },
);

test.each([
  'null',
  'http://evil.example',
  'http://127.0.0.1',
  'https://127.0.0.1:PORT',
  'http://127.0.0.1:PORT.evil.example',
])('the origin %s is refused, with a good cookie too', async (pattern) => {
  const origin = pattern.replace('PORT', String(tarn.served.port));
  const cookie = await tarn.letIn();
  expect((await tarn.ask('/socket', { headers: { ...UPGRADE, origin, cookie } })).status).toBe(403);
  expect((await tarn.ask('/import', { method: 'POST', headers: { origin, cookie } })).status).toBe(403);
});

test('nothing but the page is to be had without the cookie', async () => {
  const headers = { origin: tarn.origin };
  expect((await tarn.ask('/socket', { headers: { ...UPGRADE, ...headers } })).status).toBe(401);
  expect((await tarn.ask('/boils/latest.boil.jsonl')).status).toBe(401);
  expect((await tarn.ask('/import', { method: 'POST', headers })).status).toBe(401);
  expect((await tarn.ask('/session')).status).toBe(401);
  expect((await tarn.ask('/session', { headers: { cookie: `panwarden-${tarn.served.port}=guess` } })).status).toBe(401);
});

test('the token is good once, and its cookie cannot be read or sent by another page', async () => {
  const first = await tarn.exchange(tarn.token);
  expect(first.status).toBe(204);
  expect(first.headers['set-cookie']?.[0]).toMatch(/; HttpOnly; SameSite=Strict$/);
  expect((await tarn.exchange(tarn.token)).status).toBe(401);
  const cookie = first.headers['set-cookie']?.[0]?.split(';')[0] ?? '';
  expect((await tarn.exchange(tarn.token, { cookie })).status).toBe(204);
  expect((await tarn.ask('/session', { headers: { cookie } })).status).toBe(204);
});

test('after five wrong tries even the right token waits until the minute is over', async () => {
  for (let tries = 0; tries < 5; tries += 1) expect((await tarn.exchange(`wrong-${tries}`)).status).toBe(401);
  expect((await tarn.exchange(tarn.token)).status).toBe(429);
  tarn.nowMs.value += 60_000;
  expect((await tarn.exchange(tarn.token)).status).toBe(204);
});

test.each([
  '/../panwarden-secret.txt',
  '/..%2fpanwarden-secret.txt',
  '/%2e%2e/panwarden-secret.txt',
  '/..%5cpanwarden-secret.txt',
  '/boils/..%2f..%2fpanwarden-secret.txt',
  '/%',
  '/data/notebook.sqlite.bak',
])('the path %s leads nowhere', async (path) => {
  const { status, text } = await tarn.ask(path, { headers: { cookie: await tarn.letIn() } });
  expect(status).toBeGreaterThanOrEqual(400);
  expect(status).toBeLessThan(500);
  expect(text).not.toContain('secret');
});

const RECORDING = [
  { recording: 'panwarden', version: 1, name: 'Tarn Hollow, invented', started: '2027-04-18T07:30:00-07:00' },
  { t: 5, mark: { kind: 'note', text: '<script>' } },
]
  .map((line) => `${JSON.stringify(line)}\n`)
  .join('');

test('a recording is imported, taken away byte for byte, and one that is none is refused with a sentence', async () => {
  const headers = { origin: tarn.origin, cookie: await tarn.letIn(), 'content-type': 'application/x-ndjson' };
  const taken = await tarn.ask('/import', { method: 'POST', headers, body: RECORDING });
  const { boil } = JSON.parse(taken.text) as { boil: string };
  expect((await tarn.ask(`/boils/${boil}.boil.jsonl`, { headers })).text).toBe(RECORDING);
  const refused = await tarn.ask('/import', { method: 'POST', headers, body: 'hello\n' });
  expect(refused.status).toBe(400);
  expect((JSON.parse(refused.text) as { why: string }).why).toMatch(/line 1/);
  const opened = await tarn.ask('/opened', { method: 'POST', headers, body: RECORDING });
  expect(JSON.parse(opened.text)).toMatchObject({ boil: 'opened-1' });
  expect(await tarn.host.command({ ref: 'r', replay: { boil: 'opened-1' } })).toMatchObject({ ok: true });
});

test('a page that was let in speaks over its socket, and what is no command is answered', async () => {
  const socket = await pageSocket();
  expect(await socket.next('hello')).toMatchObject({ kind: 'hello', lan: false });
  expect(await socket.next('now')).toMatchObject({ view: 'live', mode: 'idle' });
  socket.send('{"no json');
  expect(await socket.next('answered')).toMatchObject({ ref: null, ok: false });
  socket.send(JSON.stringify({ ref: 'a', stir: true }));
  expect(await socket.next('answered')).toMatchObject({ ref: 'a', ok: false });
  socket.send(JSON.stringify({ ref: 'b', boils: true }));
  expect(await socket.next('answered')).toMatchObject({ ref: 'b', ok: true, data: [] });
  socket.close();
});

test('a message that is too long closes its socket', async () => {
  const socket = await pageSocket();
  socket.send('x'.repeat(70_000));
  expect(await socket.closed).toBe(1009);
});

test('the twenty-first page is turned away', async () => {
  const sockets = [];
  const cookie = await tarn.letIn();
  for (let count = 0; count < 20; count += 1) sockets.push(await pageSocket(cookie));
  const headers = { ...UPGRADE, origin: tarn.origin, cookie };
  expect((await tarn.ask('/socket', { headers })).status).toBe(503);
  for (const socket of sockets) socket.close();
});

type Message = Record<string, unknown>;

/** Node's own WebSocket with the headers of the page; messages are handed out by kind, in order. */
async function pageSocket(cookie?: string) {
  const headers = { origin: tarn.origin, cookie: cookie ?? (await tarn.letIn()) };
  // The second argument is undici's own form, which may name headers.
  const socket = new WebSocket(`ws://127.0.0.1:${tarn.served.port}/socket`, { headers } as unknown as string[]);
  const waiting: Message[] = [];
  let wake = (): void => {};
  socket.onmessage = ({ data }) => {
    waiting.push(JSON.parse(String(data)) as Message);
    wake();
  };
  const closed = new Promise<number>((resolve) => (socket.onclose = ({ code }) => resolve(code)));
  await new Promise<void>((resolve, reject) => {
    socket.onopen = () => resolve();
    socket.onerror = () => reject(new Error('the socket was refused'));
  });
  return {
    closed,
    send: (text: string) => socket.send(text),
    close: () => socket.close(),
    async next(kind: string): Promise<Message> {
      for (;;) {
        const index = waiting.findIndex((message) => message['kind'] === kind);
        if (index >= 0) return waiting.splice(index, 1)[0] ?? {};
        await new Promise<void>((resolve) => (wake = resolve));
      }
    },
  };
}
