// Photos by the page's own door: behind the session, bare of their place, refused in words when they are none or too long.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { recordingText } from '../host/export/tarn-boils.ts';
import { servedTarn } from './tarn-page.ts';

let page: Awaited<ReturnType<typeof servedTarn>>;
let cookie = '';
const boil = '2027-04-18-sundays-run';

beforeAll(async () => {
  page = await servedTarn();
  cookie = await page.letIn();
  await page.ask('/import', { method: 'POST', headers: { origin: page.origin, cookie }, body: recordingText() });
});
afterAll(() => page.close());

const chunk = (name: string, text: string): Buffer =>
  Buffer.concat([Buffer.from([0, 0, 0, text.length]), Buffer.from(name + text), Buffer.alloc(4)]);
const png = (...middle: Buffer[]): Buffer =>
  Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), ...middle, chunk('IEND', '')]);
const picture = png(chunk('eXIf', 'GPS'), chunk('IDAT', 'picture'));

async function post(path: string, body: Buffer): Promise<{ status: number; told: Record<string, unknown> }> {
  const answer = await fetch(page.origin + path, {
    method: 'POST',
    headers: { origin: page.origin, cookie, 'content-type': 'application/octet-stream' },
    body: new Uint8Array(body),
  });
  return { status: answer.status, told: (await answer.json()) as Record<string, unknown> };
}

test('a photo comes back as the picture alone, or as it was where its place is wanted', async () => {
  for (const [query, kept] of [
    ['?caption=Jars', png(chunk('IDAT', 'picture'))],
    ['?place=keep', picture],
  ] as const) {
    const { status, told } = await post(`/photos/${boil}${query}`, picture);
    expect(status).toBe(200);
    const { id, type } = told['photo'] as { id: string; type: string };
    const back = await fetch(`${page.origin}/photos/${boil}/${id}`, { headers: { cookie } });
    expect([back.headers.get('content-type'), back.headers.get('x-content-type-options')]).toEqual([type, 'nosniff']);
    expect(Buffer.from(await back.arrayBuffer())).toEqual(kept);
  }
});

test('what is no photo, is too long, or belongs to no boil is refused in words', async () => {
  const refused = async (path: string, body: Buffer) => JSON.stringify((await post(path, body)).told);
  expect(await refused(`/photos/${boil}`, Buffer.from('<svg/>'))).toContain('no JPEG, PNG or WebP');
  expect(await refused('/photos/nothing', picture)).toContain('nothing');
  const long = png(Buffer.concat([Buffer.from('00a00001', 'hex'), Buffer.from('IDAT'), Buffer.alloc(0xa00001 + 4)]));
  expect(await refused(`/photos/${boil}`, long)).toContain('at most 10');
});

test('without the session there is nothing', async () => {
  expect((await page.ask(`/photos/${boil}/0`)).status).toBe(401);
  const answer = await fetch(`${page.origin}/photos/${boil}`, {
    method: 'POST',
    headers: { origin: page.origin },
    body: 'x',
  });
  expect([401, 403]).toContain(answer.status);
});
