// The first line names the pan, what to do and when.
import { expect, test } from 'vitest';
import type { Mark, Now } from '../../../src/screen/client/types.ts';
import { nextLine } from '../../../src/screen/words/next-line.ts';
import { alarm, moment, reading } from '../moment.ts';

const minute = 60_000;

function line(next: Partial<Now['next']>, change: Partial<Now> = {}): string {
  const { who, what, range } = nextLine({ ...moment, ...change, next: { ...moment.next, ...change.next, ...next } });
  return `${who === null ? '' : `${who}: `}${what}${range === null ? '' : ` (${range})`}`;
}

test('a finish comes with its time of day and range', () => {
  const { t } = moment;
  expect(line({ what: 'finish', pan: 'p1', at: t + 10 * minute, low: t + 8 * minute, high: t + 13 * minute })).toBe(
    'Front pot: done about 08:10 (08:08–08:13)',
  );
  const away = { readings: [{ ...reading, temperature_c: null, rise_c: null, probe: null }] };
  expect(line({ what: 'finish', pan: 'p1', at: t + 10 * minute, low: null, high: null }, away)).toBe(
    'Front pot: not watched now, by count done about 08:10',
  );
});

const finished = { readings: [{ ...reading, stage: 'finished' as const }] };

test('a pan that is called is done; one that is there by a count that calls nobody yet may be', () => {
  const next = { what: 'finish', pan: 'p1', at: moment.t } as const;
  expect(line(next, finished)).toBe('Front pot: done; check it, then take it off the heat');
  expect(line(next)).toBe('Front pot: may be done; check it');
});

test('a pan at its finish needs what the worst of its calls says, though it was seen', () => {
  const done = { what: 'finish', pan: 'p1', at: null } as const;
  const seen = { ...alarm, alarm: 'past-finish' as const, answered: true };
  expect(line(done, { alarms: [seen] })).toBe('Front pot: take it off the heat now');
  expect(line(done, { alarms: [seen, { ...seen, alarm: 'scorch-risk' }] })).toBe('Front pot: turn its heat off first');
  expect(line(done, { ...finished, alarms: [{ ...seen, condition: 'over' }] })).toContain('check it, then take it off');
});

test('a top-up has a time by which, or is due now', () => {
  expect(line({ what: 'top-up', pan: 'p2', at: moment.t + 20 * minute })).toBe('Pan 2: top up by 08:20');
  expect(line({ what: 'top-up', pan: 'p2', at: null })).toBe('Pan 2: top up now');
});

test('an alarm is called by its title, never by its name in the program', () => {
  const both = [alarm, { ...alarm, alarm: 'probe-lost' as const, title: 'Probe silent', since: 0 }];
  expect(line({ what: 'alarm', pan: 'p1', text: 'near-finish' }, { alarms: both })).toBe('Front pot: Nearly syrup');
  expect(line({ what: 'alarm', pan: 'p1', text: 'scorch-risk' }, { alarms: [] })).toBe('Front pot: see the call below');
});

test('the priority is that of the call that is told; burnt sugar is for now, and what is no call has none', () => {
  const priority = (next: Partial<Now['next']>, alarms = [alarm]): string | null =>
    nextLine({ ...moment, alarms, next: { ...moment.next, ...next } }).priority;
  expect(priority({ what: 'alarm', pan: 'p1', text: 'near-finish' })).toBe('medium');
  expect(
    priority({ what: 'alarm', pan: 'p1', text: 'finish' }, [alarm, { ...alarm, alarm: 'finish', priority: 'high' }]),
  ).toBe('high');
  expect(priority({ what: 'burnt', pan: 'p1' })).toBe('high');
  expect(priority({ what: 'finish', pan: 'p1' })).toBe(null);
});

test('a boil that is over says so', () => {
  expect(line({ what: 'watch' }, { ended: true })).toBe('This boil is over');
  expect(line({ what: 'watch' }, { ended: true, mode: 'practice' })).toBe('No boil is running');
  expect(nextLine({ ...moment, ended: true }, false).what).toBe('No boil is running');
  expect(line({ what: 'watch' })).toBe('Nothing to do just now. Stay by the pans.');
});

