// Which pans a note's form marks as having called: those that do, and those whose call was answered a moment ago. Invented.
import { expect, test } from 'vitest';
import type { Now, RaisingShown } from '../../../src/screen/client/types.ts';
import { panCall } from '../../../src/screen/marks/pan-call.ts';
import { formsFor } from '../../../src/screen/marks/forms.ts';
import { alarm, moment } from '../moment.ts';

const calling = (...alarms: Now['alarms']): Now => ({ ...moment, alarms });

test('a call that stands marks its pan, seen or not, by the worst of them; one put aside or over does not', () => {
  const low = { ...alarm, alarm: 'low-level', priority: 'high', title: 'Running low' } as const;
  expect(panCall(calling(alarm), 'p1')).toEqual({ priority: 'medium', words: 'Nearly syrup' });
  expect(panCall(calling({ ...alarm, answered: true }), 'p1')).not.toBeNull();
  expect(panCall(calling(alarm, low), 'p1')).toEqual({ priority: 'high', words: 'Running low' });
  expect(panCall(calling(alarm), 'p2')).toBeNull();
  expect(panCall(calling({ ...alarm, asideUntil: moment.t + 60_000 }), 'p1')).toBeNull();
  expect(panCall(calling({ ...alarm, condition: 'over' }), 'p1')).toBeNull();
});

test('for two minutes of the person’s own time an answered call still marks its pan', () => {
  const after = (seconds: number, change: Partial<Now> = {}): Now => {
    const raising: RaisingShown = {
      ...{ alarm: 'low-level', pan: 'p2', port: null, priority: 'medium', why: '', noUse: false, asides: [] },
      ...{ raisedAt: moment.t - 900_000, answeredAt: moment.t - seconds * 1000, clearedAt: moment.t - 1000 },
    };
    return { ...moment, alarms: [], history: { ...moment.history, raisings: [raising] }, ...change };
  };
  expect(panCall(after(119), 'p2')).toEqual({ priority: 'medium', words: 'Running low' });
  expect(panCall(after(119), 'p1')).toBeNull();
  expect(panCall(after(121), 'p2')).toBeNull();
  expect(panCall(after(1100, { mode: 'practice', speed: 10 }), 'p2')).not.toBeNull();
  const unseen = after(1);
  unseen.history.raisings[0]!.answeredAt = null;
  expect(panCall(unseen, 'p2')).toBeNull();
});

test('the air’s pressure alone is of no pan', () => {
  const whole = formsFor(moment.header!).filter(({ ofNoPan }) => ofNoPan === true);
  expect(whole.map(({ kind }) => kind)).toEqual(['pressure']);
});
