// How packages are made and refused: by system, without a runtime, by licence; and what the packager is told.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { builderConfig } from '../../electron/packaging/builder-config.ts';
import { ICON_SIZES, renderIcons } from '../../electron/packaging/icons.ts';
import { allComponents, packageName, refusals, writeLicences } from '../../electron/packaging/licences.ts';
import type { Component } from '../../electron/packaging/licences.ts';
import { makePackages } from '../../electron/packaging/make-packages.ts';
import type { Workshop } from '../../electron/packaging/make-packages.ts';
import { PROGRAM_FOLDER } from '../../src/program/program-files.ts';

const SCRATCH = mkdtempSync(join(tmpdir(), 'panwarden-packaging-'));
afterAll(() => rmSync(SCRATCH, { recursive: true }));

async function made(change: Partial<Workshop>): Promise<{ code: number; said: string[]; asked: string[] }> {
  const said: string[] = [];
  const asked: string[] = [];
  const code = await makePackages({
    system: 'linux',
    versions: () => ({ packed: '45.5.0', newest: '47.0.1' }),
    fetchRuntime: async () => undefined,
    make: async (key, target) => {
      asked.push(`${key} ${target}`);
      return [`/somewhere/panwarden.${target}`];
    },
    say: (sentence) => said.push(sentence),
    ...change,
  });
  return { code, said, asked };
}

test('each system makes its own packages', async () => {
  expect(await made({})).toEqual({
    code: 0,
    asked: ['linux deb', 'linux tar.gz'],
    said: ['Debian package: panwarden.deb in dist/packages.', 'archive: panwarden.tar.gz in dist/packages.'],
  });
  expect((await made({ system: 'win32' })).asked).toEqual(['win nsis']);
  expect((await made({ system: 'darwin' })).asked).toEqual(['mac dmg']);
  expect(await made({ system: 'sunos' })).toMatchObject({ code: 1, asked: [] });
});

test('where the runtime cannot be had nothing is made, and one sentence says what to do', async () => {
  const fetchRuntime = () => Promise.reject(new Error('getaddrinfo ENOTFOUND tarn-hollow.example'));
  const { code, said, asked } = await made({ fetchRuntime });
  expect([code, asked, said.length]).toEqual([1, [], 1]);
  expect(said[0]).toMatch(/runtime of Electron cannot be downloaded here.*npm run package.*npm pack/);
  expect(said[0]).not.toContain('tarn-hollow');
});

test.each([
  ['getaddrinfo ENOTFOUND tarn-hollow.example', 'a tool that the packager needs cannot be downloaded here'],
  [
    'cannot resolve https://tarn-hollow.example/tools: status 403',
    'a tool that the packager needs cannot be downloaded here',
  ],
  ['No room on the disk.\nat somewhere', 'No room on the disk'],
])('a package that cannot be made is said, and the others are made: %s', async (message, why) => {
  const { code, said } = await made({
    make: async (_key, target) => {
      if (target === 'deb') throw new Error(message);
      return ['/somewhere/panwarden.tar.gz'];
    },
  });
  expect(code).toBe(1);
  expect(said).toEqual([`The Debian package was not made: ${why}.`, 'archive: panwarden.tar.gz in dist/packages.']);
});

test('an Electron that its makers repair no more is not packed', async () => {
  const versions = (newest: string | null) => () => ({ packed: '45.5.0', newest });
  const old = await made({ versions: versions('48.0.0') });
  expect([old.code, old.asked, old.said]).toEqual([
    1,
    [],
    [expect.stringMatching(/45\.5\.0 gets no repairs.*48\.0\.0/)],
  ]);
  const unsure = await made({ versions: versions(null) });
  expect([unsure.code, unsure.said[0]]).toEqual([0, expect.stringContaining('could not be looked up')]);
});

test('the packager makes every promised kind of package, under an id of our own, and opens recordings', () => {
  const { linux, win, mac, appId, asar, nsis } = builderConfig;
  expect([linux?.target, win?.target, mac?.target]).toEqual([['deb', 'tar.gz'], ['nsis'], ['dmg']]);
  expect([appId, asar]).toEqual(['local.panwarden.desktop', true]);
  expect(linux?.fileAssociations).toMatchObject([{ ext: 'boil.jsonl', mimeType: 'application/x-panwarden-boil' }]);
  expect([win?.fileAssociations, mac?.fileAssociations]).toMatchObject([[{ ext: 'jsonl' }], [{ ext: 'jsonl' }]]);
  // The notebook outlives the program.
  expect(nsis).toMatchObject({ deleteAppDataOnUninstall: false });
});

