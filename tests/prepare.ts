// Looks for what the tests need beyond npm (Chromium, socat, a compiler for small boards); as root on Debian installs it, else says exactly what to do.
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** What happens `without` it: the tests that it serves are left out, or go slower; where it does not say, nothing is run. */
const NEEDED = [
  { programs: ['chromium', 'chromium-browser', 'google-chrome'], debian: 'chromium', why: 'browser tests' },
  {
    programs: ['chromium-headless-shell'],
    // Both builds need the same files of one version, so an older one is brought up to it.
    debian: 'chromium chromium-headless-shell',
    why: 'browser tests',
    without: 'go slower',
  },
  { programs: ['socat'], debian: 'socat', why: 'serial tests over pseudo terminals' },
  {
    programs: ['avr-gcc'],
    debian: 'gcc-avr avr-libc',
    why: 'tests that run the sketch of firmware-notes',
    without: 'are left out',
  },
];

function found(program: string): boolean {
  return (process.env['PATH'] ?? '').split(delimiter).some((folder) => {
    try {
      accessSync(join(folder, program), constants.X_OK);
      return true;
    } catch {
      return false;
    }
  });
}

const missing = NEEDED.filter(({ programs }) => !programs.some(found));
if (missing.length > 0) {
  const packages = [...new Set(missing.flatMap(({ debian }) => debian.split(' ')))];
  const debianRoot = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (debianRoot) install(packages);
  else {
    for (const { programs, debian, why, without } of missing)
      console.error(
        without
          ? `The ${why} ${without} without ${programs[0]}, which is not on this machine.`
          : `The tests need ${debian} (${why}), which is not on this machine.`,
      );
    console.error(
      `On Debian or Ubuntu: sudo apt-get install ${packages.join(' ')}. Elsewhere install the packages of the same names, then run npm test again.`,
    );
    if (missing.some(({ without }) => !without)) process.exit(1);
  }
}

function install(packages: string[]): void {
  console.log(`Installing what the tests need beyond npm: ${packages.join(', ')} (apt-get).`);
  const environment = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const words of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', ...packages],
  ]) {
    const done = spawnSync('apt-get', words, { stdio: ['ignore', 'ignore', 'inherit'], env: environment });
    if (done.status === 0) continue;
    console.error(
      `apt-get ${words.join(' ')} did not work; install ${packages.join(' ')} by hand, then run npm test again.`,
    );
    process.exit(1);
  }
}
