// The practice boil does what a beginner needs: soon something to hear, a finish within the hour, an end of its own.
import { expect, test } from 'vitest';
import type { Entry } from '../../../src/core/boil/entries.ts';
import { practiceName, practiceScenario } from '../../../src/core/simulation/practice-scenario.ts';
import { hearMark, stepSimulation } from '../../../src/core/simulation/simulate.ts';
import { startSimulation } from '../../../src/core/simulation/state.ts';
import { boilView } from '../../../src/core/boil/view.ts';
import { foldAll } from '../boil/tarn-hollow.ts';
import { marksOf, wholeBoil } from './one-pot.ts';

const minute = 60_000;
const seeds = [1, 2, 3, 42, 1234567];

test.each(seeds)('seed %i: the first pan finishes after 45 to 60 min and is taken off soon after', (seed) => {
  const { state, entries } = wholeBoil(practiceScenario(seed));
  const finish = state.truth.moments.find(({ what }) => what === 'reached-finish');
  const off = state.truth.moments.find(({ what, pan }) => what === 'taken-off' && pan === finish?.pan);
  expect(finish?.t).toBeGreaterThan(45 * minute);
  expect(finish?.t).toBeLessThan(60 * minute);
  expect((off?.t ?? 0) - (finish?.t ?? 0)).toBeGreaterThan(1.5 * minute);
  expect(off?.brix).toBeLessThan(68.5);
  expect(state.truth.moments.filter(({ what }) => what === 'burned' || what === 'shallow')).toEqual([]);
  expect(entries.at(-1)).toEqual({ t: 120 * minute, run: 'ended' });
});

test('the header says that it is simulated, and the pans are at different stages', () => {
  const { header, pans } = practiceScenario(1);
  expect(header.name).toBe(practiceName);
  expect(practiceName).toContain('simulated');
  expect(header.site).toEqual({ name: 'Tarn Hollow', altitude_m: 640 });
  expect(new Set(pans.map(({ brix }) => brix)).size).toBe(3);
});

test('when the person tops the middle pot up, the simulated hands on their way to it pour nothing', () => {
  const poured = (entries: Entry[]): number =>
    marksOf(entries).filter((mark) => mark.kind === 'top-up' && mark.pan === 'middle').length;
  const alone = startSimulation(practiceScenario(1));
  let second = 60;
  // The start notes what is in the pots.
  while (poured(stepSimulation(alone, second * 1000)) === 0 || second === 60) second += 1;
  const state = startSimulation(practiceScenario(1));
  stepSimulation(state, (second - 30) * 1000);
  hearMark(state, { t: (second - 30) * 1000, mark: { kind: 'top-up', pan: 'middle', litres: 4 } });
  expect(poured(stepSimulation(state, (second + 300) * 1000))).toBe(0);
});

test('when the person draws the front pot off, the simulated hands leave it alone', () => {
  const state = startSimulation(practiceScenario(1));
  const early = stepSimulation(state, 40 * minute);
  hearMark(state, { t: 40 * minute, mark: { kind: 'draw-off', pan: 'front', all: true } });
  const late = stepSimulation(state, 120 * minute);
  const drawn = marksOf([...early, ...late]).filter((mark) => mark.kind === 'draw-off' && mark.pan === 'front');
  expect(drawn).toEqual([]);
  expect(state.truth.moments.filter(({ what, pan }) => what === 'taken-off' && pan === 'front')).toHaveLength(1);
});

test('a pot that the person poured into is finished and taken off before the practice ends', () => {
  const state = startSimulation(practiceScenario(1));
  stepSimulation(state, 80 * minute);
  hearMark(state, { t: 80 * minute, mark: { kind: 'top-up', pan: 'birch', litres: 4, brix: 2 } });
  const late = stepSimulation(state, 300 * minute);
  const off = state.truth.moments.find(({ what, pan }) => what === 'taken-off' && pan === 'birch');
  expect(off?.t).toBeGreaterThan(120 * minute);
  const end = late.at(-1);
  expect(end).toMatchObject({ run: 'ended' });
  expect((end?.t ?? 0) - (off?.t ?? 0)).toBeLessThan(2 * minute);
});

test('a pot that never gets there ends no later than four hours into the practice', () => {
  const state = startSimulation(practiceScenario(1));
  stepSimulation(state, 80 * minute);
  hearMark(state, { t: 80 * minute, mark: { kind: 'top-up', pan: 'birch', litres: 40, brix: 2 } });
  expect(stepSimulation(state, 300 * minute).at(-1)).toEqual({ t: 240 * minute, run: 'ended' });
});

