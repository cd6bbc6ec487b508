// The options that commands share, and how their values are read.
import { InvalidArgumentError, Option } from 'commander';

/** `--data`: whose notebook. */
export const dataOption = () =>
  new Option('--data <folder>', 'the folder of the notebook (else PANWARDEN_DATA, else your own data folder)');
/** `--data` of a command that only reads what earlier boils showed. */
export const heatsFromOption = () =>
  new Option('--data <folder>', 'a notebook whose boils tell what the fires gave (else: their power and sizes alone)');
/** `--json`: lines for another program. */
export const jsonOption = () => new Option('--json', 'print JSON lines only');
/** `--every`: 0.1 s to a day, else refused. */
export const everyOption = () =>
  new Option('--every <seconds>', 'print the readings at every whole multiple of this').argParser(seconds);
/** `--http`: a port from 0 to 65,535, else refused. */
export const httpOption = () =>
  new Option('--http <port>', 'serve the screen on the loopback address (0 takes a free port)').argParser(port);
/** `--paper`: a4 or letter; the notebook's units say which where it is not given. */
export const paperOption = () =>
  new Option('--paper <size>', 'paper of a .pdf (by default letter with US gallons, else a4)').choices([
    'a4',
    'letter',
  ]);

/** `--language`: the tag of a catalogue. */
export const languageOption = () => new Option('--language <tag>', 'language of a .pdf, as en or fr').default('en');

/** A calendar year. */
export function year(text: string): number {
  const value = numberWithin(text, 1900, 9999, 'a year');
  if (!Number.isInteger(value)) throw new InvalidArgumentError('It must be a whole number.');
  return value;
}

function seconds(text: string): number {
  return numberWithin(text, 0.1, 86_400, 'seconds');
}

function port(text: string): number {
  const value = numberWithin(text, 0, 65_535, 'a port');
  if (!Number.isInteger(value)) throw new InvalidArgumentError('It must be a whole number.');
  return value;
}

/** Boil time over real time. */
export function speed(text: string): number {
  return numberWithin(text, 1, 600, 'a speed');
}

/** Adds one more value of an option that may be given again. */
export function collected(value: string, before: string[]): string[] {
  return [...before, value];
}

function numberWithin(text: string, least: number, greatest: number, what: string): number {
  const value = /^\d+(\.\d+)?$/.test(text) ? Number(text) : Number.NaN;
  if (value >= least && value <= greatest) return value;
  throw new InvalidArgumentError(`It must be ${what} from ${least} to ${greatest}.`);
}
