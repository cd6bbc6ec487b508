// How tests run: everything under tests/, the ones that need a browser or the whole program last and one at a time.
import preact from '@preact/preset-vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The program is started hundreds of times: each start takes what the one before made of the same sources. */
const COMPILED = fileURLToPath(new URL('node_modules/.cache/compiled', import.meta.url));

/** What is waited for is waited for as long as a busy machine may need; vitest alone gives up after a second. */
const PATIENT = { poll: { timeout: 20_000 } };

export default defineConfig({
  test: {
    // Most of them wait for the wire, the disk or a browser: two beside each other keep two cores busy.
    maxWorkers: 2,
    reporters: ['default', './tests/time-by-part.ts'],
    projects: [
      {
        test: {
          name: 'pure',
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
        test: { name: 'screen', testTimeout: 30_000, expect: PATIENT, include: ['tests/screen/**/*.test.{ts,tsx}'] },
      },
      {
        test: {
          name: 'whole',
          globalSetup: ['tests/faults/table.ts'],
          env: { NODE_COMPILE_CACHE: COMPILED },
          include: [
            'tests/{cli,contract,web,ingest,notebook,host,electron,packaging,faults,firmware-notes}/**/*.test.ts',
          ],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          expect: PATIENT,
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          expect: PATIENT,
        },
      },
    ],
  },
});
