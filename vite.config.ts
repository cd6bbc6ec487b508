// How the screen is built: from src/screen into dist/screen, for the host to serve.
import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';

export default defineConfig({
  root: 'src/screen',
  base: './',
  plugins: [preact({ reactAliasesEnabled: false, devToolsEnabled: false })],
  build: {
    outDir: '../../dist/screen',
    emptyOutDir: true,
    // The page's security rules allow no inline script or style, so nothing is inlined but small pictures.
    modulePreload: { polyfill: false },
    target: 'es2022',
    // The page comes from the same machine, with all its languages: a file of a megabyte is there at once.
    chunkSizeWarningLimit: 1500,
    rolldownOptions: { input: { index: 'src/screen/index.html', phone: 'src/screen/phone.html' } },
  },
});