test('a practice with no pan on the fire waits to be ended, too', () => {
  const readings = [{ ...reading, stage: 'off' as const }];
  expect(line({ what: 'watch' }, { readings, mode: 'practice' })).toBe(
    'All pans are off: end the practice when you like',
  );
  expect(line({ what: 'watch' }, { mode: 'practice' })).toBe('Nothing to do just now. Stay by the pans.');
});

test('with no pan on the fire the next thing is to end the boil, unless something is due', () => {
  const readings = [{ ...reading, stage: 'off' as const }];
  expect(line({ what: 'watch' }, { readings })).toBe('All pans are off the fire: end this boil when it is done');
  // A spare pan that was never used is waited for by nobody; one that is used, or a boil that only begins, is.
  const spare = { ...reading, pan: 'p2', stage: 'unknown' as const };
  const beside = { readings: [...readings, spare] };
  expect(line({ what: 'watch' }, { ...beside, unused: ['p2'] })).toContain('All pans are off the fire');
  expect(line({ what: 'watch' }, beside)).not.toContain('All pans are off the fire');
  expect(line({ what: 'watch' }, { readings: [spare], unused: ['p2'] })).not.toContain('All pans are off the fire');
  // A pot that was only noted to stand empty waits for what is poured into it.
  const mark = (what: Mark) => ({ mark: what, at: 0, withdrawn: false, questioned: false }) as Now['marks'][number];
  const waits = { readings: [...readings, spare], unused: ['p2'], marks: [mark({ kind: 'depth', pan: 'p1', mm: 0 })] };
  expect(line({ what: 'watch' }, waits)).not.toContain('All pans are off the fire');
  const emptied = mark({ kind: 'transfer', from: 'p1', to: 'p2', all: true });
  expect(line({ what: 'watch' }, { ...waits, marks: [...waits.marks, emptied] })).toContain('All pans are off');
  expect(line({ what: 'alarm', pan: 'p1', text: 'near-finish' }, { readings, alarms: [alarm] })).toContain('Nearly');
  expect(line({ what: 'watch' }, { readings: [...readings, reading] })).toContain('Nothing to do just now');
});

test('foam comes with its cure', () => {
  expect(line({ what: 'foam', pan: 'p1' })).toBe(
    'Front pot: foam may rise soon; a drop or two of fat, or turn it down',
  );
});

test('nobody can tell a past boil anything: a replay says what was not known', () => {
  const litres = { what: 'tell-litres', pan: 'p1' } as const;
  expect(line(litres)).toBe('Front pot: tell how much is in it, or how deep it stands');
  expect(line(litres, { view: 'replay' })).toBe('Front pot: how much was in it was not known yet');
  expect(line({ what: 'tell-water' }, { view: 'replay' })).toBe('How hot water boils here was not known yet');
});

test('of a pan that somebody filled, whose sap may all have boiled away, a depth is asked for and no top-up', () => {
  const litres = { what: 'tell-litres', pan: 'p1' } as const;
  const top: Now['marks'][number] = {
    ...{ t: 0, at: 0, withdrawn: false, questioned: false, doubt: null, corrections: [], cameTo: null, takenC: null },
    mark: { kind: 'top-up', pan: 'p1', litres: 17 },
  };
  const [first, ...others] = moment.header!.pans!;
  const vessel = { shape: 'round', diameter_mm: 400 } as const;
  const sized = { ...moment.header!, pans: [{ ...first!, vessel }, ...others] };
  expect(line(litres, { marks: [top], header: sized })).toBe('Front pot: tell how deep it is now');
  expect(line(litres, { marks: [{ ...top, withdrawn: true }], header: sized })).toContain('how deep it stands');
  // Of a pot whose size nobody told, a depth says nothing.
  expect(line(litres, { marks: [top] })).toBe('Front pot: read its thermometer now');
});

test('a line that names no pan begins as a sentence, and speaks of a probe only where there is one to check', () => {
  expect(line({ what: 'tell-water' })).toMatch(/^Tell how hot water boils here.*a check in boiling water$/u);
  const byHand = line({ what: 'tell-water' }, { header: { ...moment.header!, probes: [] } });
  expect(byHand).toMatch(/^Tell how hot water boils here: your thermometer in plain boiling water/u);
  expect(byHand).not.toContain('probe');
});
