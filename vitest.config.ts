// How tests run: everything under tests/, the ones that need a browser or the whole program last and one at a time.
import preact from '@preact/preset-vite';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The program is started hundreds of times: each start takes what the one before made of the same sources. */
const COMPILED = fileURLToPath(new URL('node_modules/.cache/compiled', import.meta.url));

export default defineConfig({
  test: {
    // Most of them wait for the wire, the disk or a browser: two beside each other keep two cores busy.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'pure',
          testTimeout: 30_000,
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
      { plugins: [preact()], test: { name: 'screen', include: ['tests/screen/**/*.test.{ts,tsx}'] } },
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
        },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
