// A language begins no formatter before something is written in it: a page that starts would wait for those of every language.
import { expect, test, vi } from 'vitest';
import { Languages } from '../../../src/language/languages.ts';

test('a decimal mark is asked for once, when a number is first written', () => {
  const catalogue = { 'language.name': 'Français' };
  const asked = vi.spyOn(Intl, 'NumberFormat');
  const french = new Languages([['fr.json', catalogue]]).tongue('fr');
  expect(asked).not.toHaveBeenCalled();
  expect([french.digits('66.9 °Bx'), french.digits('1.5')]).toEqual(['66,9 °Bx', '1,5']);
  expect(asked).toHaveBeenCalledTimes(1);
  asked.mockRestore();
});
