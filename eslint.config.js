// What the code may not do: hidden clocks and chance in core, and the usual slips. Who may import whom: .dependency-cruiser.cjs.
import tseslint from 'typescript-eslint';

const clockless = [
  'globalThis',
  'global',
  'Date',
  'setTimeout',
  'setInterval',
  'setImmediate',
  'queueMicrotask',
  'performance',
  'process',
  'window',
  'document',
  'fetch',
  'crypto',
  'console',
].map((name) => ({
  name,
  message: 'core has no clock, no chance and no world: time, random numbers and effects are inputs.',
}));

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'fixtures/recordings/**'] },
  ...tseslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      eqeqeq: 'error',
      'no-restricted-syntax': [
        'error',
        {
          selector: 'TSEnumDeclaration',
          message: 'Node runs this file as it stands: use a union of strings instead of an enum.',
        },
      ],
    },
  },
  {
    files: ['src/core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', ...clockless],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'core has no chance of its own: use the seeded generator of core/simulation.',
        },
      ],
    },
  },
  {
    files: ['src/screen/**/*.{ts,tsx}'],
    ignores: ['src/screen/charts/**'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        { paths: [{ name: 'chart.js', message: 'only screen/charts imports chart.js.' }] },
      ],
    },
  },
  {
    files: ['electron/**/*.{ts,cjs}'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'shell', property: 'openExternal', message: 'the window leads nowhere out of the program.' },
        { object: 'shell', property: 'openPath', message: 'the window starts no other program.' },
      ],
    },
  },
  { files: ['**/*.cjs'], rules: { '@typescript-eslint/no-require-imports': 'off' } },
);
