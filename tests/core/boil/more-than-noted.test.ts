// A pan that boils to far more syrup than all that was noted of it can make: somebody did not note a pour, and is asked.
import { expect, test } from 'vitest';
import { adviceOn } from '../../../src/core/boil/advice.ts';
import type { Mark } from '../../../src/core/boil/entries.ts';
import { boilingAt, foldAll, inOrder, lines, mark, readingAt, tarnHollow } from './tarn-hollow.ts';

const vessel = { shape: 'round' as const, diameter_mm: 305 };
const header = tarnHollow({
  pans: [
    { id: 'p1', name: 'Back pot', probe: 'A/1', vessel },
    { id: 'p2', name: 'Front pot', vessel },
  ],
});
const filled: Mark[] = [
  { kind: 'top-up', pan: 'p2', litres: 20, brix: 2 },
  { kind: 'depth', pan: 'p1', mm: 51 },
];
const together = mark(137_000, { kind: 'transfer', from: 'p2', to: 'p1', litres: 7.6 });

/** Sap out of one pot is poured into what is in another and boils; then that shows a strength (°Bx) within two minutes. */
function moreThanNoted(brix: number, after: Mark[] = []): boolean {
  const [thin, thick] = [boilingAt(2.3, 'maple'), boilingAt(brix, 'maple')];
  const shown = (t: number): number =>
    (t < 50_000 ? 21 : thin) +
    (thick - thin) * Math.min(1, Math.max(0, (t - 190_000) / 120_000)) +
    0.03 * Math.sin(t / 700);
  const noted = [
    ...filled.map((one, i) => mark(40_000 + i * 1000, one)),
    together,
    ...after.map((one, i) => mark(400_000 + i * 1000, one)),
  ];
  const until = 430_000;
  const { state } = foldAll(header, inOrder(noted, lines(0, until, { T1: shown })), until);
  return adviceOn(state, readingAt(state, 'p1', until), until).moreThanNoted;
}

test('syrup that the noted sap cannot make is in doubt, and stays so when some of it is drawn off', () => {
  expect(moreThanNoted(2.4)).toBe(false);
  expect(moreThanNoted(67)).toBe(true);
  expect(moreThanNoted(67, [{ kind: 'draw-off', pan: 'p1', litres: 3 }])).toBe(true);
});

test('whoever measures how deep it stands has answered', () => {
  expect(moreThanNoted(67, [{ kind: 'depth', pan: 'p1', mm: 150 }])).toBe(false);
});

test('a measurement that is asked about and left out is no answer', () => {
  expect(moreThanNoted(67, [{ kind: 'depth', pan: 'p1', mm: 900 }])).toBe(true);
  expect(moreThanNoted(67, [{ kind: 'density', pan: 'p1', brix: 20 }])).toBe(true);
});
