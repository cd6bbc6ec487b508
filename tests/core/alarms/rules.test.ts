// Checks the limits of each pan alarm, one reading at a time, and that noise around a limit makes one alarm.
import { expect, test } from 'vitest';
import { observe, startAlarms } from '../../../src/core/alarms/engine.ts';
import { type Finding, PAN_RULES, type PanSituation } from '../../../src/core/alarms/rules.ts';
import type { SignsSeen } from '../../../src/core/alarms/sign-rules.ts';
import type { AlarmName } from '../../../src/core/boil/entries.ts';
import type { TimeLeft } from '../../../src/core/pan/forecast.ts';
import type { PanReading } from '../../../src/core/pan/reading.ts';
import { nextNormal, randomStream } from '../../../src/core/simulation/random.ts';

const boiling: PanReading = {
  pan: 'p1',
  temperature_c: 101.5,
  water_c: 99.97,
  rise_c: 1.53,
  rate_c_per_min: 0.1,
  brix: 46,
  brix_low: 44,
  brix_high: 48,
  litres: 6,
  depth_mm: 50,
  evaporation_l_per_h: 3,
  finish_in_s: 3600,
  finish_low_s: 3000,
  finish_high_s: 4200,
  scorch_in_s: 5400,
  top_up_in_s: 3000,
  stage: 'thickening',
  probe: 'ok',
};

/** Known to a tenth. */
const around = (seconds: number): TimeLeft => ({ seconds, low: 0.88 * seconds, high: 1.14 * seconds, sigma: 0.1 });

const noSigns: SignsSeen = {
  pan: { lost: null, bare: null, fell: null },
  flameNotedAt: -Infinity,
  doubt: null,
  broken: null,
  fuel: null,
};

function situation(reading: Partial<PanReading>, over: Partial<PanSituation> = {}): PanSituation {
  return {
    reading: { ...boiling, ...reading },
    finishBrix: 67,
    minDepthMm: 15,
    ceilingC: null,
    reachedFinish: false,
    reachedPast: false,
    finish: around(reading.finish_in_s ?? boiling.finish_in_s!),
    scorch: () =>
      'scorch_in_s' in reading && reading.scorch_in_s === null
        ? null
        : around(reading.scorch_in_s ?? boiling.scorch_in_s!),
    shallow: null,
    mayBeLow: () => null,
    litresShare: 0.08,
    justPoured: false,
    climbsByItself: true,
    inDoubt: false,
    byCount: false,
    handAgeMs: null,
    scorchBrix: 75,
    scorchRiseC: 6.7,
    signs: noSigns,
    portLost: false,
    settings: { nearFinishLeadS: 600, nearFinishDeadband: 1.6, scorchLeadS: 240, lowLevelLeadS: 600 },
    ...over,
  };
}

const ruleOf = (alarm: AlarmName) => PAN_RULES.find((rule) => rule.alarm === alarm)!;

function found(alarm: AlarmName, reading: Partial<PanReading>, over?: Partial<PanSituation>): Finding | null {
  // Before its finish a pan is hardly ever about to burn.
  return ruleOf(alarm).find(situation(reading, { reachedFinish: alarm === 'scorch-risk', ...over }));
}

/** over, inside, between (the deadband), or not known */
function side(alarm: AlarmName, reading: Partial<PanReading>, over?: Partial<PanSituation>): string {
  const finding = found(alarm, reading, over);
  if (finding === null) return 'not known';
  return finding.over ? 'over' : finding.inside ? 'inside' : 'between';
}

const lost: Partial<PanReading> = {
  temperature_c: null,
  rise_c: null,
  rate_c_per_min: null,
  brix: null,
  brix_low: null,
  brix_high: null,
  finish_in_s: null,
  scorch_in_s: null,
  top_up_in_s: null,
  probe: 'lost',
};

test.each(['near-finish', 'scorch-risk', 'low-level'] as AlarmName[])(
  'a lost probe leaves %s in its last state',
  (alarm) => {
    expect(side(alarm, lost)).toBe('not known');
  },
);

test('a lost probe leaves a finish that was reached in its last state', () => {
  expect(side('finish', lost, { reachedFinish: true })).toBe('not known');
  expect(side('past-finish', lost, { reachedFinish: true, reachedPast: true })).toBe('not known');
});

