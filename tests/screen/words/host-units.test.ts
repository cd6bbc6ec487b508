// What the host says of a note comes in the units that were chosen; what somebody named stays as it was named.
import { afterEach, expect, test } from 'vitest';
import { settings } from '../../../src/screen/client/store.ts';
import { hostWords } from '../../../src/screen/language/host-words.ts';
import { language } from '../../../src/screen/language/language.ts';
import { american, metric } from '../moment.ts';

afterEach(() => {
  settings.value = metric;
  language.value = 'en';
});

const told = (sentence: string): string => hostWords(sentence).replaceAll('\u00a0', ' ');
const HOT =
  'Back pot: 101.39 °C was read; by what was noted of it, this thermometer should show about 99.1 °C. It would mean about 48 °Bx, with only about 0.2 L of 9.8 L left.';
const LOOK =
  'Until it is typed once more it does not count: look at the pan and its thermometer now, and turn the heat down if little is in it.';
const JUMP = 'A barometer at 640.1 m shows about 939 hPa, and 1013.2 hPa never: look at the number and its unit again.';

test('in gallons, inches and degrees Fahrenheit', () => {
  settings.value = american;
  expect(told('20 L: that is more than is in it, about 4.3 L.')).toBe(
    '20 L: that is more than is in it, about 1.1 US gal.',
  );
  expect(told('Back pot: 12.7 mm is far from what went in and boiled away.')).toContain(': 0.5 in is far');
  const hot = told(`${HOT} ${LOOK}`);
  expect(hot).toContain('214.5 °F was read; by what was noted of it, this thermometer should show about 210.4 °F. It');
  expect(hot).toContain('It would mean about 48 °Bx, with');
  expect(hot).toMatch(/only about 0\.0?5 US gal of 2\.6 US gal left\. Until it is typed/u);
  expect(told(JUMP)).toContain('at 2100 ft shows about 27.73 inHg, and 29.92 inHg never');
  expect(
    told(
      'The air pressure has moved since the last check: water now boils 0.5 °C lower. Check a probe in boiling water again.',
    ),
  ).toContain('boils 0.9 °F lower.');
  expect(
    told(
      'T2 stands still at 20.1 °C, and water boils at about 99.1 °C here: bring plain water to a full boil, hold the tip under the surface, and look at the height and the pressure that you typed.',
    ),
  ).toContain('at 68.2 °F, and water boils at about 210.4 °F here');
});

// 4.2 kg / 0.45359237 = 9.3 lb and 0.4 °C * 9/5 = 0.7 °F, by hand.
test('what tuning and comparing say, too', () => {
  settings.value = american;
  expect(told('53 min faster from 30 to 60 °Bx: 4.2 kg/h more water off.')).toContain(': 9.3 lb/h more water off.');
  expect(told('63 min slower from 30 to 60 °Bx: 4.2 kg more water to take off.')).toContain(': 9.3 lb more water');
  expect(
    told(
      'its error is known only to ±0.4 °C from 5 boils, for the water point or the sap is not known better; a pressure and a boiling check in each boil would tell it.',
    ),
  ).toContain('known only to ±0.7 °F from 5 boils');
});

test('in French, with its decimal mark', () => {
  settings.value = american;
  language.value = 'fr';
  expect(told(HOT)).toContain(
    '214,5 °F au thermomètre ; d’après ce qui a été noté, il devrait montrer environ 210,4 °F',
  );
  settings.value = metric;
  expect(told(HOT)).toContain(
    '101,4 °C au thermomètre ; d’après ce qui a été noté, il devrait montrer environ 99,1 °C',
  );
});
