// The token is told from a route, and new tries come slower and slower.
import { expect, test } from 'vitest';
import { tokenOfFragment } from '../../../src/screen/client/session.ts';
import { pauseBeforeTryMs } from '../../../src/screen/client/socket-link.ts';
import { routeOf } from '../../../src/screen/shell/routes.ts';

test('a token is a token, a route is a route', () => {
  const token = 'tehHG-fBVEj8JMonPk-k0eMAadqYDNdv';
  expect(tokenOfFragment(`#token=${token}`)).toBe(token);
  expect(['', '#', '#/pans', '#/notebook', '#token='].map(tokenOfFragment)).toEqual([null, null, null, null, null]);
});

test('an address that names no view shows the pans', () => {
  expect(['#/notebook', '#/replay', '#/nowhere', '', '#token=abc'].map(routeOf)).toEqual([
    'notebook',
    'replay',
    'pans',
    'pans',
    'pans',
  ]);
});

test('pauses grow to four seconds and no further', () => {
  expect([0, 1, 2, 3, 4, 50].map(pauseBeforeTryMs)).toEqual([250, 500, 1000, 2000, 4000, 4000]);
});
