// The phones' door in the local network: shut until switched on, one invitation for one phone, looking only until allowed, and a hostile page gets nothing.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createHost } from '../../src/host/create-host.ts';
import type { Now } from '../../src/protocol/messages.ts';
import type { PhoneInvitation, PhonesView } from '../../src/protocol/phone-messages.ts';
import { serveHost } from '../../src/web/serve.ts';
import type { Served } from '../../src/web/serve.ts';
import { UPGRADE } from './tarn-page.ts';

let folder: string;
let host: Awaited<ReturnType<typeof createHost>>;
let served: Served;
const nowMs = { value: 0 };

/** Tests speak to this machine's loopback alone. */
const addresses = () => [{ address: '127.0.0.1', name: 'lo' }];

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'panwarden-'));
  writeFileSync(join(folder, 'index.html'), 'the desktop’s page');
  writeFileSync(join(folder, 'phone.html'), 'the phones’ page');
  host = await createHost({ folder: join(folder, 'data'), addresses });
  served = await serveHost(host, { port: 0, folder, nowMs: () => nowMs.value });
});

afterEach(async () => {
  await served.close();
  await host.close();
  rmSync(folder, { recursive: true });
});

async function obeyed<Data>(command: Record<string, unknown>): Promise<Data> {
  const answer = await host.command({ ref: 'r', ...command });
  if (!answer.ok) throw new Error(answer.why);
  return answer.data as Data;
}

const switchOn = () => obeyed<PhonesView>({ phones_switch: { on: true, address: null } });
const look = () => obeyed<PhonesView>({ phones: true });

interface Asked {
  method?: string;
  headers?: Record<string, string>;
  body?: string;
}
interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

function ask(url: string, { method = 'GET', headers = {}, body = '' }: Asked = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request(url, { method, headers, agent: false }, (response) => {
      let text = '';
      response.on('data', (chunk: Buffer) => (text += chunk.toString()));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
    });
    asked.on('upgrade', (response, socket) => {
      socket.destroy();
      resolve({ status: response.statusCode ?? 0, headers: response.headers, text: '' });
    });
    asked.on('error', reject);
    asked.end(body);
  });
}

async function tryDoor(url: string, token: string, name = 'Phone in the kitchen'): Promise<Answer> {
  const headers = { origin: url.slice(0, -1), 'content-type': 'application/json' };
  return ask(`${url}let-in`, { method: 'POST', headers, body: JSON.stringify({ token, name }) });
}

/** A phone that is let in: its cookie. */
async function letIn(url: string): Promise<string> {
  const { url: invited } = await obeyed<PhoneInvitation>({ phone_invite: true });
  const { headers } = await tryDoor(url, invited.split('#let-in=')[1] ?? '');
  return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
}

test('nothing is served until it is switched on, and nothing after it is switched off', async () => {
  expect(await look()).toMatchObject({ on: false, url: null, phones: [] });
  const { url } = await switchOn();
  expect((await ask(url!)).text).toBe('the phones’ page');
  expect(await obeyed<PhonesView>({ phones_switch: { on: false, address: null } })).toMatchObject({ url: null });
  await expect(ask(url!)).rejects.toThrow(/ECONNREFUSED/);
  expect(await host.command({ ref: 'r', phone_invite: true })).toMatchObject({ ok: false });
});

test('the desktop’s page and what is kept are not to be had there', async () => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  for (const path of [
    'index.html',
    'boils/latest.boil.jsonl',
    'export/season.csv',
    'photos/a/b',
    '..%2fdata/x',
    'data/notebook.sqlite',
  ])
    expect((await ask(url! + path, { headers: { cookie } })).status, path).toBeGreaterThanOrEqual(400);
});

test('an invitation lets in one phone, once, and its cookie cannot be read by a page', async () => {
  const { url } = await switchOn();
  const { url: invited } = await obeyed<PhoneInvitation>({ phone_invite: true });
  const token = invited.split('#let-in=')[1]!;
  // 26 signs of 32 carry the 128 bits that are drawn.
  expect(token).toMatch(/^[0-9a-hjkmnp-tv-z]{26}$/);
  const first = await tryDoor(url!, token);
  expect(first.status).toBe(204);
  expect(first.headers['set-cookie']?.[0]).toMatch(/; HttpOnly; SameSite=Strict$/);
  expect((await tryDoor(url!, token)).status).toBe(401);
  expect((await look()).phones).toMatchObject([{ name: 'Phone in the kitchen', may_answer: false }]);
});

