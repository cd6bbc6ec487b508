// How early a pan calls: its own word goes before the header's, each field by itself, also when it is changed in the middle of a boil.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BoilSettings } from '../../../src/core/boil/entries.ts';
import { leadTimes } from '../../../src/core/boil/lead-times.ts';
import { mergePatch } from '../../../src/core/boil/merge-patch.ts';
import { checkHeader } from '../../../src/protocol/header-schema.ts';
import { foldAll, foldOn, lines, mark, onePot, steadyCelsius, steadyWhen, tarnHollow, told } from './tarn-hollow.ts';

const twoPots = (settings: BoilSettings, own: BoilSettings) =>
  tarnHollow({ settings, pans: [{ id: 'p1', settings: own }, { id: 'p2' }] });

test('each field of a pan goes before the same field of the header; the program knows the rest', () => {
  const header = twoPots({ near_finish_lead_s: 900, scorch_lead_s: 120 }, { near_finish_lead_s: 300 });
  const rest = { nearFinishDeadband: 1.6, scorchLeadS: 120, lowLevelLeadS: 600 };
  expect(leadTimes(header, 'p1')).toEqual({ nearFinishLeadS: 300, ...rest });
  expect(leadTimes(header, 'p2')).toEqual({ nearFinishLeadS: 900, ...rest });
  expect(leadTimes(twoPots({ near_finish_deadband: 2 }, { near_finish_deadband: 3 }), 'p1').nearFinishDeadband).toBe(3);
  expect(leadTimes(header)).toEqual(leadTimes(header, 'p2'));
  expect(leadTimes(tarnHollow(), 'p1').nearFinishLeadS).toBe(600);
});

test('a lead of no time at all is a lead like any other', () => {
  expect(leadTimes(twoPots({ low_level_lead_s: 900 }, { low_level_lead_s: 0 }), 'p1').lowLevelLeadS).toBe(0);
});

test('what cannot be a lead is refused in a sentence that names the pan and the field, or the pan keeps a lead that can be', () => {
  const names = ['near_finish_lead_s', 'scorch_lead_s', 'low_level_lead_s'] as const;
  const value = fc.oneof(fc.jsonValue(), fc.double(), fc.integer(), fc.constantFrom(-1, 86_401, 1e308, '600', true));
  fc.assert(
    fc.property(fc.constantFrom(...names), value, (name, lead) => {
      const pans = [{ id: 'p1' }, { id: 'p2', settings: { [name]: lead } }];
      const checked = checkHeader(mergePatch(tarnHollow(), { pans }));
      if (typeof lead === 'number' && lead >= 0 && lead <= 86_400) {
        if (!checked.ok) throw new Error(checked.why);
        for (const each of Object.values(leadTimes(checked.header, 'p2'))) expect(each).toBeGreaterThanOrEqual(0);
      } else if (lead !== null) {
        expect(checked).toMatchObject({ ok: false, why: expect.stringContaining(`pans[1].settings.${name}`) });
      }
    }),
    { numRuns: 2000 },
  );
  fc.assert(
    fc.property(fc.jsonValue(), (settings) => {
      const checked = checkHeader({ ...tarnHollow(), pans: [{ id: 'p1', settings }] });
      if (!checked.ok) expect(checked.why).toMatch(/^pans\[0\]\.settings/u);
    }),
    { numRuns: 2000 },
  );
});

const thickening = { fromBrix: 52, k: 0.0004, start: 0, sap: 'maple' } as const;
const pot = (near_finish_lead_s: number) => [{ ...onePot().pans![0]!, settings: { near_finish_lead_s } }];
const heard = lines(0, 900_000, { T1: (t) => steadyCelsius(thickening, t) });
const poured = mark(0, { kind: 'top-up', pan: 'p1', litres: 6, brix: 52 });
const finishAt = steadyWhen(thickening, 66.9);

test('a pan with a longer lead calls earlier', () => {
  const calledAt = (lead: number): number => {
    const { transitions } = foldAll({ ...onePot(), pans: pot(lead) }, [poured, ...heard], 900_000);
    return transitions.find(({ alarm, event }) => alarm === 'near-finish' && event === 'raised')?.t ?? NaN;
  };
  expect(finishAt - calledAt(900)).toBeGreaterThan(finishAt - calledAt(300) + 240_000);
});

test('a lead that is shortened during its alarm ends it by the rules, told and kept; one that is lengthened keeps it', () => {
  const { state } = foldAll({ ...onePot(), pans: pot(900) }, [poured, ...heard.slice(0, 400)], 399_000);
  expect(state.book.alarms).toMatchObject([{ alarm: 'near-finish', condition: 'active' }]);
  const goOn = (lead: number) =>
    foldOn(structuredClone(state), [{ t: 400_000, set: { pans: pot(lead) } }, ...heard.slice(400, 460)], 460_000);
  const shorter = goOn(60);
  expect(told(shorter.transitions)).toEqual(['p1 near-finish cleared']);
  expect(shorter.state.book.alarms, 'nobody has seen it').toMatchObject([{ alarm: 'near-finish', overUnseen: true }]);
  const longer = goOn(1200);
  expect(longer.transitions).toEqual([]);
  expect(longer.state.book.alarms).toMatchObject([{ alarm: 'near-finish', condition: 'active', answered: false }]);
});