test('near-finish looks at the lead time that was set', () => {
  expect(side('near-finish', { finish_in_s: 601 })).toBe('between');
  expect(side('near-finish', { finish_in_s: 600 })).toBe('over');
  const longer = { settings: { nearFinishLeadS: 900, nearFinishDeadband: 1.6, scorchLeadS: 240, lowLevelLeadS: 600 } };
  expect(side('near-finish', { finish_in_s: 900 }, longer)).toBe('over');
  expect(side('near-finish', { finish_in_s: 1441 }, longer)).toBe('inside');
  const wider = { settings: { ...longer.settings, nearFinishDeadband: 3 } };
  expect(side('near-finish', { finish_in_s: 1441 }, wider)).toBe('between');
  expect(side('near-finish', { finish_in_s: 2701 }, wider)).toBe('inside');
});

test('near-finish says when, to what, and how sure', () => {
  const finding = found('near-finish', { finish_in_s: 600, finish_low_s: 480, finish_high_s: 780 });
  expect(finding?.why()).toBe('about 10 min to 67 °Bx (8–13)');
});

test('near-finish makes way for finish, finish for past-finish, at once', () => {
  expect(found('near-finish', { brix: 67.1, finish_in_s: 0 }, { reachedFinish: true })).toMatchObject({
    inside: true,
    atOnce: true,
  });
  expect(side('finish', { brix: 67.1 }, { reachedFinish: true })).toBe('over');
  const past = { reachedFinish: true, reachedPast: true };
  expect(found('finish', { brix: 68.1 }, past)).toMatchObject({ inside: true, atOnce: true });
  expect(side('past-finish', { brix: 68.1 }, past)).toBe('over');
});

test('near-finish calls nobody in thin sap by a forecast that is hardly known', () => {
  const hardly = { finish: { seconds: 300, low: 100, high: 900, sigma: 0.8 } };
  expect(side('near-finish', { finish_in_s: 300, brix: 29 }, hardly)).toBe('between');
  expect(side('near-finish', { finish_in_s: 300, brix: 29 })).toBe('over');
  expect(side('near-finish', { finish_in_s: 300 }, hardly)).toBe('over');
});

test('a finished pan that is too strong to be named stays called, one that has cooled was taken off', () => {
  const past = { reachedFinish: true, reachedPast: true };
  expect(side('past-finish', { brix: null, rise_c: 12 }, past)).toBe('over');
  expect(side('past-finish', { brix: null, rise_c: -7 }, past)).toBe('not known');
  expect(side('past-finish', { brix: null, rise_c: -9 }, past)).toBe('inside');
});

test('a pan that was taken off has no call of finish, depth or burning', () => {
  for (const alarm of ['near-finish', 'finish', 'past-finish', 'scorch-risk', 'low-level'] as AlarmName[]) {
    const off: Partial<PanReading> = { stage: 'off', scorch_in_s: null, top_up_in_s: null, finish_in_s: null };
    expect(found(alarm, off), alarm).toMatchObject({ inside: true, atOnce: true });
  }
});

test('scorch-risk: soon at this heat, too strong to be named, or running away', () => {
  expect(side('scorch-risk', { scorch_in_s: 240 })).toBe('over');
  expect(side('scorch-risk', { scorch_in_s: 300 })).toBe('between');
  expect(side('scorch-risk', { scorch_in_s: 361 })).toBe('inside');
  expect(side('scorch-risk', { rise_c: 6.7, brix: null, scorch_in_s: null })).toBe('over');
  expect(side('scorch-risk', { rise_c: 2.5, rate_c_per_min: 4 })).toBe('over');
  expect(side('scorch-risk', { rise_c: 0.5, rate_c_per_min: 9 })).toBe('inside');
});

test('under a ceiling scorch-risk guards the ceiling alone', () => {
  const ceiling = { ceilingC: 94 };
  expect(side('scorch-risk', { temperature_c: 94.4 }, ceiling)).toBe('between');
  expect(side('scorch-risk', { temperature_c: 94.6 }, ceiling)).toBe('over');
  expect(side('scorch-risk', { temperature_c: 93.4 }, ceiling)).toBe('inside');
  expect(side('scorch-risk', lost, ceiling)).toBe('not known');
});

test('low-level is medium while there is time, high when it is reached and sure', () => {
  expect(found('low-level', { top_up_in_s: 600 })).toMatchObject({ over: true, priority: 'medium' });
  expect(found('low-level', { top_up_in_s: 0 })).toMatchObject({ over: true, priority: 'high' });
  expect(found('low-level', { top_up_in_s: 0 }, { litresShare: 0.4 })).toMatchObject({ priority: 'medium' });
  expect(side('low-level', { top_up_in_s: 781 })).toBe('inside');
});

