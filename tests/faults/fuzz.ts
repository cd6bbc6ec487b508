// Makes lines of a board that hold no reading of its channels, from a seed: what noise, boot texts and bad sketches send.
import { nextUniform, randomStream, type RandomStream } from '../../src/core/simulation/random.ts';

const pick = <T>(random: RandomStream, from: readonly T[]): T =>
  from[Math.floor(nextUniform(random) * from.length)] as T;

const NO_NUMBERS = [
  '',
  '+',
  '-',
  '.',
  'e5',
  '12e',
  '1.2.3',
  '--98',
  '98,5',
  '0x62',
  'Inf',
  '1e999',
  'NULL',
  '\xb0C',
  '98%',
];
const STRAY_TEXT = [
  'boot v0.3 ok',
  'reset cause 4',
  'free heap 1234',
  '{"T1":',
  ']',
  '#',
  '\xc3\xa9',
  '\xff\xfe',
  '\0',
  'T1',
  'T1==',
];
const NAMES = ['T1', 'T2', 'T3'];

/** A line without its end. None of them holds a number that the channel of a probe can have meant. */
function badLine(random: RandomStream): string {
  const kinds: (() => string)[] = [
    // A field without a number.
    () => `${pick(random, NAMES)}=${pick(random, NO_NUMBERS)}`,
    // A field without its name, or with a name of bytes that are no text.
    () => `=${(90 + nextUniform(random) * 10).toFixed(2)}`,
    () => `\xff${pick(random, NAMES)}=98.2`,
    // NUL and high bytes in the number.
    () => `${pick(random, NAMES)}=9${pick(random, ['\0', '\xc2', '\x07'])}8.2`,
    // The same channel twice: nobody can tell which is right.
    () => `T1=98.2 T1=${(90 + nextUniform(random) * 10).toFixed(2)}`,
    // Numbers that no pan can have.
    () => `${pick(random, NAMES)}=${pick(random, ['9999', '-300', '1e6', '-0'])}`,
    () => pick(random, STRAY_TEXT),
    // Longer than a line may be.
    () => `T1=${'9'.repeat(4200)}`,
  ];
  return pick(random, kinds)();
}

/** So many lines, with the line ends of several systems. */
export function badLines(seed: number, count: number): string[] {
  const random = randomStream(seed, 'bad lines');
  return Array.from({ length: count }, () => `${badLine(random)}${pick(random, ['\n', '\r\n'])}`);
}
