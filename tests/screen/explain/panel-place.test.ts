// The panel stands beside its number and inside the room between first line and calls, whatever its size.
import { expect, test } from 'vitest';
import { placeOf } from '../../../src/screen/explain/panel-place.ts';

const room = { left: 0, right: 1366, top: 110, bottom: 590 };
const size = { width: 440, height: 260 };

test('under a number in the upper part, over one in the lower', () => {
  expect(placeOf({ left: 300, right: 400, top: 180, bottom: 210 }, size, room)).toMatchObject({ left: 130, top: 218 });
  expect(placeOf({ left: 300, right: 400, top: 500, bottom: 530 }, size, room)).toMatchObject({ left: 130, top: 232 });
});

test('beside one that has no room above or below, and so never over it where there is room', () => {
  const low = { ...room, bottom: 480 };
  const left = { left: 30, right: 240, top: 130, bottom: 240 };
  expect(placeOf(left, size, low)).toMatchObject({ left: 248, top: 130 });
  const right = { ...left, left: 1100, right: 1330 };
  expect(placeOf(right, size, low)).toMatchObject({ left: 652, top: 130 });
});

test('never outside of the room, even where the number has been scrolled away', () => {
  const numbers = [-400, 0, 350, 900].map((top) => ({ left: 1300, right: 1360, top, bottom: top + 24 }));
  for (const number of numbers) {
    const { left, top } = placeOf(number, size, room);
    expect(left + size.width).toBeLessThanOrEqual(room.right - 8);
    expect(top).toBeGreaterThanOrEqual(room.top + 8);
    expect(top + size.height).toBeLessThanOrEqual(room.bottom - 8);
  }
});

test('one that is taller than the room begins at its top and is as high as it', () => {
  const place = placeOf(
    { left: 10, right: 60, top: 300, bottom: 324 },
    { width: 374, height: 900 },
    { ...room, right: 390 },
  );
  expect(place).toEqual({ left: 8, top: 118, maxHeight: 464 });
});
