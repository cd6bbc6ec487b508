// What is said aloud: the pan, and how long there is or what to do first.
import { expect, test } from 'vitest';
import { spokenCall } from '../../../src/screen/words/spoken-words.ts';
import { alarm, moment, reading } from '../moment.ts';

test('a pan that is nearly syrup is called with the time that is left', () => {
  const call = { ...alarm, alarm: 'near-finish' as const, pan: reading.pan };
  const said = (finish_in_s: number) => spokenCall(call, { ...moment, readings: [{ ...reading, finish_in_s }] });
  expect(said(600)).toMatch(/^Front pot, about 10 minutes to go\.$/);
  expect(said(70)).toMatch(/about a minute to go/);
  expect(said(20)).toMatch(/less than a minute to go/);
});

test('any other call says what is wrong and the first thing to do', () => {
  const call = {
    ...alarm,
    alarm: 'scorch-risk' as const,
    pan: reading.pan,
    title: 'About to burn',
    todo: 'Shut the heat first. Then pour in sap.',
  };
  expect(spokenCall(call, moment)).toBe('Front pot: About to burn. Shut the heat first.');
  expect(spokenCall({ ...call, pan: null, port: 'A' }, moment)).toBe('Board A: About to burn. Shut the heat first.');
});
