// Text keeps 4.5 : 1 and lines keep 3 : 1 in every theme (WCAG 2.2).
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync(new URL('../../src/screen/styles/theme.css', import.meta.url), 'utf8');

type Colours = Record<string, string>;

function coloursIn(start: string): Colours {
  const at = css.indexOf(start);
  if (at < 0) throw new Error(`No rule ${start}`);
  const block = css.slice(at, css.indexOf('}', at));
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{3,6});/g)].map(([, name, value]) => [name, value]),
  );
}

/** Relative luminance after WCAG 2.2. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? [...hex.slice(1)].map((digit) => digit + digit).join('') : hex.slice(1);
  const [r = 0, g = 0, b = 0] = [0, 2, 4].map((i) => {
    const share = Number.parseInt(full.slice(i, i + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string | undefined, other: string | undefined): number {
  const [light = 0, dark = 0] = [luminance(one ?? ''), luminance(other ?? '')].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

const light = coloursIn(':root {');
const themes: [string, Colours][] = [
  ['light', light],
  ['dark', { ...light, ...coloursIn(":root[data-theme='dark']") }],
  ['dark by the machine', { ...light, ...coloursIn(":root:not([data-theme='light']") }],
  ['contrast', { ...light, ...coloursIn(":root[data-theme='contrast']") }],
];

const texts: [string, string][] = [
  ...['ink', 'ink-soft', 'good', 'bad'].flatMap((ink): [string, string][] =>
    ['card', 'ground', 'well'].map((ground) => [ink, ground]),
  ),
  ['card', 'chosen'],
  ['card', 'ink'],
  ['card', 'practice'],
  ['card', 'replay'],
  ['ink', 'practice-soft'],
  ...['high', 'medium', 'low'].map((fill): [string, string] => ['on-alarm', fill]),
];
const lines: [string, string][] = [
  ...['edge', 'chosen', 'focus'].flatMap((line): [string, string][] =>
    ['card', 'ground', 'well'].map((ground) => [line, ground]),
  ),
  ...['reading', 'water', 'finish', 'scorch'].map((line): [string, string] => [`line-${line}`, 'card']),
];

test.each(themes)('%s', (_name, colours) => {
  const faint = (pairs: [string, string][], least: number): string[] =>
    pairs
      .map(([ink, ground]) => ({ pair: `${ink} on ${ground}`, ratio: contrast(colours[ink], colours[ground]) }))
      .filter(({ ratio }) => !(ratio >= least))
      .map(({ pair, ratio }) => `${pair} ${ratio.toFixed(2)}`);
  expect(faint(texts, 4.5)).toEqual([]);
  expect(faint(lines, 3)).toEqual([]);
});
