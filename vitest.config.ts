// How tests run: everything under tests/, the ones that need a browser or the whole program last and one at a time.
import preact from '@preact/preset-vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The program is started hundreds of times: each start takes what the one before made of the same sources. */
const COMPILED = fileURLToPath(new URL('node_modules/.cache/compiled', import.meta.url));

/** What is waited for is waited for as long as a busy machine may need; vitest alone gives up after a second. */
const PATIENT = { poll: { timeout: 20_000 } };

/** Of the tests in a browser, those that have a deadline. */
const IN_A_BROWSER = ['heard', 'host-gone', 'latency'].map((name) => `tests/browser/${name}.test.ts`);

export default defineConfig({
  test: {
    // Most of them wait for the wire, the disk or a browser: three beside each other keep two cores busy.
    maxWorkers: 3,
    reporters: ['default', './tests/time-by-part.ts'],
    projects: [
      {
        test: {
          name: 'pure',
          // They share nothing that changes, and to load the same modules anew for each file takes half as long as the tests.
          isolate: false,
          testTimeout: 30_000,
          expect: PATIENT,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: [
            'tests/browser/**',
            'tests/screen/**',
            'tests/cli/**',
            'tests/contract/**',
            'tests/web/**',
            'tests/ingest/**',
            'tests/notebook/**',
            'tests/host/**',
            'tests/electron/**',
            'tests/packaging/**',
            'tests/faults/**',
            'tests/firmware-notes/**',
          ],
        },
      },
      {
        plugins: [preact()],
        test: {
          name: 'screen',
          // As above: each puts back what it changed, such as the language.
          isolate: false,
          testTimeout: 30_000,
          expect: PATIENT,
          include: ['tests/screen/**/*.test.{ts,tsx}'],
        },
      },
      {
        test: {
          name: 'host',
          // Each has a folder and a host of its own and closes it; the host's modules take over a second of processor time to load.
          isolate: false,
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: ['tests/{host,notebook,web}/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          // Longest in one piece, and mostly npm at work: projects run in order of their names, and last it would run alone.
          name: 'packaging',
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: ['tests/packaging/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          name: 'whole',
          // As above.
          isolate: false,
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: ['tests/{cli,contract,ingest,electron,firmware-notes}/**/*.test.ts'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          name: 'deadlines',
          // What must be said within a second or five is tried on a machine that is not too busy for it: after all others.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          globalSetup: ['tests/faults/table.ts'],
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: ['tests/faults/**/*.test.ts', ...IN_A_BROWSER],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          name: 'browser',
          // As above; each has a browser of its own.
          isolate: false,
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: ['tests/browser/**/*.test.ts'],
          exclude: IN_A_BROWSER,
          testTimeout: 120_000,
          hookTimeout: 120_000,
          expect: PATIENT,
        },
      },
    ],
  },
});
