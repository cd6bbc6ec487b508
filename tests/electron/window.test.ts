// The real window, driven by Playwright: runs wherever Electron's runtime is, and otherwise says why it does not.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron } from 'playwright';
import type { ElectronApplication, Page } from 'playwright';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';

const PROJECT = resolve(import.meta.dirname, '../..');

/** Where the runtime is, or why there is none. Electron's own package is not asked: it would download one. */
function runtime(): { path: string } | { why: string } {
  const named = join(PROJECT, 'node_modules/electron/path.txt');
  const path = existsSync(named) ? join(PROJECT, 'node_modules/electron/dist', readFileSync(named, 'utf8')) : null;
  if (path === null || !existsSync(path)) return { why: 'the runtime of Electron is not installed' };
  const hasDisplay = process.platform !== 'linux' || process.env['DISPLAY'] || process.env['WAYLAND_DISPLAY'];
  if (!hasDisplay) return { why: 'there is no display' };
  if (!existsSync(join(PROJECT, 'dist/screen/index.html'))) return { why: 'the screen has not been built' };
  if (process.platform === 'linux' && process.getuid?.() === 0)
    return { why: 'nothing shuts in a page of the root user' };
  return { path };
}

const found = runtime();
if ('why' in found) {
  process.stderr.write(
    `The desktop window was not tested, because ${found.why}; its rules were tested against a stand-in.\n`,
  );
}

describe.skipIf('why' in found)('the desktop window', () => {
  let folder: string;
  let app: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    if ('why' in found) return;
    folder = mkdtempSync(join(tmpdir(), 'panwarden-window-'));
    const env = { ...process.env, PANWARDEN_DATA: folder } as Record<string, string>;
    app = await _electron.launch({ executablePath: found.path, args: [join(PROJECT, 'electron/main.ts')], env });
    page = await app.firstWindow();
  }, 60_000);
  afterAll(async () => {
    await app?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  test('shows the screen from its own scheme and is given the link only', async () => {
    expect(page.url()).toMatch(/^app:\/\/panwarden\/index\.html/);
    const keys = await page.evaluate('Object.keys(window.panwarden).sort()');
    expect(keys).toEqual(['hand', 'listen', 'send']);
    expect(await page.evaluate('[typeof require, typeof process, typeof module]')).toEqual([
      'undefined',
      'undefined',
      'undefined',
    ]);
  });

  test('hears the host and is answered', async () => {
    const answer = await page.evaluate(`new Promise((resolve) => {
      window.panwarden.listen((event) => event.kind === 'message' && event.message.ref === 'w1' && resolve(event.message));
      window.panwarden.send({ ref: 'w1', boils: true });
    })`);
    expect(answer).toEqual({ kind: 'answered', ref: 'w1', ok: true, data: [] });
  });

  test('runs no inline script and reaches no other file', async () => {
    const ran = await page.evaluate(`(() => {
      const script = document.createElement('script');
      script.textContent = 'window.inlineRan = true';
      document.head.append(script);
      return window.inlineRan === true;
    })()`);
    expect(ran).toBe(false);
    const status = await page.evaluate(`new Promise((resolve) => {
      const image = new Image();
      image.onload = () => resolve('loaded');
      image.onerror = () => resolve('refused');
      image.src = 'app://panwarden/..%2f..%2fpackage.json';
    })`);
    expect(status).toBe('refused');
  });

  test('is denied permissions, opens no window and goes nowhere', async () => {
    expect(
      await page.evaluate("navigator.permissions.query({ name: 'geolocation' }).then((answer) => answer.state)"),
    ).toBe('denied');
    expect(await page.evaluate("window.open('https://tarn-hollow.example/') === null")).toBe(true);
    await page.evaluate("void (location.href = 'https://tarn-hollow.example/')");
    expect(page.url()).toMatch(/^app:\/\/panwarden\//);
    expect(app.windows()).toHaveLength(1);
  });

  test('takes a recording as a blob and says what is wrong with it', async () => {
    const answer = await page.evaluate("window.panwarden.hand('import', new Blob(['no recording\\n']))");
    expect(answer).toEqual({ ok: false, why: expect.any(String) });
  });
});

const fused = join(PROJECT, 'dist/packages/linux-unpacked/panwarden');

/** Fuses shut every door that a test could look in by, so this one looks at what the program does from outside. */
describe.skipIf('why' in found || !existsSync(fused))('the packaged app', () => {
  test('starts, opens its notebook, does not run as Node, and ends when asked', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'panwarden-fused-'));
    const env = { ...process.env, PANWARDEN_DATA: folder, ELECTRON_RUN_AS_NODE: '1' };
    const program = spawn(fused, ['--inspect'], { env, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [program.stdout, program.stderr])
      stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    const ended = new Promise((resolve) => program.once('exit', resolve));
    await vi.waitFor(() => expect(existsSync(join(folder, 'watching.lock'))).toBe(true), { timeout: 20_000 });
    program.kill('SIGTERM');
    await ended;
    expect(said).not.toContain('Debugger listening');
    rmSync(folder, { recursive: true, force: true });
  });
});