test('an invitation that is typed with capitals, gaps and look-alikes is the same', async () => {
  const { url } = await switchOn();
  const { url: invited } = await obeyed<PhoneInvitation>({ phone_invite: true });
  const token = invited.split('#let-in=')[1]!;
  const typed = token
    .toUpperCase()
    .replaceAll('0', 'O')
    .replaceAll('1', 'l')
    .replace(/(.{4})/g, '$1-');
  expect((await tryDoor(url!, `${typed.slice(0, -1)}~`)).status).toBe(401);
  expect((await tryDoor(url!, typed)).status).toBe(204);
});

test('a phone that is let in already uses a new invitation up, and is called as it says now', async () => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  expect(await look()).toMatchObject({ invites: false });
  const { url: invited } = await obeyed<PhoneInvitation>({ phone_invite: true });
  expect(await look()).toMatchObject({ invites: true });
  const headers = { origin: url!.slice(0, -1), 'content-type': 'application/json', cookie };
  const say = (token: string) =>
    ask(`${url}let-in`, { method: 'POST', headers, body: JSON.stringify({ token, name: 'Phone on the porch' }) });
  await say('wrong-1');
  expect(await look()).toMatchObject({ invites: true, phones: [{ name: 'Phone in the kitchen' }] });
  expect((await say(invited.split('#let-in=')[1]!)).status).toBe(204);
  expect(await look()).toMatchObject({ invites: false, phones: [{ name: 'Phone on the porch' }] });
});

test('after five wrong tries even a good invitation waits until the minute is over', async () => {
  const { url } = await switchOn();
  const { url: invited } = await obeyed<PhoneInvitation>({ phone_invite: true });
  for (let tries = 0; tries < 5; tries += 1) expect((await tryDoor(url!, `wrong-${tries}`)).status).toBe(401);
  expect((await tryDoor(url!, invited.split('#let-in=')[1]!)).status).toBe(429);
  nowMs.value += 60_000;
  expect((await tryDoor(url!, invited.split('#let-in=')[1]!)).status).toBe(204);
});

test.each(['evil.example', '127.0.0.1', 'localhost:PORT'])(
  'the host %s is refused before anything',
  async (pattern) => {
    const { url } = await switchOn();
    const name = pattern.replace('PORT', new URL(url!).port);
    expect((await ask(url!, { headers: { host: name } })).status).toBe(421);
  },
);

test.each(['null', 'http://evil.example', 'https://127.0.0.1:PORT'])('the origin %s is refused', async (pattern) => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  const origin = pattern.replace('PORT', new URL(url!).port);
  expect((await ask(`${url}socket`, { headers: { ...UPGRADE, origin, cookie } })).status).toBe(403);
  expect((await ask(`${url}socket`, { headers: { ...UPGRADE, cookie } })).status).toBe(403);
});

type Message = Record<string, unknown>;

