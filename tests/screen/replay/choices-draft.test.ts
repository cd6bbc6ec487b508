// Other choices for a past boil become the smallest patch over its header, and untouched ones none.
import { expect, test } from 'vitest';
import { mergePatch } from '../../../src/core/boil/merge-patch.ts';
import { sapKinds } from '../../../src/core/physics/sap-kinds.ts';
import { checkHeader } from '../../../src/protocol/header-schema.ts';
import { choicesDraft, patchOf, problemInChoices, withPan } from '../../../src/screen/replay/choices-draft.ts';
import type { Header, Settings } from '../../../src/screen/client/types.ts';
import { american, metric } from '../moment.ts';

const header = {
  recording: 'panwarden',
  version: 1,
  name: 'Tarn Hollow, invented',
  started: '2027-04-18T07:30:00-07:00',
  site: { name: 'Tarn Hollow', altitude_m: 640 },
  ports: [{ id: 'A' }],
  probes: [
    { id: 'A/1', port: 'A', channel: 'T1', offset_c: -0.4 },
    { id: 'A/2', port: 'A', channel: 'T2' },
  ],
  pans: [
    { id: 'p1', name: 'Back pot', sap: 'birch', probe: 'A/1', finish: { brix: 67 }, min_depth_mm: 15 },
    { id: 'p2', name: 'Front pot', sap: 'maple', probe: 'A/2', finish: { brix: 66.9 } },
  ],
} as Header;

const draft = (settings: Settings = metric) => choicesDraft(header, settings, sapKinds);
const patch = (chosen: ReturnType<typeof draft>, settings = metric) => patchOf(chosen, header, settings, sapKinds);

test.each([metric, american])('nothing chosen otherwise is no patch, in any units', (settings) => {
  expect(patch(draft(settings), settings)).toBeNull();
});

test('another finish is in the list of pans, and the other pan stays to the letter', () => {
  const [pan] = draft().boil.pans;
  const found = patch(withPan(draft(), { ...pan!, finish: 'strength', finishAt: '63' }));
  expect(found).toEqual({ pans: [{ ...header.pans![0], finish: { brix: 63 } }, header.pans![1]] });
  expect(checkHeader(mergePatch(header, found!)).ok).toBe(true);
});

test('another offset is in the list of probes alone, in °C whatever was typed', () => {
  const offsets = { ...draft(american).offsets, 'A/2': '1.8' };
  const found = patch({ ...draft(american), offsets }, american);
  expect(found).toEqual({ probes: [header.probes![0], { ...header.probes![1], offset_c: 1 }] });
});

test('another height moves the water point and leaves the place its name', () => {
  const chosen = draft();
  const found = patch({ ...chosen, boil: { ...chosen.boil, altitude: '1200' } });
  expect(found).toEqual({ site: { altitude_m: 1200 } });
  expect(mergePatch(header, found!)).toMatchObject({ site: { name: 'Tarn Hollow', altitude_m: 1200 } });
});

test('what is no number is named', () => {
  expect(problemInChoices({ ...draft(), offsets: { 'A/1': 'half' } }, metric)).toBe(
    'Probe A/1, added to its number: “half” is no number of degrees.',
  );
  expect(problemInChoices(draft(), metric)).toBeNull();
});
