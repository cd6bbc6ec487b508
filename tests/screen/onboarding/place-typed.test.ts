// The place as it is typed while probes are set up: other units keep what it is.
import { afterEach, expect, test } from 'vitest';
import { change, changePlace, draft, placeTyped } from '../../../src/screen/onboarding/setup-draft.ts';
import { american, metric } from '../moment.ts';

const empty = draft.value;
afterEach(() => change(empty));

// NIST SP 811: 1 ft = 0.3048 m, 1 inHg = 33.863 89 hPa.
test('a place typed in metres and hectopascals stands in feet and inches once these are chosen, and goes on from there', () => {
  changePlace({ altitude: '640' }, metric);
  changePlace({ pressure: '944' }, metric);
  expect(placeTyped(draft.value, american)).toMatchObject({ altitude: '2100', pressure: '27.88' });
  expect(placeTyped(draft.value, metric)).toMatchObject({ altitude: '640', pressure: '944' });
  changePlace({ pressure: '28' }, american);
  expect(placeTyped(draft.value, american)).toMatchObject({ altitude: '2100', pressure: '28' });
  expect(placeTyped(draft.value, metric)).toMatchObject({ altitude: '640', pressure: '948' });
});
