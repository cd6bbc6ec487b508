// A lead says when it calls, where a pan stands then, and what speaks against it.
import { expect, test } from 'vitest';
import { leadSentences, pansUnder, strengthAtLead } from '../../../src/screen/words/lead-words.ts';
import { metric, moment, reading } from '../moment.ts';

test('the strength at the call lies on the straight line of water per sugar', () => {
  // Water per sugar 1 at 50 °Bx and 0.5 at 66.67 °Bx; half the way is 0.75, which is 57.14 °Bx (computed).
  expect(strengthAtLead({ brix: 50, finish_in_s: 1200 }, 200 / 3, 600)).toBeCloseTo(57.14, 2);
});

test('what is past, or not known, has no strength at the call', () => {
  expect(strengthAtLead({ brix: 63, finish_in_s: 540 }, 66.9, 600)).toBe(null);
  expect(strengthAtLead({ brix: null, finish_in_s: 1200 }, 66.9, 600)).toBe(null);
  expect(strengthAtLead({ brix: 50, finish_in_s: null }, 66.9, 600)).toBe(null);
  expect(strengthAtLead({ brix: 50, finish_in_s: 1200 }, null, 600)).toBe(null);
});

test('each lead names its consequence, and a doubtful one what speaks against it', () => {
  expect(leadSentences('scorch_lead_s', 240, metric, [])).toEqual([
    'Called about 4\u00a0min before it burns: time to get there and shut the heat.',
  ]);
  expect(leadSentences('scorch_lead_s', 60, metric, [])[1]).toContain('That is short');
  expect(leadSentences('near_finish_lead_s', 1800, metric, [])[1]).toContain('long');
});

test('a pan on its way says where it will be called at today’s fire; one kept below a boil does not', () => {
  const now = { ...moment, readings: [{ ...reading, brix: 50, finish_in_s: 1200 }] };
  const said = leadSentences(
    'near_finish_lead_s',
    600,
    metric,
    pansUnder('near_finish_lead_s', now).under,
  )[1]?.replaceAll('\u00a0', ' ');
  expect(said).toBe('Front pot: at today’s fire that is at about 57.0 °Bx.');
  const header = {
    ...moment.header!,
    pans: [{ id: 'p1', finish: { brix: 66.9, ceiling_c: 95 } }],
  };
  expect(leadSentences('near_finish_lead_s', 600, metric, [{ header, reading: now.readings[0]! }])).toHaveLength(1);
});

test('a pan with a lead of its own goes by that, and the others by that of the boil', () => {
  const header = { ...moment.header!, pans: [{ id: 'p1', name: 'Front pot', settings: { scorch_lead_s: 360 } }] };
  expect(pansUnder('scorch_lead_s', { ...moment, header })).toEqual({
    under: [],
    own: ['Front pot has its own: 6\u00a0min before.'],
  });
  expect(pansUnder('near_finish_lead_s', { ...moment, header }).under).toHaveLength(1);
});
