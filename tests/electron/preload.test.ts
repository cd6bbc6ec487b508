// The page is given three named functions; the preload runs here as a sandboxed page would run it.
import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Link, LinkEvent } from '../../src/screen/client/link.ts';

const SCRIPT = readFileSync(join(import.meta.dirname, '../../electron/preload.cjs'), 'utf8');

class Renderer extends EventEmitter {
  asked: unknown[][] = [];
  answers: Record<string, Promise<unknown>> = {};
  invoke(channel: string, ...given: unknown[]): Promise<unknown> {
    this.asked.push([channel, ...given]);
    return this.answers[channel] ?? Promise.resolve();
  }
}

/** A sandboxed preload is plain script text, and its `require` knows Electron's renderer part only. */
function load(): { renderer: Renderer; exposed: Record<string, unknown>; link: Link } {
  const renderer = new Renderer();
  const exposed: Record<string, unknown> = {};
  const contextBridge = { exposeInMainWorld: (name: string, value: unknown) => void (exposed[name] = value) };
  const require = (name: string): unknown => {
    if (name !== 'electron') throw new Error(`module not found: ${name}`);
    return { contextBridge, ipcRenderer: renderer };
  };
  new Function('require', SCRIPT)(require);
  return { renderer, exposed, link: exposed['panwarden'] as Link };
}

test('the page is given these functions and nothing else', () => {
  const { exposed, link } = load();
  expect(Object.keys(exposed)).toEqual(['panwarden']);
  expect(Object.keys(link).sort()).toEqual(['hand', 'listen', 'send']);
  expect(Object.values(link).map((value) => typeof value)).toEqual(['function', 'function', 'function']);
});

test('the host is heard until the page stops listening, without the event behind a message', async () => {
  const { renderer, link } = load();
  const heard: LinkEvent[][] = [];
  const stop = link.listen((...given) => void heard.push(given));
  await Promise.resolve();
  renderer.emit('panwarden:message', { sender: renderer }, { kind: 'settings' });
  expect(renderer.asked).toEqual([['panwarden:listen']]);
  expect(heard).toEqual([
    [{ kind: 'state', now: { state: 'open' } }],
    [{ kind: 'message', message: { kind: 'settings' } }],
  ]);
  stop();
  renderer.emit('panwarden:message', {}, { kind: 'settings' });
  expect(heard).toHaveLength(2);
});

test('a command is answered, and said to have failed when it was refused', async () => {
  const { renderer, link } = load();
  const heard: LinkEvent[] = [];
  link.listen((event) => void (event.kind === 'message' && heard.push(event)));
  const good = { kind: 'answered', ref: 's1', ok: true };
  renderer.answers['panwarden:command'] = Promise.resolve(good);
  expect(link.send({ ref: 's1', boils: true })).toBe(true);
  await renderer.answers['panwarden:command'];
  renderer.answers['panwarden:command'] = Promise.reject(new Error('no'));
  link.send({ ref: 's2', end: true });
  await renderer.answers['panwarden:command'].catch(() => undefined);
  expect(renderer.asked.slice(1)).toEqual([
    ['panwarden:command', { ref: 's1', boils: true }],
    ['panwarden:command', { ref: 's2', end: true }],
  ]);
  expect(heard).toEqual([
    { kind: 'message', message: good },
    {
      kind: 'message',
      message: { kind: 'answered', ref: 's2', ok: false, why: expect.stringContaining('did not take') },
    },
  ]);
});

test('a recording is handed over as its bytes', async () => {
  const { renderer, link } = load();
  renderer.answers['panwarden:hand'] = Promise.resolve({ ok: true, boil: 'b' });
  expect(await link.hand('import', new Blob(['{}\n']))).toEqual({ ok: true, boil: 'b' });
  expect(renderer.asked).toEqual([['panwarden:hand', { way: 'import', bytes: new TextEncoder().encode('{}\n') }]]);
});

test('a recording that cannot be read is said, not thrown', async () => {
  const { renderer, link } = load();
  const moved = { arrayBuffer: () => Promise.reject(new Error('NotReadableError')) } as Blob;
  expect(await link.hand('import', moved)).toEqual({ ok: false, why: expect.stringContaining('could not be read') });
  expect(renderer.asked).toEqual([]);
});
