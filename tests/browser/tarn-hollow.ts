// Invented moments of a boil at Tarn Hollow, in the words of the protocol, for states that a real boil seldom shows.
import { ALARM_WORDS } from '../../src/core/alarms/words.ts';
import { alarmHistory, startHistory } from '../../src/core/boil/alarm-history.ts';
import type { Mark } from '../../src/core/boil/entries.ts';
import type { AlarmView, Command, Curve, Explanation, Now, ProbeHealth } from '../../src/protocol/messages.ts';
import type { MarkView } from '../../src/screen/client/types.ts';

const MINUTE = 60_000;
const STARTED = '2027-04-18T07:30:00-07:00';
export const T = 5.2 * 3_600_000;

type Reading = Now['readings'][number];

const nothing: Reading = {
  pan: '',
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
};

const readings: Reading[] = [
  {
    ...nothing,
    pan: 'p1',
    temperature_c: 101.3,
    water_c: 97.9,
    rise_c: 3.4,
    rate_c_per_min: 0.17,
    brix: 63.4,
    brix_low: 62.6,
    brix_high: 64.1,
    litres: 3.1,
    depth_mm: 27,
    evaporation_l_per_h: 4.8,
    finish_in_s: 540,
    finish_low_s: 430,
    finish_high_s: 690,
    scorch_in_s: 1500,
    top_up_in_s: 2400,
    stage: 'near-finish',
  },
  {
    ...nothing,
    pan: 'p2',
    temperature_c: 98.9,
    water_c: 97.9,
    rise_c: 1.0,
    rate_c_per_min: 0.012,
    brix: 24,
    brix_low: 19,
    brix_high: 28,
    litres: 14.2,
    depth_mm: 113,
    evaporation_l_per_h: 5.1,
    finish_in_s: 9600,
    finish_low_s: 7800,
    finish_high_s: 12_000,
    top_up_in_s: 5400,
    stage: 'thickening',
  },
  { ...nothing, pan: 'p3', temperature_c: 41.6, water_c: 97.9, rise_c: -56.3, rate_c_per_min: 1.4, stage: 'warming' },
  { ...nothing, pan: 'p4', water_c: 97.9, stage: 'unknown', probe: 'broken' },
];

export const alarms: AlarmView[] = [
  {
    alarm: 'near-finish',
    pan: 'p1',
    port: null,
    priority: 'medium',
    condition: 'active',
    answered: false,
    since: T - 2 * MINUTE,
    asideUntil: null,
    asideReason: null,
    why: 'about 9 min to 66.9 °Bx (7–12)',
    ...ALARM_WORDS['near-finish'],
  },
  {
    alarm: 'probe-lost',
    pan: 'p4',
    port: null,
    priority: 'high',
    condition: 'active',
    answered: false,
    since: T - MINUTE,
    asideUntil: null,
    asideReason: null,
    why: 'the board says that the probe is broken',
    ...ALARM_WORDS['probe-lost'],
  },
  {
    alarm: 'reminder',
    pan: null,
    port: null,
    priority: 'low',
    condition: 'over',
    answered: false,
    since: T - 20 * MINUTE,
    asideUntil: null,
    asideReason: null,
    why: 'Skim the foam',
    ...ALARM_WORDS.reminder,
  },
];

/** Nine that stand at once, no two alike: those as urgent the oldest first, as the host has them, but the most urgent not first. */
export const flood: AlarmView[] = Array.from({ length: 9 }, (_, place): AlarmView => {
  const names = ['low-level', 'probe-suspect', 'scorch-risk', 'boil-lost'] as const;
  const alarm = names[place % 4] ?? 'low-level';
  return {
    ...alarms[0]!,
    alarm,
    // Two that burn are two pans: those of one pan are said in one row.
    pan: place === 2 ? 'p1' : `p${1 + (place % 4)}`,
    port: null,
    priority: alarm === 'scorch-risk' ? 'high' : 'medium',
    since: T - place * MINUTE,
    why: `${12 + place} mm deep, the least is 15 mm`,
    title: `Invented call ${place + 1}`,
    means: 'Too little liquid for this vessel soon; a shallow pan burns.',
    todo: 'Top up, or turn the flame down.',
  };
}).toSorted((one, other) => one.since - other.since);

const noted = (minutesAgo: number, mark: Mark, change: Partial<MarkView> = {}): MarkView => ({
  t: T - minutesAgo * MINUTE,
  at: T - minutesAgo * MINUTE,
  mark,
  withdrawn: false,
  questioned: false,
  doubt: null,
  corrections: [],
  cameTo: null,
  takenC: null,
  ...change,
});

