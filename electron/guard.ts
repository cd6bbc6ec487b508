// Shuts the page in: it is served under our own scheme, gets no permission and goes nowhere else.
import { readFile } from 'node:fs/promises';
import { extname } from 'node:path';
import type { Session, WebContents } from 'electron';
import { keptAnswer } from '../src/host/export/kept-files.ts';
import type { Kept } from '../src/host/export/kept-files.ts';
import { CONTENT_RULES, isScreenAddress, screenFile } from './rules.ts';

/** The files of the screen's build; a browser refuses modules and styles of another type. */
const TYPES: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
};

function reply(status: number, type: string, body: BodyInit, saveAs?: string): Response {
  const headers: Record<string, string> = {
    'content-security-policy': CONTENT_RULES,
    'x-content-type-options': 'nosniff',
    'content-type': type,
  };
  if (saveAs !== undefined)
    headers['content-disposition'] = `attachment; filename*=UTF-8''${encodeURIComponent(saveAs)}`;
  return new Response(body, { status, headers });
}

async function answer(request: Request, folder: string, host: Kept): Promise<Response> {
  try {
    const kept = isScreenAddress(request.url) ? await keptAnswer(request, host) : null;
    if (kept !== null) return reply(200, kept.type, kept.body, kept.saveAs);
    const file = request.method === 'GET' ? screenFile(request.url, folder) : null;
    const type = TYPES[extname(file ?? '')] ?? 'application/octet-stream';
    return reply(200, `${type}; charset=utf-8`, await readFile(file ?? ''));
  } catch (error) {
    const isPost = request.method === 'POST' && /\/photos\//.test(request.url) && error instanceof Error;
    return isPost
      ? reply(400, 'application/json', JSON.stringify({ why: error.message }))
      : reply(404, 'text/plain; charset=utf-8', 'There is no such file.');
  }
}

/** Serves `folder` and the kept boils to a session's pages, denies all permissions and keeps them off the network. */
export function guardSession(session: Session, folder: string, host: Kept): void {
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
