// An invented moment of a boil at Tarn Hollow, for tests of the screen's words.
import { alarmHistory, startHistory } from '../../src/core/boil/alarm-history.ts';
import type { AlarmView, Now, Reading, Settings } from '../../src/screen/client/types.ts';

export const metric: Settings = {
  temperature: 'C',
  volume: 'litre',
  length: 'mm',
  pressure: 'hpa',
  mass: 'kg',
  strength: 'brix',
  power: 'watt',
  theme: 'system',
  loudness: 'loud',
  near_finish_lead_s: 600,
  scorch_lead_s: 240,
  low_level_lead_s: 600,
  spoken_calls: false,
  minute_tick: false,
  second_channel: { command: [] },
};

export const american: Settings = {
  ...metric,
  temperature: 'F',
  volume: 'us-gallon',
  length: 'inch',
  pressure: 'inhg',
  mass: 'pound',
  power: 'btu-per-hour',
};

export const reading: Reading = {
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
  top_up_in_s: null,
  stage: 'near-finish',
  probe: 'ok',
};

export const alarm: AlarmView = {
  alarm: 'near-finish',
  pan: 'p1',
  port: null,
  priority: 'medium',
  condition: 'active',
  answered: false,
  since: 60_000,
  asideUntil: null,
  asideReason: null,
  why: 'about 9 min to 66.9 °Bx',
  title: 'Nearly done',
  means: 'In a few minutes this is syrup.',
  todo: 'Have the filter ready.',
};

/** Half an hour into a boil that was lit at 07:30. */
export const moment: Now = {
  kind: 'now',
  view: 'live',
  mode: 'live',
  boil: 'tarn-hollow',
  header: {
    recording: 'panwarden',
    version: 1,
    started: '2027-04-18T07:30:00-07:00',
    ports: [{ id: 'A' }],
    probes: [
      { id: 'A/1', port: 'A', channel: 'T1' },
      { id: 'A/2', port: 'A', channel: 'T2' },
    ],
    pans: [{ id: 'p1', name: 'Front pot', probe: 'A/1' }, { id: 'p2' }],
  },
  t: 1_800_000,
  clock: '2027-04-18T15:00:00.000Z',
  speed: 1,
  ended: false,
  readings: [reading],
  limits: [],
  water: { celsius: 97.9, plusMinus: 0.4, from: { kind: 'altitude', at: null } },
  probes: [
    { id: 'A/1', port: 'A', channel: 'T1', pan: 'p1', celsius: 97.8, ageSeconds: 1, periodSeconds: 1, state: 'ok' },
    {
      id: 'A/2',
      port: 'A',
      channel: 'T2',
      pan: null,
      celsius: null,
      ageSeconds: null,
      periodSeconds: null,
      state: 'lost',
    },
  ],
  ports: [],
  alarms: [],
  sound: { priority: null, silencedUntil: null },
  unanswered: null,
  history: alarmHistory(startHistory(), []),
  marks: [],
  next: { what: 'watch', pan: null, at: null, low: null, high: null, text: null },
  kept: 10,
  pours: [],
  advice: [],
  notices: [],
  replay: null,
};
