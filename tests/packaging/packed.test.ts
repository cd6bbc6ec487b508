// What a neighbour is given, made and tried: the npm archive in an empty folder, and the desktop app around a stand-in runtime.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { extractAll, listPackage } from '@electron/asar';
import { FuseState, FuseV1Options, getCurrentFuseWire } from '@electron/fuses';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { builderConfig } from '../../electron/packaging/builder-config.ts';
import { ICON_SIZES, renderIcons } from '../../electron/packaging/icons.ts';
import { packed } from '../../electron/packaging/make-packages.ts';
import { allComponents, packageName } from '../../electron/packaging/licences.ts';
import type { Component } from '../../electron/packaging/licences.ts';
import { copy, panwarden, Program } from '../cli/program.ts';
import { pretendBoard } from '../ingest/pretend-board.ts';
import { runWindow, standInDebianTool, standInRuntime } from './stand-in-runtime.ts';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const RECORDING = join(PROJECT, 'fixtures/recordings/birch-below-a-boil.boil.jsonl');
const SCRATCH = mkdtempSync(join(tmpdir(), 'panwarden-packed-'));
afterAll(() => rmSync(SCRATCH, { recursive: true, force: true }));
const LONG_MS = 300_000;

let archive: string;
let archived: string[];
beforeAll(() => {
  const told = execFileSync('npm', ['pack', '--json', '--pack-destination', SCRATCH], {
    cwd: PROJECT,
    encoding: 'utf8',
  });
  const [made] = Object.values(JSON.parse(told) as Record<string, { filename: string; files: { path: string }[] }>);
  archive = join(SCRATCH, made!.filename);
  archived = made!.files.map(({ path }) => path);
}, LONG_MS);

const NO_PLACE = [/(^|\/)(tests?|fixtures|packaging)\//, /\.map$/, /\.tsx?$/, /vite|oxlint|oxfmt|vitest/];

function expectNoneOutOfPlace(files: readonly string[]): void {
  for (const out of NO_PLACE)
    expect(
      files.filter((path) => out.test(path)),
      String(out),
    ).toEqual([]);
}

describe('the archive of npm', () => {
  let folder: string;
  // The tests that come after in the same process run the program of this folder again.
  const ours = copy.main;
  afterAll(() => void (copy.main = ours));
  beforeAll(() => {
    folder = join(SCRATCH, 'neighbour');
    mkdirSync(folder);
    execFileSync('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund', archive], { cwd: folder });
    copy.main = join(folder, 'node_modules/panwarden/dist/program/src/cli/main.js');
  }, LONG_MS);

  test('holds the compiled program, the built screen, licences and wiring pages, and nothing of the workshop', () => {
    expect(archived).toEqual(
      expect.arrayContaining([
        'README.md',
        'package.json',
        'dist/program/src/cli/main.js',
        'dist/program/src/ingest/reader.js',
        'dist/program/src/host/backup-worker.js',
        'dist/program/src/language/fr.json',
        'dist/program/src/host/tuning/tune-worker.js',
        'dist/program/electron/preload.cjs',
        'dist/screen/index.html',
        'dist/screen/phone.html',
        'dist/licences/THIRD-PARTY-LICENCES.txt',
        'dist/licences/sbom.cdx.json',
        'firmware-notes/README.md',
      ]),
    );
    expectNoneOutOfPlace(archived);
  });

  test('installs no tool that only the workshop needs', () => {
    const near = createRequire(join(folder, 'node_modules/panwarden/package.json'));
    for (const name of ['vite', 'typescript', 'electron', 'vitest', 'electron-builder']) {
      expect(() => near.resolve(`${name}/package.json`), name).toThrow();
    }
  });

  test('starts its host on the loopback, serves the page and ends when asked', async () => {
    const program = new Program(
      'watch',
      '--data',
      join(SCRATCH, 'data'),
      '--setup',
      setup('no-port'),
      '--http',
      '0',
      '--json',
    );
    const { url } = await program.line(({ kind }) => kind === 'serving');
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+\//);
    expect(await (await fetch(String(url))).text()).toContain('<div id="screen">');
    program.process.kill('SIGTERM');
    expect(await program.ended).toBe(0);
  });

  test('reads a port in a process of its own', async () => {
    const board = pretendBoard();
    await board.plugIn();
    const program = new Program(
      'watch',
      '--data',
      join(SCRATCH, 'port'),
      '--setup',
      setup(board.path),
      '--json',
      '--every',
      '1',
    );
    await program.line(({ kind }) => kind === 'watching');
    const feeding = setInterval(() => void board.send('T1=81.25C\n'), 300);
    const reading = await program.line((line) => line['temperature_c'] === 81.25).finally(() => clearInterval(feeding));
    expect(reading['probe']).toBe('ok');
    program.process.kill('SIGTERM');
    expect(await program.ended).toBe(0);
    await board.remove();
  });

  test('replays and tunes as the checkout does', () => {
    const words = ['replay', RECORDING, '--json', '--every', '600'];
    const main = join(PROJECT, 'src/cli/main.ts');
    const checkout = execFileSync(process.execPath, [main, ...words], { encoding: 'utf8' });
    expect(panwarden(...words).stdout).toBe(checkout);
    const data = ['--data', join(SCRATCH, 'tuned'), '--json'];
    expect(panwarden('import', RECORDING, ...data).status).toBe(0);
    writeFileSync(join(SCRATCH, 'lead.json'), '{"settings":{"near_finish_lead_s":900}}');
    const tuned = panwarden('tune', '--with', join(SCRATCH, 'lead.json'), ...data);
    expect([tuned.stderr, tuned.lines()[0]?.['kind']]).toEqual(['', 'tuned']);
  });

  test('says of a copy without a desktop window that it is one', () => {
    const start = panwarden('start', '--data', join(PROJECT, 'package.json'));
    expect(start.stdout).toContain('this copy of the program comes without one');
  });
});

