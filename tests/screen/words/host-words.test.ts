// What the host writes in English is known to the catalogue by its form, and told in the language of the screen.
import { afterEach, expect, test } from 'vitest';
import { ALARM_WORDS, alarmWords, fellWords } from '../../../src/core/alarms/words.ts';
import { formOf } from '../../../src/language/host-words.ts';
import { hostWords } from '../../../src/screen/language/host-words.ts';
import { language } from '../../../src/screen/language/language.ts';
import { whyWords } from '../../../src/screen/words/why-words.ts';
import { metric } from '../moment.ts';

afterEach(() => void (language.value = 'en'));

test('every alarm has its title, meaning and cure', () => {
  const all = Object.values(ALARM_WORDS).flatMap(({ title, means, todo }) => [title, means, todo]);
  expect(all.filter((sentence) => formOf(sentence) === null)).toEqual([]);
});

test('a call whose pan fell unexplained has its reason and its own words', () => {
  const why = fellWords('104.7', '100.8');
  const { means, todo } = alarmWords('past-finish', null, why);
  expect(means).not.toBe(ALARM_WORDS['past-finish'].means);
  expect([whyWords(why, metric), means, todo].filter((sentence) => formOf(sentence) === null)).toEqual([]);
});

test('a sentence that this screen said in its own language is left as it stands', () => {
  language.value = 'fr';
  expect(hostWords('Cuve 1\u00a0: Ajout de 20,0\u00a0L\u00a0: noté.')).toBe(
    'Cuve 1\u00a0: Ajout de 20,0\u00a0L\u00a0: noté.',
  );
});

/** Breaking and unbreakable blanks look alike to a person. */
const told = (sentence: string): string => hostWords(sentence).replaceAll('\u00a0', ' ');

test('values are carried over, with the language’s decimal mark, and a sentence within a sentence is told too', () => {
  language.value = 'fr';
  expect(told('about 9 min (7–12) to 66.9 °Bx')).toBe('environ 9 min (7–12) jusqu’à 66,9 °Bx');
  expect(told('rise 5.1 °C, by a thermometer read by hand 4 min ago')).toBe(
    '5,1 °C au-dessus de l’eau bouillante, d’après un thermomètre lu à la main il y a 4 min',
  );
  expect(told('A sentence of nobody, 1.5 times.')).toBe('A sentence of nobody, 1,5 times.');
  language.value = 'en';
  expect(told('about 9 min (7–12) to 66.9 °Bx')).toBe('about 9 min (7–12) to 66.9 °Bx');
});
