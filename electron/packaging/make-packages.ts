// Makes the desktop app's packages for the system that it runs on, or says in a sentence why they cannot be made.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { downloadArtifact } from '@electron/get';
import { build } from 'electron-builder';
import { PROGRAM_FOLDER } from '../../src/program/program-files.ts';
import { builderConfig } from './builder-config.ts';
import { renderIcons } from './icons.ts';
import { makeParts } from './prepack.ts';

type System = 'linux' | 'win' | 'mac';

/** Each system's packages are made on that system: a disk image can be made nowhere else. */
const SYSTEMS: Readonly<Record<string, { key: System; packages: Readonly<Record<string, string>> }>> = {
  linux: { key: 'linux', packages: { deb: 'Debian package', 'tar.gz': 'archive' } },
  win32: { key: 'win', packages: { nsis: 'Windows installer' } },
  darwin: { key: 'mac', packages: { dmg: 'macOS disk image' } },
};

/** What a failed download says, by Node's codes, undici and the packager. */
const NO_DOWNLOAD = /ENOTFOUND|EAI_AGAIN|ECONN|ETIMEDOUT|ENETUNREACH|fetch failed|https?:/;

function whyOf({ message }: Error): string {
  if (NO_DOWNLOAD.test(message)) return 'a tool that the packager needs cannot be downloaded here';
  return message.split('\n')[0]!.replace(/\.$/, '');
}

/** Electron's makers repair its three newest majors. */
const KEPT_MAJORS = 3;

/** What making packages asks of the world; a test hands in its own. */
export interface Workshop {
  system: string;
  /** The version of Electron that is packed, and the newest there is; null where that cannot be looked up. */
  versions(): { packed: string; newest: string | null };
  /** Fetches Electron's runtime; rejects when it cannot be had. */
  fetchRuntime(): Promise<void>;
  /** Makes one package; the paths of what was made. */
  make(key: System, target: string): Promise<string[]>;
  say(sentence: string): void;
}

const major = (version: string): number => Number.parseInt(version, 10);

/** Makes each package of the system, says what became of it, and gives the exit code: 0 when all were made, else 1. */
export async function makePackages({ system, versions, fetchRuntime, make, say }: Workshop): Promise<number> {
  const asked = SYSTEMS[system];
  if (asked === undefined) {
    say('No packages are made on this system, only on Linux, Windows and macOS.');
    return 1;
  }
  try {
    await fetchRuntime();
  } catch {
    say(
      'The desktop packages were not made: the runtime of Electron cannot be downloaded here. Run "npm run package" again on a machine that may download it. "npm pack" makes the package that needs none.',
    );
    return 1;
  }
  const { packed: version, newest } = versions();
  if (newest === null) say('Whether Electron is new enough could not be looked up.');
  else if (major(newest) - major(version) >= KEPT_MAJORS) {
    say(
      `Electron ${version} gets no repairs any more, for ${newest} is out: install a newer one, run the tests, then package.`,
    );
    return 1;
  }
  let code = 0;
  for (const [target, what] of Object.entries(asked.packages)) {
    try {
      const made = await make(asked.key, target);
      say(`${what}: ${made.map((path) => basename(path)).join(', ')} in dist/packages.`);
    } catch (error) {
      code = 1;
      say(`The ${what} was not made: ${whyOf(error as Error)}.`);
    }
  }
  return code;
}

function electronVersion(): string {
  const electron = readFileSync(join(PROGRAM_FOLDER, 'node_modules/electron/package.json'), 'utf8');
  return (JSON.parse(electron) as { version: string }).version;
}

function versionsHere(): { packed: string; newest: string | null } {
  const asked = spawnSync('npm', ['view', 'electron', 'version'], {
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  return { packed: electronVersion(), newest: /^\d+\.\d+\.\d+/.exec(asked.stdout)?.[0] ?? null };
}

/** Fetches Electron's runtime into the store from which the packager takes it. */
async function fetchRuntime(): Promise<void> {
  const { platform, arch } = process;
  await downloadArtifact({ version: electronVersion(), artifactName: 'electron', platform, arch });
}

/**
 * One package by the packager, out of the parts that were made before; `runtime` is a folder with an unpacked runtime of
 * Electron in place of the one that is downloaded.
 */
export function packed(key: System, target: string, output = 'dist/packages', runtime?: string): Promise<string[]> {
  // The packager writes into what it is given, and a second package would begin with that.
  const told = structuredClone(builderConfig);
  const config = { ...told, directories: { ...told.directories, output } };
  const electronDist = runtime === undefined ? {} : { electronDist: runtime };
  const asked = { projectDir: PROGRAM_FOLDER, publish: 'never', [key]: [target] } as const;
  return build({ ...asked, config: { ...config, ...electronDist } });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    await makeParts();
    await renderIcons(join(PROGRAM_FOLDER, 'dist/icons'));
    const say = (sentence: string): void => void process.stdout.write(`${sentence}\n`);
    process.exitCode = await makePackages({
      system: process.platform,
      versions: versionsHere,
      fetchRuntime,
      make: (key, target) => packed(key, target),
      say,
    });
  } catch (error) {
    process.stderr.write(`${(error as Error).message}\n`);
    process.exitCode = 1;
  }
}
