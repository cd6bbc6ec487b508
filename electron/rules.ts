// What the desktop window allows, as values and decisions that need no window: addresses, files, speakers, reloads.
import { isAbsolute, join, relative } from 'node:path';
import type { WebFrameMain, WebPreferences } from 'electron';

export const SCREEN_ORIGIN = 'app://panwarden';

export const CONTENT_RULES =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; media-src 'self'; " +
  "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** Set one by one, also where Electron's own default is the same, so that a changed default changes nothing here. */
export const SAFE_PREFERENCES: WebPreferences = {
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  // Dictionaries would be fetched from a remote machine.
  spellcheck: false,
  // An alarm must sound although nobody has touched the page.
  autoplayPolicy: 'no-user-gesture-required',
};

/** Whether an address is the screen's own. The parser's `origin` is "null" for our scheme, so its parts are compared. */
export function isScreenAddress(address: string): boolean {
  const url = URL.parse(address);
  return url !== null && `${url.protocol}//${url.host}` === SCREEN_ORIGIN;
}

/** The file in `folder` (absolute) that an address means, or null; no file of the screen has a name that needs a %. */
export function screenFile(address: string, folder: string): string | null {
  const path = isScreenAddress(address) ? new URL(address).pathname : '%';
  const file = join(folder, path);
  const inside = relative(folder, file);
  return /[%\\]/.test(path) || inside.startsWith('..') || isAbsolute(inside) ? null : file;
}

/** Whether a message comes from the screen itself: the window's top frame, still showing our own origin. */
export function maySpeak(frame: WebFrameMain | null, topFrame: WebFrameMain): boolean {
  const isTop = frame !== null && frame === topFrame && frame.parent === null;
  return isTop && frame.origin === SCREEN_ORIGIN && isScreenAddress(frame.url);
}

/** Whether a page that failed may be loaded again: at most three times a minute. `times` (ms) keeps the reloads so far. */
export function mayReload(times: number[], nowMs: number): boolean {
  const recent = times.filter((time) => nowMs - time < 60_000);
  return recent.length < 3 && times.push(nowMs) > 0;
}
