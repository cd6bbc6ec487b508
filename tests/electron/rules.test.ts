// The window's decisions: which file an address means, who may speak, how often a page is loaded again.
import { resolve } from 'node:path';
import type { WebFrameMain } from 'electron';
import { expect, test } from 'vitest';
import { mayReload, maySpeak, SAFE_PREFERENCES, screenFile } from '../../electron/rules.ts';

const FOLDER = resolve('/screen');

test('an address of the screen means a file in its folder', () => {
  expect(screenFile('app://panwarden/index.html#/pans', FOLDER)).toBe(resolve('/screen/index.html'));
  expect(screenFile('app://panwarden/assets/index-Bq3.js?v=1', FOLDER)).toBe(resolve('/screen/assets/index-Bq3.js'));
  expect(screenFile('app://panwarden/../../etc/passwd', FOLDER)).toBe(resolve('/screen/etc/passwd'));
});

test.each([
  ['a folder above, with its stroke hidden', 'app://panwarden/..%2f..%2fetc/passwd'],
  ['a folder above, all of it hidden', 'app://panwarden/%2e%2e%2f%2e%2e%2fetc/passwd'],
  ['a neighbour whose name begins the same', 'app://panwarden/..%2fscreen-other/a.js'],
  ['backward strokes', 'app://panwarden/..%5c..%5cetc'],
  ['a zero byte', 'app://panwarden/index.html%00.js'],
  ['plain backward strokes', 'app://panwarden/..\\..\\etc'],
  ['a broken escape', 'app://panwarden/%zz'],
  ['bytes that are no UTF-8', 'app://panwarden/%ff'],
  ['another host', 'app://elsewhere/index.html'],
  ['another scheme', 'file:///screen/index.html'],
  ['no address at all', 'index.html'],
])('%s means no file', (_what, address) => {
  expect(screenFile(address, FOLDER)).toBeNull();
});

function frame(change: Partial<WebFrameMain> = {}): WebFrameMain {
  const ours = { url: 'app://panwarden/index.html#/pans', origin: 'app://panwarden', parent: null };
  return { ...ours, ...change } as WebFrameMain;
}

test('only the top frame that still shows the screen may speak', () => {
  const top = frame();
  expect(maySpeak(top, top)).toBe(true);
  expect(maySpeak(null, top)).toBe(false);
  expect(maySpeak(frame(), top)).toBe(false);
  for (const change of [
    { parent: top },
    { origin: 'https://panwarden' },
    { origin: 'null' },
    { url: 'https://panwarden/index.html' },
    { url: 'app://panwarden.example/index.html' },
    { url: 'about:blank' },
  ]) {
    const other = frame(change);
    expect(maySpeak(other, other), JSON.stringify(Object.keys(change))).toBe(false);
  }
});

test('a page is loaded again three times a minute and no more', () => {
  const times: number[] = [];
  expect([0, 1000, 2000, 3000, 59_999].map((nowMs) => mayReload(times, nowMs))).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
  expect(mayReload(times, 60_000)).toBe(true);
  expect(mayReload(times, 60_500)).toBe(false);
});

test('the page is isolated, sandboxed and without Node', () => {
  expect(SAFE_PREFERENCES).toEqual({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    experimentalFeatures: false,
    webviewTag: false,
    spellcheck: false,
    autoplayPolicy: 'no-user-gesture-required',
  });
});
