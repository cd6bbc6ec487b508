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
    todo: 'Turn the heat off first. Then pour in sap.',
  };
  expect(spokenCall(call, moment)).toBe('Front pot: About to burn. Turn the heat off first.');
  expect(spokenCall({ ...call, pan: null, port: 'A' }, moment)).toBe(
    'Board of Front pot: About to burn. Turn the heat off first.',
  );
  const header = {
    ...{ recording: 'panwarden' as const, version: 1 as const, started: '2027-04-18T07:30:00-07:00' },
    ports: [{ id: 'A', path: '/dev/ttyTH0' }],
    probes: [{ id: 'A/T1', port: 'A', channel: 'T1' }],
    pans: [{ id: 'p1', name: 'Back pot', probe: 'A/T1' }],
  };
  const lost = { ...call, pan: null, port: 'A', title: 'Board lost' };
  expect(spokenCall(lost, { ...moment, header })).toMatch(/^Board of Back pot: Board lost/);
  expect(spokenCall(lost, { ...moment, header: { ...header, pans: [] } })).toMatch(/^Board ttyTH0: /);
});
