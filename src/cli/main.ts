#!/usr/bin/env node
// The command line: names every command with its options, and turns what goes wrong into one sentence and an exit code.
import { Command, CommanderError } from 'commander';
import { VERSION } from '../program/program-files.ts';
import { exitCodeOf } from './failure.ts';
import {
  collected,
  dataOption,
  everyOption,
  heatsFromOption,
  httpOption,
  jsonOption,
  languageOption,
  paperOption,
  speed,
  year,
} from './options.ts';

const DEFAULT_SPEED = 60;
/** The first Node whose SQLite keeps a notebook. */
const FIRST_NODE = 24;

/** Each command loads what it needs when it is called, so that a replay does not wait for a web server. */
const notebookCommands = () => import('./notebook-commands.ts');

function commands(): Command {
  const program = new Command('panwarden');
  program
    .description('Watches pans of boiling sap, calls them before the syrup burns, and keeps every boil.')
    .version(VERSION)
    .exitOverride()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, '')) });

  program
    .command('start')
    .description('open the screen: a window where that can be had, else your browser')
    .addOption(dataOption())
    .action(async (options) => (await import('./open-screen.ts')).start(options));

  program
    .command('watch')
    .description('watch the pans of a setup and keep the boil in the notebook')
    .addOption(dataOption())
    .option(
      '--setup <file>',
      'JSON: a recording\'s header without "started"; every port has a "path" (else the last setup)',
    )
    .addOption(httpOption())
    .addOption(jsonOption())
    .addOption(everyOption())
    .action(async (options) => (await import('./watch.ts')).watch(options));

  program
    .command('practice')
    .description('run the practice boil: simulated pans, no hardware')
    .addOption(dataOption())
    .addOption(httpOption())
    .option('--speed <number>', 'how many times as fast as a real boil', speed, DEFAULT_SPEED)
    .addOption(jsonOption())
    .addOption(everyOption())
    .action(async (options) => (await import('./practice.ts')).practice(options));

  program
    .command('replay')
    .description('run a recording again and print what it reads and calls')
    .argument('<file>', 'a recording, *.boil.jsonl')
    .addOption(jsonOption())
    .addOption(everyOption())
    .option('--with <file>', 'a JSON merge patch over the header; may be given again', collected, [])
    .action(async (file, options) => (await import('./replay.ts')).replay(file, options));

  program
    .command('tune')
    .description('run the boils of the notebook again under other settings, and say how each would have done')
    .option('--with <file>', 'a JSON merge patch over the headers; may be given again', collected, [])
    .option('--boil <boil>', 'only this one, by its id or "latest"; may be given again', collected, [])
    .addOption(dataOption())
    .addOption(jsonOption())
    .action(async (options) => (await import('./tune.ts')).tune(options));

  program
    .command('plan')
    .description('say before the boil what it will give and take: syrup, hours, fuel')
    .argument('<file>', 'JSON: litres of sap, its sap, brix and celsius, the finish, and pans as in a header')
    .addOption(heatsFromOption())
    .addOption(jsonOption())
    .action(async (file, options) => (await import('./plan.ts')).plan(file, options));

  program
    .command('boils')
    .description('list the boils of the notebook')
    .addOption(dataOption())
    .addOption(jsonOption())
    .action(async (options) => (await notebookCommands()).boils(options));

  program
    .command('export')
    .description('write a boil to a file')
    .argument('<boil>', 'its id, or "latest"')
    .requiredOption('--to <file>', 'a name that ends in .boil.jsonl, .csv, .senml.json or .pdf')
    .addOption(paperOption())
    .addOption(languageOption())
    .addOption(dataOption())
    .action(async (boil, options) => (await import('./export-command.ts')).exportBoil(boil, options));

  program
    .command('labels')
    .description('write a sheet of jar labels for a boil')
    .argument('<boil>', 'its id, or "latest"')
    .requiredOption('--to <file>', 'a name that ends in .pdf')
    .option('--text <words>', 'your own words on every label', '')
    .addOption(paperOption())
    .addOption(languageOption())
    .addOption(dataOption())
    .action(async (boil, options) => (await import('./export-command.ts')).labels(boil, options));

  program
    .command('season')
    .description('write the figures of every boil to a table')
    .requiredOption('--to <file>', 'a name that ends in .csv')
    .option('--year <number>', 'only boils that began in this year', year)
    .addOption(dataOption())
    .action(async (options) => (await import('./export-command.ts')).season(options));

  program
    .command('import')
    .description('take a recording into the notebook')
    .argument('<file>', 'a recording, *.boil.jsonl, or a SenML pack')
    .addOption(dataOption())
    .addOption(jsonOption())
    .action(async (file, options) => (await notebookCommands()).importRecording(file, options));

  program
    .command('end')
    .description('end a boil that no program is watching')
    .argument('<boil>', 'its id, or "latest"')
    .addOption(dataOption())
    .addOption(jsonOption())
    .action(async (boil, options) => (await notebookCommands()).end(boil, options));

  program
    .command('backup')
    .description('make a dated copy of the notebook; the newest ten stay')
    .option('--to <folder>', 'where, for example a USB stick (else the folder of the settings, or "backups" beside it)')
    .addOption(dataOption())
    .action(async (options) => (await import('./backup-commands.ts')).backup(options));

  program
    .command('restore')
    .description('bring the notebook of a copy back; the present one is set aside')
    .argument('<file>', 'a copy, panwarden-….sqlite')
    .addOption(dataOption())
    .action(async (file, options) => (await import('./backup-commands.ts')).restore(file, options));

  program
    .command('check')
    .description('read the whole notebook and say what is damaged')
    .addOption(dataOption())
    .action(async (options) => (await notebookCommands()).check(options));
  return program;
}

/** The exit code: help and version are no failure, a wrong option is 2. */
function failed(error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  const sentence = (error instanceof Error ? error.message : String(error)).replace(/\.?\s*$/, '.');
  process.stderr.write(`${sentence}\n`);
  return exitCodeOf(error);
}

function refuseOldNode(): void {
  if (Number.parseInt(process.versions.node, 10) >= FIRST_NODE) return;
  const advice = 'where it was installed, "npx panwarden" uses the one that came along';
  throw new Error(`Panwarden runs on Node ${FIRST_NODE} or newer, and this is ${process.versions.node}: ${advice}`);
}

try {
  refuseOldNode();
  await commands().parseAsync();
} catch (error) {
  process.exitCode = failed(error);
}
// A port or a socket that does not close must not keep a program alive that has done its work.
process.exit();
