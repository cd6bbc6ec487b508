// The page's surroundings: what it is served, under which rules, and what it is denied.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Session as ElectronSession, WebContents as ElectronContents } from 'electron';
import { afterAll, expect, test } from 'vitest';
import { guardContents, guardSession } from '../../electron/guard.ts';
import type { Host } from '../../src/host/host.ts';
import { Session, WebContents } from './electron-stand-in.ts';

const SCRATCH = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
mkdirSync(join(SCRATCH, 'screen'));
writeFileSync(join(SCRATCH, 'secret.txt'), 'secret');
writeFileSync(join(SCRATCH, 'screen/index.html'), '<!doctype html>');
writeFileSync(join(SCRATCH, 'screen/main.js'), 'export {};');
afterAll(() => rmSync(SCRATCH, { recursive: true }));

const boil = '2027-04-18-tarn-hollow';
const pieces = ['{"recording":"panwarden"}\n', '{"t":0,"run":"ended"}\n'];
const photos: string[] = [];
/** What the host keeps, as far as the page's addresses reach it. */
const kept = {
  exports: {
    boilFile: (asked: string, end: string) => {
      if (asked !== boil) throw new Error('There is no such boil.');
      return { path: `${asked}${end}`, type: 'application/x-ndjson', pieces };
    },
  },
  season: {
    photo: (_boil: string, id: string) => ({ photo: { type: 'image/png' }, bytes: Buffer.from(`photo ${id}`) }),
    addPhoto: (_boil: string, bytes: Uint8Array, { caption }: { caption: string }) => {
      if (bytes.length === 0) throw new Error('This is no picture.');
      photos.push(caption);
      return { id: 'one' };
    },
  },
};
const session = new Session();
guardSession(session as unknown as ElectronSession, join(SCRATCH, 'screen'), kept as unknown as Host);

async function ask(address: string, method = 'GET', body?: string): Promise<Response> {
  const asked = new Request(address, { method, ...(body === undefined ? {} : { body }) });
  const response = session.schemes.get('app')?.(asked);
  if (response === undefined) throw new Error('the scheme is not served');
  return response;
}

test('the screen is served with its type and the content rules', async () => {
  const page = await ask('app://panwarden/index.html');
  expect(page.status).toBe(200);
  expect(await page.text()).toBe('<!doctype html>');
  expect(Object.fromEntries(page.headers)).toEqual({
    'content-type': 'text/html; charset=utf-8',
    'content-security-policy':
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; media-src 'self'; " +
      "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    'x-content-type-options': 'nosniff',
  });
  expect((await ask('app://panwarden/main.js')).headers.get('content-type')).toBe('text/javascript; charset=utf-8');
});

test.each([
  ['app://panwarden/..%2fsecret.txt', 'GET'],
  ['app://panwarden/%2e%2e/secret.txt', 'GET'],
  ['app://panwarden/../secret.txt', 'GET'],
  ['app://elsewhere/index.html', 'GET'],
  ['app://panwarden/', 'GET'],
  ['app://panwarden/missing.js', 'GET'],
  ['app://panwarden/index.html', 'POST'],
  ['app://panwarden/boils/unknown.boil.jsonl', 'GET'],
])('%s by %s is not found', async (address, method) => {
  const answer = await ask(address, method);
  expect([answer.status, await answer.text()]).toEqual([404, 'There is no such file.']);
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
});

test.each(['boils', 'export'])('a kept boil can be taken away as a recording from /%s', async (room) => {
  const recording = await ask(`app://panwarden/${room}/${boil}.boil.jsonl`);
  expect(await recording.text()).toBe(pieces.join(''));
  expect(recording.headers.get('content-disposition')).toBe(`attachment; filename*=UTF-8''${boil}.boil.jsonl`);
  expect(recording.headers.get('content-security-policy')).toContain("default-src 'none'");
});

test('a photo can be looked at and added, and one that is none is refused in a sentence', async () => {
  const photo = await ask(`app://panwarden/photos/${boil}/one`);
  expect([photo.headers.get('content-type'), await photo.text()]).toEqual(['image/png', 'photo one']);
  const added = await ask(`app://panwarden/photos/${boil}?caption=foam`, 'POST', 'picture');
  expect([added.status, await added.json(), photos]).toEqual([200, { photo: { id: 'one' } }, ['foam']]);
  const refused = await ask(`app://panwarden/photos/${boil}`, 'POST', '');
  expect([refused.status, await refused.json()]).toEqual([400, { why: 'This is no picture.' }]);
});

test('every permission that the page could ask for is denied', () => {
  for (const permission of ['media', 'serial', 'geolocation', 'notifications', 'openExternal', 'fullscreen']) {
    const answers: unknown[] = [];
    session.permissionRequest?.({}, permission, (answer) => answers.push(answer));
    expect(answers, permission).toEqual([false]);
  }
  expect(session.permissionCheck?.()).toBe(false);
  expect(session.devicePermission?.()).toBe(false);
});

test.each([
  ['app://panwarden/main.js', false],
  ['data:image/svg+xml,<svg/>', false],
  ['blob:app://panwarden/1', false],
  ['https://tarn-hollow.example/', true],
  ['http://127.0.0.1:4312/', true],
  ['ws://127.0.0.1:4312/socket', true],
  ['file:///etc/passwd', true],
  ['application://x/', true],
])('a request for %s is cancelled: %s', (url, cancel) => {
  const answers: unknown[] = [];
  session.beforeRequest?.({ url }, (answer) => answers.push(answer));
  expect(answers).toEqual([{ cancel }]);
});

test('a page goes nowhere, opens nothing and holds no other page', () => {
  const contents = new WebContents();
  guardContents(contents as unknown as ElectronContents);
  for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
    let prevented = 0;
    contents.emit(name, { preventDefault: () => (prevented += 1) });
    expect(prevented, name).toBe(1);
  }
  expect(contents.openHandler?.({ url: 'https://tarn-hollow.example/' })).toEqual({ action: 'deny' });
});