function setup(path: string): string {
  const file = join(SCRATCH, `${path.replaceAll('/', '-')}.json`);
  const probes = [{ id: 'A/1', port: 'A', channel: 'T1' }];
  const pans = [{ id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1' }];
  writeFileSync(file, JSON.stringify({ name: 'Try', ports: [{ id: 'A', path }], probes, pans }));
  return file;
}

describe.runIf(process.platform === 'linux')('the desktop app', () => {
  const unpacked = join(SCRATCH, 'app');
  let files: string[];
  beforeAll(async () => {
    const told = structuredClone(builderConfig);
    await renderIcons(join(PROJECT, 'dist/icons'));
    vi.stubEnv('CUSTOM_FPM_PATH', standInDebianTool(join(SCRATCH, 'debian')));
    await packed('linux', 'deb', join(SCRATCH, 'packages'), standInRuntime(join(SCRATCH, 'runtime')));
    vi.unstubAllEnvs();
    // Another package is made of the same words.
    expect(builderConfig).toEqual(told);
    const asar = join(SCRATCH, 'packages/linux-unpacked/resources/app.asar');
    files = listPackage(asar, { isPack: false }).map((path) => path.replaceAll('\\', '/'));
    extractAll(asar, unpacked);
  }, LONG_MS);

  test('holds the program, the screen and the licences, and nothing of the workshop', () => {
    expect(files).toEqual(
      expect.arrayContaining([
        '/package.json',
        '/dist/program/electron/main.js',
        '/dist/program/electron/preload.cjs',
        '/dist/program/src/language/fr.json',
        '/dist/screen/index.html',
        '/dist/licences/THIRD-PARTY-LICENCES.txt',
        '/dist/licences/sbom.cdx.json',
      ]),
    );
    const ours = files.filter((path) => !path.startsWith('/node_modules/'));
    expect([...new Set(ours.map((path) => path.split('/')[1]))].sort()).toEqual([
      'dist',
      'node_modules',
      'package.json',
    ]);
    expectNoneOutOfPlace(ours);
    expect(files.filter((path) => /\.(map|[cm]?tsx?)$|node_modules\/.*\/(tests?|__tests__)\//.test(path))).toEqual([]);
  });

  test('holds only packages that the bill of materials names', () => {
    const { components } = JSON.parse(readFileSync(join(unpacked, 'dist/licences/sbom.cdx.json'), 'utf8')) as {
      components: Component[];
    };
    const billed = new Set(allComponents(components).map(packageName));
    const held = files.flatMap(
      (path) => /.*\/node_modules\/((?:@[^/]+\/)?[^/@.][^/]*)\/package\.json$/.exec(path)?.[1] ?? [],
    );
    expect(held).toContain('fastify');
    expect([...new Set(held)].filter((name) => !billed.has(name))).toEqual([]);
  });

  test('has its fuses set', async () => {
    const {
      version,
      resetAdHocDarwinSignature: _reset,
      ...wire
    } = await getCurrentFuseWire(join(SCRATCH, 'packages/linux-unpacked/panwarden'));
    expect(version).toBe('1');
    const on = (fuse: FuseV1Options): boolean => wire[fuse] === FuseState.ENABLE;
    expect({
      runAsNode: on(FuseV1Options.RunAsNode),
      cookies: on(FuseV1Options.EnableCookieEncryption),
      nodeOptions: on(FuseV1Options.EnableNodeOptionsEnvironmentVariable),
      inspect: on(FuseV1Options.EnableNodeCliInspectArguments),
      integrity: on(FuseV1Options.EnableEmbeddedAsarIntegrityValidation),
      asarOnly: on(FuseV1Options.OnlyLoadAppFromAsar),
      fileRights: on(FuseV1Options.GrantFileProtocolExtraPrivileges),
    }).toEqual({
      runAsNode: false,
      cookies: true,
      nodeOptions: false,
      inspect: false,
      integrity: true,
      asarOnly: true,
      fileRights: false,
    });
  });

  test('is handed to Debian with its icons, its recordings and what shuts its window in', () => {
    const words = JSON.parse(readFileSync(join(SCRATCH, 'debian/words.json'), 'utf8')) as string[];
    expect(words).toEqual(expect.arrayContaining(['panwarden', 'Panwarden <nobody@tarn-hollow.example>']));
    for (const size of ICON_SIZES)
      expect(
        words.filter((word) => word.endsWith(`=/usr/share/icons/hicolor/${size}x${size}/apps/panwarden.png`)),
      ).toHaveLength(1);
    const handed = (end: string): string => {
      const name = readdirSync(join(SCRATCH, 'debian/handed')).find((each) => each.endsWith(end));
      return readFileSync(join(SCRATCH, 'debian/handed', name ?? end), 'utf8');
    };
    expect(handed('.desktop')).toMatch(/^MimeType=application\/x-panwarden-boil;$/m);
    expect(handed('.desktop')).toMatch(/^Exec=\/opt\/Panwarden\/panwarden %U$/m);
    expect(handed('.desktop')).not.toContain('no-sandbox');
    expect(handed('.xml')).toMatch(/application\/x-panwarden-boil.*\*\.boil\.jsonl/s);
    expect(handed('after-install')).toContain('chrome-sandbox');
  });

  test('has all that its window needs', () => {
    const { errors, page } = runWindow(join(unpacked, 'dist/program/electron/main.js'), join(SCRATCH, 'window'));
    expect(errors).toEqual([]);
    expect(page).toContain('<div id="screen">');
  });

  test('can open ports from beside its archive', () => {
    const { SerialPort } = createRequire(join(unpacked, 'package.json'))('serialport') as { SerialPort: unknown };
    expect(typeof SerialPort).toBe('function');
  });
});