const marks: MarkView[] = [
  noted(50, { kind: 'top-up', pan: 'p1', litres: 2, id: 'm1' }, { at: T - 52 * MINUTE }),
  noted(30, { kind: 'flame', pan: 'p1', level: 0.5, id: 'm2' }),
  noted(28, { kind: 'depth', pan: 'p2', mm: 113, id: 'm3' }, { withdrawn: true }),
  noted(
    18,
    { kind: 'density', pan: 'p1', brix: 58, id: 'm4' },
    {
      corrections: [
        {
          t: T - 18 * MINUTE,
          pan: 'p1',
          before: { brix: 55, litres: 3.4, finishAt: T + 19 * MINUTE },
          after: { brix: 58, litres: 3.4, finishAt: T + 9 * MINUTE },
        },
      ],
    },
  ),
];

/** Four pans at different stages; `pans` takes the first few. */
export function liveNow(pans: number, change: Partial<Now> = {}): Now {
  return {
    kind: 'now',
    view: 'live',
    mode: 'live',
    boil: '2027-04-18-tarn-hollow',
    t: T,
    clock: '2027-04-18T12:42:00-07:00',
    speed: 1,
    ended: false,
    endedAt: null,
    kept: 18_211,
    pours: [{ pan: 'p2', at: T - 25 * MINUTE, litres: 4.1, low: 3.1, high: 5.4 }],
    advice: [
      {
        pan: 'p2',
        ask: 'depth',
        fellC: null,
        litresRoughly: null,
        moreThanNoted: false,
        shallow: { depthMm: 9, pourBrix: 45, pourInS: 3000, moreSapLitres: 12 },
        tooLittle: true,
        roomLitres: 1.3,
        roomEveryS: 918,
        smallestBatch: { syrupLitres: 2, sapLitres: 80, sapBrix: 2, sapFrom: 'usual' },
        readAgainAt: null,
      },
    ],
    unused: [],
    notices: [],
    powers: [],
    replay: null,
    header: {
      recording: 'panwarden',
      version: 1,
      started: STARTED,
      name: 'Tarn Hollow, an invented boil',
      site: { name: 'Tarn Hollow', altitude_m: 640 },
      ports: [{ id: 'A', path: '/dev/ttyUSB0' }],
      probes: ['T1', 'T2', 'T3', 'T4'].map((channel) => ({ id: `A/${channel}`, port: 'A', channel })),
      pans: [
        { id: 'p1', name: 'Front pot', sap: 'maple', probe: 'A/T1', vessel: { shape: 'round', diameter_mm: 380 } },
        { id: 'p2', name: 'Back pot', sap: 'birch', probe: 'A/T2', vessel: { shape: 'round', diameter_mm: 400 } },
        { id: 'p3', name: 'Warming pan', sap: 'birch', probe: 'A/T3' },
        { id: 'p4', name: 'Side pan', sap: 'maple', probe: 'A/T4' },
      ].slice(0, pans) as NonNullable<NonNullable<Now['header']>['pans']>,
    },
    readings: readings.slice(0, pans),
    lastHeats: [],
    limits: [
      { pan: 'p1', finish_c: 101.9, scorch_c: 106.5 },
      { pan: 'p2', finish_c: 103.9, scorch_c: 108 },
      { pan: 'p3', finish_c: 103.9, scorch_c: 108 },
      { pan: 'p4', finish_c: 101.9, scorch_c: 106.5 },
    ],
    water: { celsius: 97.9, plusMinus: 0.4, from: { kind: 'altitude', at: null } },
    probes: [101.3, 98.9, 41.6, null].map((celsius, i) => ({
      id: `A/T${i + 1}`,
      port: 'A',
      channel: `T${i + 1}`,
      pan: `p${i + 1}`,
      celsius,
      correctionC: null,
      ageSeconds: 1,
      periodSeconds: 1,
      state: celsius === null ? 'broken' : 'ok',
    })),
    ports: [{ id: 'A', path: '/dev/ttyUSB0', state: 'open', why: null, lines: 18_190, unreadable: 2 }],
    alarms: [],
    sound: { priority: null, silencedUntil: null },
    unanswered: null,
    history: alarmHistory(startHistory(), [], null),
    marks,
    next: { what: 'finish', pan: 'p1', at: T + 9 * MINUTE, low: T + 7 * MINUTE, high: T + 11.5 * MINUTE, text: null },
    ...change,
  };
}

/** No boil is running. */
export function idleNow(): Now {
  return {
    ...liveNow(0),
    mode: 'idle',
    boil: null,
    header: null,
    readings: [],
    lastHeats: [],
    limits: [],
    probes: [],
    ports: [],
    marks: [],
    kept: null,
    t: 0,
    water: { celsius: null, plusMinus: null, from: null },
    next: { what: 'watch', pan: null, at: null, low: null, high: null, text: null },
  };
}