test('the icon is drawn at every size that desktops ask for', async () => {
  await renderIcons(SCRATCH);
  for (const size of ICON_SIZES) {
    const picture = sharp(join(SCRATCH, `${size}x${size}.png`));
    expect(await picture.metadata()).toMatchObject({ format: 'png', width: size, height: size });
    const { channels, isOpaque } = await picture.stats();
    expect([channels.length, isOpaque, channels[0]!.stdev > 20]).toEqual([4, false, true]);
  }
});

test('the sign in the bar is the icon', async () => {
  const pixels = (file: string): Promise<Buffer> => sharp(file).ensureAlpha().raw().toBuffer();
  const sign = await pixels(join(PROGRAM_FOLDER, 'electron/watching.png'));
  const drawn = await pixels(join(SCRATCH, '32x32.png'));
  expect(sign.length).toBe(32 * 32 * 4);
  // Another version of the library may round otherwise.
  const apart = sign.reduce((sum, value, index) => sum + Math.abs(value - drawn[index]!), 0) / sign.length;
  expect(apart).toBeLessThan(1);
});

const component = (name: string, ...ids: string[]): Component => ({
  name,
  version: '1.0.0',
  licenses: ids.map((id) => ({ license: { id } })),
});

test('a licence that is missing, unknown or binding is refused by name', () => {
  expect(refusals([component('a', 'MIT'), component('b', 'ISC', 'Apache-2.0')])).toEqual([]);
  expect(refusals([component('c')])).toEqual(['c 1.0.0 names no licence.']);
  expect(refusals([{ ...component('d', 'GPL-3.0-only'), group: '@tarn' }])).toEqual([
    '@tarn/d 1.0.0 is under GPL-3.0-only, which nobody has looked at.',
  ]);
  expect(refusals([component('e', 'MIT', 'Strange-1.0')])).toHaveLength(1);
  expect(refusals([{ name: 'f', version: '2', licenses: [{ license: { name: 'see LICENSE' } }] }])).toHaveLength(1);
  expect(refusals([{ name: 'g', version: '2', licenses: [{ expression: '(MIT OR GPL-2.0-only)' }] }])).toHaveLength(1);
});

let bill: { bomFormat: string; specVersion: string; metadata: { component: Component }; components: Component[] };
beforeAll(async () => {
  await writeLicences(SCRATCH);
  bill = JSON.parse(readFileSync(join(SCRATCH, 'sbom.cdx.json'), 'utf8')) as typeof bill;
});

test('the bill of materials is a CycloneDX one of this program, with every package that it runs with', () => {
  expect([bill.bomFormat, bill.specVersion]).toEqual(['CycloneDX', '1.6']);
  expect(bill.metadata.component).toMatchObject({ name: 'panwarden', type: 'application' });
  const all = allComponents(bill.components);
  for (const { purl, version } of all) {
    expect(purl).toMatch(/^pkg:npm\//);
    expect(version).toMatch(/^\d+\.\d+\.\d+/);
  }
  const { dependencies } = JSON.parse(readFileSync(join(PROGRAM_FOLDER, 'package.json'), 'utf8')) as {
    dependencies: Record<string, string>;
  };
  const names = new Set(all.map(packageName));
  expect(Object.keys(dependencies).filter((name) => !names.has(name))).toEqual([]);
  for (const tool of ['vite', 'vitest', 'typescript', 'electron-builder', 'playwright'])
    expect(names).not.toContain(tool);
});

test('the bill names the runtime of the desktop packages, as one that not every package holds', () => {
  const runtime = bill.components.filter(({ name }) => name === 'electron');
  expect(runtime).toMatchObject([{ scope: 'optional', licenses: [{ license: { id: 'MIT' } }] }]);
});

test('every package of the bill stands in the file of licences, with its words', () => {
  const text = readFileSync(join(SCRATCH, 'THIRD-PARTY-LICENCES.txt'), 'utf8');
  const listed = new Set([...text.matchAll(/^ - (\S+)$/gm)].map(([, name]) => name));
  // Node itself, which the package `node` fetches for the machine it is installed on, is in no package of ours.
  const isNode = (name: string): boolean => /^node(?:-bin)?-(?:linux|win|darwin)-\w+$/u.test(name);
  const packages = allComponents(bill.components).filter(({ name }) => name !== 'electron' && !isNode(name));
  const all = packages.map((each) => `${packageName(each)}@${each.version}`);
  expect(all.filter((name) => !listed.has(name))).toEqual([]);
  for (const words of ['Permission is hereby granted, free of charge', 'Apache License', 'Electron and Chromium']) {
    expect(text).toContain(words);
  }
});
