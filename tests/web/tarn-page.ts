// A served host at Tarn Hollow (our invention) for the tests, and raw requests that a browser would never send.
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import type { IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createHost } from '../../src/host/create-host.ts';
import { serveHost } from '../../src/web/serve.ts';

export interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  text: string;
}

export async function servedTarn() {
  const around = mkdtempSync(join(tmpdir(), 'panwarden-'));
  const folder = join(around, 'page');
  mkdirSync(folder);
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Panwarden</title>');
  writeFileSync(join(around, 'panwarden-secret.txt'), 'secret');
  const nowMs = { value: 0 };
  const host = await createHost({ folder: join(folder, 'data') });
  const served = await serveHost(host, { port: 0, folder, nowMs: () => nowMs.value });
  const origin = `http://127.0.0.1:${served.port}`;

  function ask(path: string, { method = 'GET', headers = {}, body = '' }: Partial<Request> = {}): Promise<Answer> {
    return new Promise((resolve, reject) => {
      const asked = request(
        { host: '127.0.0.1', port: served.port, path, method, headers, agent: false },
        (response) => {
          let text = '';
          response.on('data', (chunk: Buffer) => (text += chunk.toString()));
          response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, text }));
        },
      );
      asked.on('upgrade', (response, socket) => {
        socket.destroy();
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text: '' });
      });
      asked.on('error', reject);
      asked.end(body);
    });
  }

  const token = new URL(served.url).hash.replace('#token=', '');
  const exchange = (tried: string, headers: Record<string, string> = {}) =>
    ask('/session', {
      method: 'POST',
      headers: { origin, 'content-type': 'application/json', ...headers },
      body: JSON.stringify({ token: tried }),
    });

  return {
    host,
    served,
    origin,
    token,
    nowMs,
    ask,
    exchange,
    /** The cookie that lets in, as a browser sends it. */
    async letIn(): Promise<string> {
      const { headers } = await exchange(token);
      return headers['set-cookie']?.[0]?.split(';')[0] ?? '';
    },
    async close() {
      await served.close();
      await host.close();
      rmSync(around, { recursive: true });
    },
  };
}

interface Request {
  method: string;
  headers: Record<string, string>;
  body: string;
}

export const UPGRADE = {
  connection: 'Upgrade',
  upgrade: 'websocket',
  'sec-websocket-version': '13',
  'sec-websocket-key': 'dGhlIHNhbXBsZSBub25jZQ==',
};