test.each(['draw-off', 'flame'] as const)(
  'the middle pot is topped up to the end, after a %s by the person, too',
  (kind) => {
    const state = startSimulation(practiceScenario(1));
    // Another pot goes on, so that the practice waits for it.
    stepSimulation(state, 101 * minute);
    hearMark(state, { t: 101 * minute, mark: { kind: 'top-up', pan: 'birch', litres: 8, brix: 2 } });
    if (kind === 'draw-off') hearMark(state, { t: 101 * minute, mark: { kind, pan: 'middle', litres: 2 } });
    stepSimulation(state, 119 * minute);
    if (kind === 'flame') hearMark(state, { t: 119 * minute, mark: { kind, pan: 'middle', level: 1 } });
    stepSimulation(state, 240 * minute);
    expect(state.truth.moments.filter(({ what }) => what === 'burned')).toEqual([]);
  },
);

test('before the practice has noted what is in its pots the first line asks nobody for it', () => {
  const header = { ...practiceScenario(1).header, practice: true };
  const open = { t: 0, port: 'A', state: 'open' } as const;
  const heard = { t: 240, port: 'A', line: 'T1=90.31C T2=80.63C T3=59.81C' };
  const next = (asPractice: object): string =>
    boilView(foldAll({ ...header, ...asPractice }, [open, heard], 240).state, 240).next.what;
  expect(next({})).toBe('watch');
  expect(next({ practice: false })).toBe('tell-litres');
});

test('nobody is asked for a smaller pot while the thin pot of a practice is being filled', () => {
  const scenario = practiceScenario(1);
  const entries = stepSimulation(startSimulation(scenario), 30 * minute);
  const asked = [1, 5, 10, 15, 18].map((minutes) => {
    const until = minutes * minute;
    const { state } = foldAll(
      scenario.header,
      entries.filter(({ t }) => t <= until),
      until,
    );
    const { next, advice } = boilView(state, until);
    return [next.what, advice.find(({ pan }) => pan === 'middle')?.shallow];
  });
  expect(asked.map(([, shallow]) => shallow)).toEqual([null, null, null, null, null]);
  expect(asked.map(([what]) => what)).not.toContain('smaller-pot');
});

test('what the made-up person pours in is what the card says may be poured in at once, and the call for it ends', () => {
  const scenario = practiceScenario(1);
  const entries = stepSimulation(startSimulation(scenario), 60 * minute);
  const pours = entries.filter(
    (entry) => 'mark' in entry && entry.t > 0 && entry.mark.kind === 'top-up' && entry.mark.pan === 'middle',
  );
  expect(pours.length).toBeGreaterThan(4);
  // A boil that is known as a practice: what its own hand does answers no call in place of the person.
  const header = { ...scenario.header, practice: true };
  const shown = (at: number): ReturnType<typeof boilView> => {
    const until = entries.filter(({ t }) => t <= at);
    return boilView(foldAll(header, until, at).state, at);
  };
  for (const pour of [pours[0]!, pours[2]!, pours.at(-1)!]) {
    const { advice } = shown(pour.t - 1000);
    const room = advice.find(({ pan }) => pan === 'middle')?.roomLitres;
    expect(pour).toMatchObject({ mark: { litres: expect.toSatisfy((litres: number) => litres <= (room ?? 0)) } });
  }
  // None so soon after the last that it would be taken for the same noted twice.
  expect(shown(60 * minute).marks.filter(({ questioned }) => questioned)).toEqual([]);
  const low = shown(45 * minute).alarms.find(({ alarm, pan }) => alarm === 'low-level' && pan === 'middle');
  expect(low?.condition).toBe('over');
});

test('where the person does nothing each finished pot is called, has time to be answered, and is taken off before it is past its finish', () => {
  const scenario = practiceScenario(1);
  const entries = stepSimulation(startSimulation(scenario), 121 * minute);
  const { raisings } = boilView(foldAll(scenario.header, entries, 120 * minute).state, 120 * minute).history;
  for (const pan of ['front', 'birch']) {
    const finish = raisings.find((one) => one.alarm === 'finish' && one.pan === pan);
    expect((finish?.clearedAt ?? 0) - (finish?.raisedAt ?? 0)).toBeGreaterThan(minute);
  }
  const late = raisings.filter(({ alarm }) => alarm === 'past-finish' || alarm === 'scorch-risk');
  expect(late).toEqual([]);
});

test('a pot that the person filled again is taken off at its next finish, too', () => {
  const state = startSimulation(practiceScenario(1));
  stepSimulation(state, 60 * minute);
  // The front pot was taken off once by then.
  hearMark(state, { t: 60 * minute, mark: { kind: 'top-up', pan: 'front', litres: 3, brix: 50, celsius: 90 } });
  stepSimulation(state, 240 * minute);
  const front = state.truth.moments.filter(({ pan }) => pan === 'front');
  expect(front.filter(({ what }) => what === 'taken-off')).toHaveLength(2);
  expect(front.filter(({ what }) => what === 'burned')).toEqual([]);
});
