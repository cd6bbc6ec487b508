// Which room may import which: imports run one way, and each rule says so in a sentence.
const only = (room, allowed, sentence) => ({
  name: `${room}-imports`,
  comment: sentence,
  severity: 'error',
  from: { path: `^src/${room}/` },
  to: { path: '^(src|electron)/', pathNot: `^src/(${[room, ...allowed].join('|')})/` },
});

module.exports = {
  forbidden: [
    only('program', [], 'program knows where the files of this program lie, and nothing of what they do.'),
    only('core', [], 'core imports nothing but core: what it needs from outside is handed in.'),
    {
      name: 'core-is-pure',
      comment: 'core runs without Node and without npm packages: take what you need as an input.',
      severity: 'error',
      from: { path: '^src/core/' },
      to: { dependencyTypes: ['core', 'npm', 'npm-dev', 'npm-no-pkg', 'npm-unknown', 'unknown'] },
    },
    only('protocol', ['core'], 'protocol imports core only.'),
    only('language', [], 'language knows its catalogues only: who speaks hands in what is to be said.'),
    only('ingest', ['program', 'core', 'protocol'], 'ingest knows core and protocol only.'),
    only('notebook', ['core', 'protocol'], 'notebook knows core and protocol only.'),
    only(
      'screen',
      ['core/quantities', 'protocol', 'language'],
      'the screen knows protocol, language and core/quantities only, and talks to the host by messages.',
    ),
    only(
      'host',
      ['program', 'core', 'protocol', 'language', 'ingest', 'notebook'],
      'host serves web, cli and electron and imports none of them.',
    ),
    only(
      'web',
      ['program', 'core', 'protocol', 'language', 'ingest', 'notebook', 'host'],
      'web wraps the host and knows neither cli nor screen.',
    ),
    only(
      'cli',
      ['program', 'core', 'protocol', 'language', 'ingest', 'notebook', 'host', 'web'],
      'the commands know everything but the screen.',
    ),
    {
      name: 'electron-imports',
      comment:
        'the window wraps the host; it knows neither the commands nor the screen, and of the web only the page for phones, which it has to serve as the browser does.',
      severity: 'error',
      from: { path: '^electron/', pathNot: '^electron/packaging/' },
      to: { path: '^src/', pathNot: '^src/(program|core|protocol|language|ingest|notebook|host|web/phone)/' },
    },
    {
      name: 'nothing-imports-packaging',
      comment: 'what is packed does not know how it is packed.',
      severity: 'error',
      from: { path: '^(src|electron)/', pathNot: '^electron/packaging/' },
      to: { path: '^electron/packaging/' },
    },
    {
      name: 'charts-own-chart-js',
      comment: 'only screen/charts imports chart.js.',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/screen/charts/' },
      to: { path: 'node_modules/chart\\.js' },
    },
    {
      name: 'no-circles',
      comment: 'two files that need each other are one thing, or the wrong two.',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.js', '.cjs', '.json'] },
  },
};
