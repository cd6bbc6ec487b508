// What `npm start` runs: the `start` command, with the options that stand behind it.
process.argv.splice(2, 0, 'start');
await import('./main.ts');