/** A host may hand out fewer points than it is asked for: enough to see a pour, and soon read. */
const MOST_POINTS = 400;

/** A pan that climbs from water's boiling point towards its finish, with a pour half an hour ago. */
export function curveOf(pan: string, from: number, to: number, asked: number): Curve {
  const points = Math.min(asked, MOST_POINTS);
  const t = Array.from({ length: points }, (_, i) => Math.round(from + ((to - from) * i) / (points - 1)));
  const at = (x: number): number => {
    const left = 67 - Math.min(66, 1 + 60 * (x / T) ** 2);
    const pour = x > T - 30 * MINUTE && x < T - 22 * MINUTE ? 6 * (1 - (x - T + 30 * MINUTE) / (8 * MINUTE)) : 0;
    return 97.9 + 3.4 * (1 - left / 66) ** 2 - pour + 0.15 * Math.sin(x / 9000);
  };
  const known = (value: (x: number) => number) => t.map((x) => (x < 0 || x > T ? null : value(x)));
  return {
    pan,
    t,
    low: known((x) => at(x) - 0.1),
    high: known((x) => at(x) + 0.1),
    water: known(() => 97.9),
    finish: known(() => 101.9),
    scorch: known(() => 106.5),
    ahead: aheadFrom(at(T)),
  };
}

/** Done in about 9 minutes, at the soonest in 7 and at the latest in 12. */
function aheadFrom(celsius: number): NonNullable<Curve['ahead']> {
  const minutes = Array.from({ length: 25 }, (_, i) => i / 2);
  const reaching = (done: number) =>
    minutes.map((left) => Math.min(106.5, celsius + (101.9 - celsius) * (left / done) ** 1.5));
  return { t: minutes.map((left) => T + left * MINUTE), low: reaching(12), middle: reaching(9), high: reaching(7) };
}

/** Whatever is asked about is 63.4 of its unit, as a strength would be explained. */
export function explanationOf({ pan, what }: Extract<Command, { explain: unknown }>['explain']): Explanation {
  return {
    what,
    pan,
    t: T,
    value: 63.4,
    low: 62.6,
    high: 64.1,
    parts: [
      { kind: 'sugar-model', at: null, sigma: 0.5 },
      { kind: 'boiling-check', at: T - 40 * MINUTE, sigma: 0.3, of: 'A/T1' },
      { kind: 'probe', at: T - 2000, sigma: 0.1, of: 'A/T1' },
    ],
    surer: 'density',
    waterC: 97.9,
    waterFrom: { kind: 'boiling-check', at: T - 40 * MINUTE },
    facts: {
      temperatureC: 101.3,
      riseC: 3.4,
      brix: 63.4,
      litres: 3.1,
      depthMm: 27,
      leastDepthMm: 15,
      evaporationLPerH: 4.8,
      finishBrix: 66.9,
      finishRiseC: null,
      scorchBrix: 75,
      scorchInS: 1500,
      ceilingC: null,
      probe: 'A/T1',
      heardAt: T - 2000,
      correctionC: -0.3,
      sapFrom: null,
      densityAlone: null,
      volume: { kind: 'top-up', at: T - 12 * MINUTE },
    },
  };
}

/** A good probe and a doubted one, two in one pan that differ, and lines that could not be read. */
export function healthOf(): ProbeHealth {
  const good: ProbeHealth['probes'][number] = {
    id: 'A/T1',
    channel: 'T1',
    port: 'A',
    pan: 'p1',
    isReference: false,
    noiseC: 0.04,
    stepC: 0.06,
    lagS: 6.2,
    losses: 1,
    lostSeconds: 42,
    error: { tooHighC: 0.4, sigmaC: 0.09 },
    driftC: 0.1,
    checkedAt: '2027-04-18T08:10:00-07:00',
    doubt: null,
  };
  const bad = { ...good, id: 'A/T2', channel: 'T2', pan: 'p2', noiseC: null, lagS: null, error: null, driftC: null };
  return {
    probes: [good, { ...bad, checkedAt: null, doubt: 'the same number, 98.25 °C, for 6 min' }],
    together: [{ pan: 'p1', meanC: 101.3, apartC: 2.4, odd: ['A/T3'], probes: ['A/T1', 'A/T3'] }],
    refused: [
      {
        port: 'A',
        reasons: [{ reason: 'no number', count: 12 }],
        last: [{ t: T - 1000, line: 'T1=,,<b>x', why: 'no number: T1=' }],
      },
    ],
  };
}