test('probe-lost is high in a thickening pan, and port-lost stands for it', () => {
  expect(found('probe-lost', lost)).toMatchObject({ over: true, priority: 'high' });
  expect(found('probe-lost', { ...lost, stage: 'boiling' })).toMatchObject({ over: true, priority: 'medium' });
  expect(found('probe-lost', { ...lost, probe: 'broken' })).toMatchObject({ over: true });
  expect(found('probe-lost', { ...lost, probe: 'late' })).toMatchObject({ over: false });
  expect(found('probe-lost', lost, { portLost: true })).toMatchObject({ over: false });
  expect(found('probe-lost', { ...lost, stage: 'off' })).toMatchObject({ over: false });
});

test('an alarm that has no numbers says none', () => {
  for (const rule of PAN_RULES) {
    const bare = situation({ ...lost, litres: null, depth_mm: null, finish_low_s: null, finish_high_s: null });
    expect(rule.find(bare)?.why() ?? '', rule.alarm).not.toMatch(/NaN|null|undefined|Infinity/u);
  }
});

test.each([
  ['near-finish', (x: number) => ({ finish_in_s: 600 * (1 + x) })],
  ['scorch-risk', (x: number) => ({ scorch_in_s: 240 * (1 + x) })],
  ['low-level', (x: number) => ({ top_up_in_s: 600 * (1 + x) })],
] as [AlarmName, (x: number) => Partial<PanReading>][])(
  'a sine with noise around the limit of %s makes one alarm in an hour',
  (alarm, reading) => {
    const rule = ruleOf(alarm);
    const book = startAlarms();
    const stream = randomStream(5, alarm);
    const events: string[] = [];
    for (let t = 0; t < 3_600_000; t += 1000) {
      const around = 0.1 * Math.sin(t / 60_000) + 0.06 * nextNormal(stream);
      const made = observe(book, { alarm, pan: 'p1' }, rule, found(alarm, reading(around)), t);
      events.push(...made.map(({ event }) => event));
    }
    expect(events).toEqual(['raised']);
  },
);

test('a finish that no thermometer shows is called as counted', () => {
  const said = (byCount: boolean) => found('finish', { brix: 67.1 }, { reachedFinish: true, byCount })!.why();
  expect(said(true)).toMatch(/by count, not by thermometer: check with an instrument$/u);
  expect(said(false)).not.toContain('by count');
});

const bare = (seconds: number, low: number, high: number): TimeLeft => ({ seconds, low, high, sigma: 0.5 });

test.each([
  ['known well, by its early end', bare(300, 140, 620), 0.1, 'over'],
  ['known well but as well a quarter of an hour, by its middle', bare(300, 100, 901), 0.1, 'between'],
  ['known badly, a minute before its middle', bare(299, 60, 1100), 0.6, 'over'],
  ['known badly, not by its early end', bare(301, 60, 800), 0.6, 'between'],
])('a bare bottom that is %s', (_, shallow, litresShare, expected) => {
  expect(side('scorch-risk', { scorch_in_s: null }, { shallow, litresShare })).toBe(expected);
});

const burningWhy = (reading: Partial<PanReading>, over?: Partial<PanSituation>) =>
  found('scorch-risk', reading, over)!.why();

test('a pan that is about to burn says which of its limits it nears, with the number', () => {
  // Birch at 46 °Bx is far under its finish: only the cause tells why it is called.
  const low = { scorch_in_s: null, depth_mm: 6 };
  expect(burningWhy(low, { shallow: bare(200, 180, 230), litresShare: 0.1 })).toBe(
    'too shallow in about 3 min at this heat: 6 mm deep, it burns from 5 mm down',
  );
  expect(burningWhy({ ...low, depth_mm: 5 }, { shallow: bare(0, 0, 0), litresShare: 0.1 })).toBe(
    'too shallow: 5 mm deep, it burns from 5 mm down',
  );
  expect(burningWhy({ brix: 70.2, scorch_in_s: 200 })).toBe(
    'too strong in about 3 min at this heat: 70.2 °Bx now, it burns from 75 °Bx',
  );
  expect(burningWhy({ brix: 75.4, scorch_in_s: 0 })).toBe('too strong: 75.4 °Bx now, it burns from 75 °Bx');
  expect(burningWhy({ rise_c: 6.9 })).toBe('too strong: rise 6.9 °C, it burns from a rise of 6.7 °C');
  expect(burningWhy({ rise_c: 2.5, rate_c_per_min: 4.2 })).toBe('rises too fast: 4.2 °C/min, rise 2.5 °C');
  expect(burningWhy({ temperature_c: 94.7 }, { ceilingC: 94 })).toBe('over its ceiling: 94.7 °C, ceiling 94 °C');
  expect(burningWhy({ temperature_c: 95 }, { ceilingC: 94.4 })).toBe('over its ceiling: 95.0 °C, ceiling 94.4 °C');
});

