// Every kind of mark in one line.
import { afterEach, expect, test } from 'vitest';
import { heardNote } from '../../../src/protocol/sound-check.ts';
import type { Mark, MarkView } from '../../../src/screen/client/types.ts';
import { markViewWords, markWords, notedWords } from '../../../src/screen/words/mark-words.ts';
import { language } from '../../../src/screen/language/language.ts';
import { american, metric, moment } from '../moment.ts';

afterEach(() => void (language.value = 'en'));

const cases: [Mark, string][] = [
  [{ kind: 'top-up', pan: 'p1', litres: 2 }, 'Front pot: Top-up 2.0 L'],
  [{ kind: 'top-up', pan: 'p1' }, 'Front pot: Top-up'],
  [{ kind: 'top-up', pan: 'p1', litres: 15.1, brix: 0.9, celsius: 4.4 }, 'Front pot: Top-up 15.1 L, 0.9 °Bx, 4.4 °C'],
  [{ kind: 'draw-off', pan: 'p1', litres: 2, brix: 67 }, 'Front pot: Draw-off 2.0 L, 67.0 °Bx'],
  [{ kind: 'density', pan: 'p1', brix: 28, celsius: 82 }, 'Front pot: Density 28 °Bx at 82.0 °C'],
  [{ kind: 'draw-off', pan: 'p1', all: true }, 'Front pot: Draw-off all of it'],
  [{ kind: 'transfer', from: 'p1', to: 'p2', all: true }, 'Front pot: Poured together all of it into Pan 2'],
  [{ kind: 'flame', pan: 'p1', level: 0 }, 'Front pot: Flame off'],
  [{ kind: 'flame', pan: 'p1', level: 0.5 }, 'Front pot: Flame half'],
  [{ kind: 'pressure', hpa: 951.4 }, 'Air pressure 951 hPa'],
  [{ kind: 'water-check', celsius: 98.1 }, 'Check in boiling water of the thermometer in the hand: 98.1 °C'],
  [{ kind: 'water-check', probe: 'A/1', celsius: 98.1 }, 'Check in boiling water T1 on board A: 98.1 °C'],
  [{ kind: 'density', pan: 'p1', sg: 1.33 }, 'Front pot: Density specific gravity 1.33'],
  [{ kind: 'depth', pan: 'p1', mm: 40 }, 'Front pot: Depth 40 mm'],
  [{ kind: 'move-probe', probe: 'A/2', pan: null }, 'Probe moved T2 on board A hangs in the air'],
  [{ kind: 'remind', text: 'Skim', seconds: 600 }, 'Reminder Skim, in 10 min'],
  [{ kind: 'note', pan: 'p2', text: 'Foam' }, 'Pan 2: Note Foam'],
];

test.each(cases)('%j', (mark, words) => {
  const plain = markWords(mark, moment.header, metric).replaceAll('\u00a0', ' ');
  expect(plain).toBe(words);
});

test.each([
  [{ kind: 'top-up', pan: 'p1', litres: 2 }, 'Front pot : Ajout de 2,0 L'],
  [{ kind: 'draw-off', pan: 'p1', all: true }, 'Front pot : Retrait complet'],
  [{ kind: 'transfer', from: 'p1', to: 'p2', all: true }, 'Front pot : Réuni en entier dans Casserole 2'],
  [heardNote('loud', 'start'), 'Note « L’appel a été essayé et entendu (fort). »'],
  [{ kind: 'note', text: 'The call was tried and heard (loud).' }, 'Note « The call was tried and heard (loud). »'],
  [{ kind: 'note', pan: 'p1', text: 'Mousse' }, 'Front pot : Note « Mousse »'],
] as [Mark, string][])('in French %j reads as a phrase', (mark, words) => {
  language.value = 'fr';
  expect(markWords(mark, moment.header, metric).replaceAll('\u00a0', ' ')).toBe(words);
});

test('the list says what a density reading came to, where that is another number', () => {
  const each = { t: 0, at: 0, withdrawn: false, questioned: false, doubt: null, corrections: [], takenC: null };
  const words = (mark: Mark, cameTo: number | null): string =>
    markViewWords({ ...each, mark, cameTo }, moment, metric).replaceAll('\u00a0', ' ');
  const hot: Mark = { kind: 'density', pan: 'p1', brix: 28, celsius: 82 };
  expect(words(hot, 35.2)).toBe('Front pot: Density 28 °Bx at 82.0 °C, so 35.2 °Bx');
  expect(words({ kind: 'density', pan: 'p1', brix: 66 }, 66.1)).toBe('Front pot: Density 66 °Bx');
  expect(words({ kind: 'density', pan: 'p1', baume: 36 }, 67)).toBe('Front pot: Density 36 °Bé, so 67.0 °Bx');
});

test('a pour into an empty pan is called as its form is, and a later one a top-up', () => {
  const at = (t: number): MarkView => ({
    ...{ t, at: t, withdrawn: false, questioned: false, doubt: null, corrections: [], takenC: null, cameTo: null },
    mark: { kind: 'top-up', pan: 'p1', litres: 5 },
  });
  const marks = [at(1), at(2)];
  const words = marks.map((each) => notedWords(each, { ...moment, marks }, metric).replaceAll('\u00a0', ' '));
  expect(words).toEqual(['Front pot: Filling 5.0 L', 'Front pot: Top-up 5.0 L']);
});

test('quantities are in the chosen units', () => {
  const words = markWords({ kind: 'reading', pan: 'p1', celsius: 100 }, moment.header, american);
  expect(words.replaceAll('\u00a0', ' ')).toBe('Front pot: Read by hand 212.0 °F');
});
