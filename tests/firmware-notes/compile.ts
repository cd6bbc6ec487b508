// Compiles C for the 8-bit controller of firmware-notes with Debian's avr-gcc and gives its program memory.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const SKETCH_FOLDER = fileURLToPath(new URL('../../firmware-notes/probe-lines/', import.meta.url));

/** Whether there is a compiler; without it the tests of the sketch are left out, and tests/prepare.ts says why. */
export const hasCompiler = spawnSync('avr-gcc', ['--version']).status === 0;

/** Words of program memory; any warning is an error. Fails with a sentence where the compiler is missing. */
export function compile(source: string): Uint16Array {
  const folder = mkdtempSync(join(tmpdir(), 'sketch-'));
  try {
    const [main, elf, bytes] = ['main.c', 'main.elf', 'main.bin'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ];
    writeFileSync(main, source);
    const strict = ['-std=c11', '-Wall', '-Wextra', '-Werror'];
    run('avr-gcc', '-mmcu=atmega328p', '-Os', ...strict, `-I${SKETCH_FOLDER}`, '-o', elf, main);
    run('avr-objcopy', '-O', 'binary', elf, bytes);
    const program = new Uint8Array(32_768);
    program.set(readFileSync(bytes));
    return new Uint16Array(program.buffer);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export const sketch = (): Uint16Array => compile(readFileSync(join(SKETCH_FOLDER, 'probe-lines.c'), 'utf8'));

function run(program: string, ...options: string[]): void {
  const { status, stderr, error } = spawnSync(program, options, { encoding: 'utf8' });
  if (error) throw new Error(`${program} is needed: on Debian "apt-get install gcc-avr avr-libc" (${error.message}).`);
  if (status !== 0) throw new Error(`${program}: ${stderr}`);
}