test('a climb that is warming up after a pour, or a tip that was put in, is none that runs away', () => {
  const climb = { rise_c: 2.5, rate_c_per_min: 4.2 };
  expect(side('scorch-risk', climb)).toBe('over');
  expect(side('scorch-risk', climb, { climbsByItself: false })).toBe('inside');
});

test('before its finish a pan that a probe shows is about to burn by its strength only where hardly a moment is left', () => {
  const early = { reachedFinish: false };
  expect(side('scorch-risk', { scorch_in_s: 240 }, early)).toBe('between');
  expect(side('scorch-risk', { scorch_in_s: 361 }, early)).toBe('inside');
  expect(side('scorch-risk', { scorch_in_s: 30 }, early)).toBe('over');
  for (const probe of [null, 'lost', 'stuck', 'suspect'] as const)
    expect(side('scorch-risk', { scorch_in_s: 240, probe }, early)).toBe('over');
  expect(side('scorch-risk', { rise_c: 6.9 }, early)).toBe('over');
  const shallow = bare(200, 180, 230);
  expect(side('scorch-risk', { scorch_in_s: null }, { ...early, shallow, litresShare: 0.1 })).toBe('over');
});

test('of two limits the one that comes first is named', () => {
  const both = { brix: 70.2, scorch_in_s: 200, depth_mm: 6 };
  expect(burningWhy(both, { shallow: bare(100, 90, 110), litresShare: 0.1 })).toContain('too shallow in about 2 min');
  expect(burningWhy(both, { shallow: bare(300, 280, 320), litresShare: 0.1 })).toContain('too strong in about 3 min');
});

test('a pan whose depth is hardly known is called all the same, and says that it is a count', () => {
  const why = (reading: Partial<PanReading>, litresShare: number, seconds = 200) =>
    burningWhy({ scorch_in_s: null, ...reading }, { shallow: bare(seconds, 60, 700), litresShare });
  const counted = 'by what went in and boiled away: look how deep it is';
  expect(why({ depth_mm: null }, 0.6)).toBe(`too shallow in about 2 min at this heat, ${counted}`);
  expect(why({ depth_mm: 7 }, 0.3)).toBe(
    `too shallow in about 2 min at this heat: 7 mm deep, it burns from 5 mm down, ${counted}`,
  );
  expect(why({ depth_mm: null }, 0.6, 0)).toBe(`too shallow, ${counted}`);
  expect(why({ depth_mm: 7 }, 0.1)).not.toContain(counted);
});

test('a call of a pan that is hardly counted is not ended by the count', () => {
  const later = { shallow: bare(900, 400, 2000), litresShare: 0.6 };
  expect(side('scorch-risk', { scorch_in_s: null }, later)).toBe('between');
  expect(side('scorch-risk', { scorch_in_s: null }, { ...later, justPoured: true })).toBe('inside');
  expect(side('scorch-risk', { scorch_in_s: null }, { ...later, litresShare: 0.1 })).toBe('inside');
});

test('nor is it kept by such a count where the strength, which was read, comes sooner and is not soon', () => {
  const later = { shallow: bare(900, 400, 2000), litresShare: 0.6 };
  expect(side('scorch-risk', { brix: 61, scorch_in_s: 600 }, later)).toBe('inside');
});

test('a call that rests on a thermometer read by hand says so, and how long ago', () => {
  const said = (handAgeMs: number | null) => found('finish', { brix: 67.1 }, { reachedFinish: true, handAgeMs })!.why();
  expect(said(6 * 60_000)).toMatch(/, by a thermometer read by hand 6 min ago$/);
  expect(said(null)).not.toContain('hand');
});
