// Settings to be tried on past boils: what they come to as patches, and what cannot be run.
import { expect, test } from 'vitest';
import { SEARCHED, trialsOf } from '../../../src/core/tuning/search.ts';
import { commandSchema } from '../../../src/protocol/messages.ts';
import { LEADS } from '../../../src/screen/settings/lead-field.tsx';
import { SURE_OF_FINISH } from '../../../src/screen/settings/sure-of-finish.tsx';
import { anotherTried, firstTried, patchOf, problemInTried, TRIED } from '../../../src/screen/tune/tune-draft.ts';
import { metric } from '../moment.ts';

const [now] = firstTried(metric);

test('the first are those of Settings, and the command takes their patch', () => {
  expect(patchOf(now!)).toEqual({
    settings: {
      near_finish_lead_s: 600,
      scorch_lead_s: 240,
      low_level_lead_s: 600,
      finish_probability: 0.5,
    },
  });
  const settings = [{ name: now!.name, patch: patchOf(now!) }];
  expect(commandSchema.safeParse({ ref: 'r', tune_start: { boils: [], settings, search: [] } }).success).toBe(true);
});

test('what is left as it was is not in the patch', () => {
  expect(patchOf({ ...now!, scorch_lead_s: null, low_level_lead_s: null })).not.toHaveProperty(
    'settings.scorch_lead_s',
  );
});

test('settings that say the same, have no name or the same one are refused in a sentence', () => {
  const other = anotherTried([now!]);
  expect(problemInTried([now!, other], 3)).toBe('“Other 1” says the same as “As in Settings now”.');
  const earlier = { ...other, near_finish_lead_s: 1200 };
  expect(problemInTried([now!, earlier], 3)).toBeNull();
  expect(problemInTried([now!, { ...earlier, name: now!.name }], 3)).toMatch(/same name/u);
  expect(problemInTried([now!, { ...earlier, name: ' ' }], 3)).toMatch(/a name/u);
  expect(problemInTried([{ ...earlier, name: 'As it was' }], 3)).toMatch(/choose another name/u);
  expect(problemInTried([now!], 0)).toBe('Choose at least one boil.');
});

test('a new one has a name of its own', () => {
  const one = anotherTried([now!]);
  expect(anotherTried([now!, one]).name).toBe('Other 2');
});

test('what a search tries, and what is offered here, can be chosen in Settings, too', () => {
  const inSettings: Record<string, readonly number[]> = {
    ...Object.fromEntries(LEADS.map(({ name, minutes }) => [name, minutes.map((each) => 60 * each)])),
    finish_probability: SURE_OF_FINISH,
  };
  const nothing = { near_finish_lead_s: 0, scorch_lead_s: 0, finish_probability: 0 };
  const tried = trialsOf(SEARCHED, nothing).flatMap(({ settings }) => Object.entries(settings));
  const offered = TRIED.flatMap(({ field, options }) => options.map(([value]) => [field, value] as const));
  expect(new Set(tried.map(([field]) => field))).toEqual(new Set(SEARCHED));
  expect([...tried, ...offered].filter(([field, value]) => !inSettings[field]?.includes(value as number))).toEqual([]);
});
