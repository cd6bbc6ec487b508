// Shuts the page in: it is served under our own scheme, gets no permission and goes nowhere else.
import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import type { Session, WebContents } from 'electron';
import type { Host } from '../src/host/host.ts';
import { CONTENT_RULES, screenFile } from './rules.ts';

/** The files of the screen's build; a browser refuses modules and styles of another type. */
const TYPES: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

function reply(status: number, type: string, body: string | Uint8Array<ArrayBuffer>): Response {
  const headers = { 'content-security-policy': CONTENT_RULES, 'x-content-type-options': 'nosniff' };
  return new Response(body, { status, headers: { ...headers, 'content-type': `${type}; charset=utf-8` } });
}

async function answer({ method, url }: Request, folder: string, host: Pick<Host, 'recordingOf'>): Promise<Response> {
  const file = method === 'GET' ? screenFile(url, folder) : null;
  const boil = /\/boils\/([\p{L}\p{N}-]+)\.boil\.jsonl$/u.exec(file ?? '')?.[1];
  try {
    if (boil !== undefined) return reply(200, 'application/x-ndjson', [...host.recordingOf(boil), ''].join('\n'));
    return reply(200, TYPES[extname(file ?? '')] ?? 'application/octet-stream', await readFile(file ?? ''));
  } catch {
    return reply(404, 'text/plain', 'There is no such file.');
  }
}

/** Serves `folder` and the kept boils to a session's pages, denies all permissions and keeps them off the network. */
export function guardSession(session: Session, folder: string, host: Host): void {
  session.protocol.handle('app', (request) => answer(request, folder, host));
  session.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  // Beside the screen itself only what lives inside the page or its developer tools.
  session.webRequest.onBeforeRequest(({ url }, decide) => decide({ cancel: !/^(app|data|blob|devtools):/.test(url) }));
}

/** Keeps any page of the program where it is; the screen changes only what stands behind the # of its address. */
export function guardContents(contents: WebContents): void {
  for (const name of ['will-navigate', 'will-redirect', 'will-frame-navigate', 'will-attach-webview']) {
    contents.on(name as 'will-navigate', (event) => event.preventDefault());
  }
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}
