// A pan for the tests of the judges: its strength, its readings and its calls written by hand.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type { AlarmName, Priority } from '../../../src/core/boil/entries.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { sugarShares } from '../../../src/core/physics/sugar-shares.ts';
import type { Disturbance } from './disturbances.ts';
import { READING_MS } from './play.ts';
import type { Known, PanCase } from './score.ts';
import { SAMPLE_MS, type PanFacts, type Sample } from './witness.ts';

export const minute = 60_000;

export const sampleOf = (given: Partial<Sample> = {}): Sample => ({
  t: 0,
  brix: 30,
  litres: 5,
  depthMm: 50,
  celsius: 101,
  massKg: 5,
  level: 1,
  boiling: true,
  burned: false,
  off: false,
  probed: true,
  tipBare: false,
  ...given,
});

export const readingOf = (given: Partial<PanReading> = {}): PanReading => ({
  pan: 'p1',
  temperature_c: null,
  water_c: null,
  rise_c: null,
  rate_c_per_min: null,
  brix: null,
  brix_low: null,
  brix_high: null,
  litres: null,
  depth_mm: null,
  evaporation_l_per_h: null,
  finish_in_s: null,
  finish_low_s: null,
  finish_high_s: null,
  scorch_in_s: null,
  top_up_in_s: null,
  stage: 'unknown',
  probe: 'ok',
  ...given,
});

export const call = (
  minutes: number,
  alarm: AlarmName,
  event: AlarmTransition['event'] = 'raised',
  priority: Priority = 'high',
): AlarmTransition => ({ t: minutes * minute, pan: 'p1', alarm, event, priority, why: '' });

const facts: PanFacts = { id: 'p1', finishBrix: 67, minDepthMm: 15, ceilingC: Infinity, mixAlike: true, probe: 'A/1' };

export interface CasePlan {
  minutes: number;
  truly?: (minutes: number) => Partial<Sample>;
  said?: (minutes: number) => Partial<PanReading>;
  calls?: AlarmTransition[];
  disturbed?: Disturbance[];
  facts?: Partial<PanFacts>;
  known?: Partial<Known>;
}

export function panCase(plan: CasePlan): PanCase {
  const along = <T>(stepMs: number, make: (t: number) => T): T[] =>
    Array.from({ length: Math.floor((plan.minutes * minute) / stepMs) + 1 }, (_, index) => make(index * stepMs));
  return {
    facts: { ...facts, ...plan.facts },
    samples: along(SAMPLE_MS, (t) => sampleOf({ ...plan.truly?.(t / minute), t })),
    readings: along(READING_MS, (t) => readingOf(plan.said?.(t / minute))),
    calls: plan.calls ?? [],
    disturbed: plan.disturbed ?? [],
    told: { shares: sugarShares('maple'), finish: { brix: 67 } },
    known: () => ({ checked: true, mix: 'alike', blind: null, ...plan.known }),
  };
}