/** Node's own WebSocket with the headers of the page; messages are handed out by kind, in order. */
async function phoneSocket(url: string, cookie: string) {
  const headers = { origin: url.slice(0, -1), cookie };
  // The second argument is undici's own form, which may name headers.
  const socket = new WebSocket(`${url.replace('http', 'ws')}socket`, { headers } as unknown as string[]);
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

const quiet = (ref: string) => JSON.stringify({ ref, answer: { silence: { seconds: 120 } } });

test('a phone looks only, until it is allowed to answer, and even then it may answer and nothing else', async () => {
  await obeyed({ settings: { second_channel: { command: ['secret-program'] }, backup_folder: '/secret' } });
  await obeyed({ practice: { speed: 1 } });
  const { url } = await switchOn();
  const socket = await phoneSocket(url!, await letIn(url!));
  expect(await socket.next('phone')).toMatchObject({ may_answer: false });
  const hello = await socket.next('hello');
  expect(JSON.stringify(hello)).not.toMatch(/secret/);
  expect(hello).toMatchObject({ lan: true, folder: '' });
  expect(await socket.next('now')).toMatchObject({ mode: 'practice', ports: [] });
  socket.send(quiet('a'));
  expect(await socket.next('answered')).toMatchObject({ ref: 'a', ok: false });
  const [phone] = (await look()).phones;
  expect(phone).toMatchObject({ connected: true });
  await obeyed({ phone_change: { id: phone!.id, may_answer: true } });
  expect(await socket.next('phone')).toMatchObject({ may_answer: true });
  socket.send(quiet('b'));
  expect(await socket.next('answered')).toMatchObject({ ref: 'b', ok: true });
  // The screen by the pans tells who made it quiet.
  let { sound } = (await socket.next('now')) as unknown as Now;
  while (sound.silencedUntil === null) ({ sound } = (await socket.next('now')) as unknown as Now);
  expect(sound).toMatchObject({ silencedBy: phone!.name });
  for (const wish of [{ end: true }, { settings: { theme: 'dark' } }, { boils: true }, { set: {} }]) {
    socket.send(JSON.stringify({ ref: 'c', ...wish }));
    expect(await socket.next('answered'), JSON.stringify(wish)).toMatchObject({ ok: false });
  }
  const aside = { put_aside: { pan: 'front', alarm: 'finish', seconds: 60, reason: '' } };
  socket.send(JSON.stringify({ ref: 'd', answer: aside }));
  expect(await socket.next('answered')).toMatchObject({ ok: false });
  socket.close();
});

test('a phone hears what was poured in, by which the sap that is still to come is counted, and no note', async () => {
  await obeyed({ start: { pans: [{ id: 'p1', name: 'Back pot' }] } });
  await obeyed({ mark: { kind: 'note', text: 'private words' } });
  await obeyed({ mark: { kind: 'depth', pan: 'p1', mm: 40 } });
  await obeyed({ mark: { kind: 'top-up', pan: 'p1', litres: 12 } });
  const { url } = await switchOn();
  const socket = await phoneSocket(url!, await letIn(url!));
  const now = (await socket.next('now')) as unknown as Now;
  expect(now.marks.map(({ mark }) => mark)).toMatchObject([{ kind: 'depth' }, { kind: 'top-up', litres: 12 }]);
  socket.close();
});

test('of a boil that is over a phone is told when it ended and, once somebody says so, what came of it', async () => {
  await obeyed({ start: { pans: [{ id: 'p1', name: 'Back pot' }] } });
  const { boil } = host.running!;
  await obeyed({ end: true });
  await host.season.idle();
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  const before = await phoneSocket(url!, cookie);
  const over = await before.next('now');
  expect(over).toMatchObject({ ended: true, syrup: null });
  expect(over['endedAt']).toBeGreaterThanOrEqual(0);
  before.close();
  await obeyed({ keep_page: { boil, page: { syrup: { litres: 1.4, brix: 66.9 } } } });
  const after = await phoneSocket(url!, cookie);
  expect(await after.next('now')).toMatchObject({ syrup: { litres: 1.4, brix: 66.9 } });
  after.close();
});

test('a phone that is put out is gone at once, and its cookie lets in nobody', async () => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  const socket = await phoneSocket(url!, cookie);
  const [phone] = (await look()).phones;
  expect((await obeyed<PhonesView>({ phone_out: { id: phone!.id } })).phones).toEqual([]);
  expect(await socket.closed).toBe(1008);
  expect((await ask(`${url}session`, { headers: { cookie } })).status).toBe(401);
});

test('a message over 1 KB closes its socket, and a sixth socket of one address is turned away', async () => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  const sockets = [];
  for (let count = 0; count < 5; count += 1) sockets.push(await phoneSocket(url!, cookie));
  const headers = { ...UPGRADE, origin: url!.slice(0, -1), cookie };
  expect((await ask(`${url}socket`, { headers })).status).toBe(503);
  sockets[0]!.send('x'.repeat(1100));
  expect(await sockets[0]!.closed).toBe(1009);
  for (const socket of sockets) socket.close();
});

test('phones and the port are known again after a restart', async () => {
  const { url } = await switchOn();
  const cookie = await letIn(url!);
  await served.close();
  await host.close();
  host = await createHost({ folder: join(folder, 'data'), addresses });
  served = await serveHost(host, { port: 0, folder, nowMs: () => nowMs.value });
  expect((await look()).url).toBe(url);
  expect((await ask(`${url}session`, { headers: { cookie } })).status).toBe(204);
});

test('a machine in no network says so', async () => {
  const other = await createHost({ folder: join(folder, 'other'), addresses: () => [] });
  const page = await serveHost(other, { port: 0, folder, nowMs: () => 0 });
  const answer = await other.command({ ref: 'r', phones_switch: { on: true, address: null } });
  expect(answer).toMatchObject({ ok: true, data: { url: null, trouble: expect.stringMatching(/in no network/) } });
  await page.close();
  await other.close();
});
