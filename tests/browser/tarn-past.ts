// Invented answers about past boils at Tarn Hollow, in the words of the protocol: a strip, boils beside each other, tuning.
import type { CompareView, Ghost, SmallCurves } from '../../src/protocol/compare-messages.ts';
import type { Command } from '../../src/protocol/messages.ts';
import type { Call, PanStrip, ReplayDifferences, ReplayStrip } from '../../src/protocol/replay-messages.ts';
import type { OffsetsView, TuneScore, TuneSettingRow, TuneView } from '../../src/protocol/tune-messages.ts';
import { liveNow } from './tarn-hollow.ts';

const MINUTE = 60_000;
const LENGTH = 8 * 60 * MINUTE;
const COLUMNS = 120;
const columnMs = LENGTH / COLUMNS;

const columns = (value: (share: number) => number): number[] =>
  Array.from({ length: COLUMNS }, (_, i) => value(i / COLUMNS));

const stripOfPan = (pan: string, slower: number): PanStrip => ({
  pan,
  low: columns((share) => 97.8 + 4 * share ** (3 + slower)),
  high: columns((share) => 98 + 4 * share ** (3 + slower)),
  brix: columns((share) => 3 + 64 * share ** (3 + slower)),
  water: columns(() => 97.9),
  finish: columns(() => 101.9),
});

const call = (minutes: number, priority: Call['priority'], alarm: Call['alarm']): Call => ({
  pan: 'p1',
  port: null,
  alarm,
  priority,
  raised: minutes * MINUTE,
  ended: null,
  why: 'about 9 min to 66.9 °Bx (7–12)',
});

const calls: Call[] = [
  call(60, 'low', 'reminder'),
  call(200, 'medium', 'low-level'),
  call(460, 'medium', 'near-finish'),
  call(470, 'high', 'finish'),
];

const strip: ReplayStrip = {
  length: LENGTH,
  readUntil: LENGTH,
  columnMs,
  pans: [stripOfPan('p1', 0), stripOfPan('p2', 1)],
  calls,
  marks: [{ t: 30 * MINUTE, at: 30 * MINUTE, mark: { kind: 'top-up', pan: 'p1', litres: 4 } }],
  gaps: [{ from: 100 * MINUTE, to: 110 * MINUTE }],
  finishes: [{ pan: 'p1', at: 470 * MINUTE, by: 'called' }],
};

const differences: ReplayDifferences = {
  length: LENGTH,
  readUntil: LENGTH,
  columnMs,
  pans: [{ pan: 'p1', was: stripOfPan('p1', 0), would: stripOfPan('p1', 0.2) }],
  calls: { was: calls, would: [call(452, 'medium', 'near-finish')] },
  differences: [
    {
      pan: 'p1',
      port: null,
      alarm: 'near-finish',
      was: 460 * MINUTE,
      would: 452 * MINUTE,
      later_s: -480,
      words: '8 min sooner',
    },
  ],
};

const boil = { boil: '2027-04-11-first-run', name: 'First run, invented', started: '2027-04-11T08:00:00-07:00' };
const pan = { id: 'p1', name: 'Front pot', sap: 'maple' };
const x = columns((share) => 8 * share - 8);
const line = { pan, isWorking: false, why: null, x, y: columns((share) => 3 + 64 * share ** 3) };

const compare: CompareView = {
  align: 'before-finish',
  what: 'strength',
  working: 0,
  pans: [pan],
  boils: [
    { ...boil, ...line, t: columns((share) => share * LENGTH) },
    { ...boil, boil: 'second', ...line, y: columns((share) => 3 + 64 * share ** 4), t: columns((s) => s * LENGTH) },
  ],
  untold: [],
  differences: [
    {
      boil: 'second',
      fromBrix: 30,
      toBrix: 60,
      minutes: 88,
      minutesFirst: 70,
      kg: 6,
      kgFirst: 6.1,
      kgPerHour: 4.1,
      kgPerHourFirst: 5.2,
      sentence: '18 min slower from 30 to 60 °Bx: 1.1 kg/h less water off.',
    },
  ],
};

const small: SmallCurves = {
  year: 2027,
  working: 0,
  boils: [
    { ...boil, ...line, x: columns((share) => 8 * share), y: columns((share) => 98 + 4 * share ** 3) },
    { ...boil, boil: 'third', pan: null, isWorking: false, why: 'No pan was seen.', x: [], y: [] },
  ],
};

const ghost: Ghost = {
  ...boil,
  pan,
  alignedBy: 'strength',
  t: columns((share) => share * LENGTH),
  celsius: columns((share) => 97.9 + 4 * share ** 2),
  brix: columns((share) => 3 + 64 * share ** 2),
  finished: LENGTH,
};

const score: TuneScore = {
  near_finish_lead_s: 540,
  finish_brix: 67.2,
  scorch_lead_s: null,
  false_calls: 1,
  alarms: 19,
  calls_per_hour: 2.1,
};
const settingRow = (name: string, patch: Record<string, unknown>): TuneSettingRow => ({
  name,
  patch,
  sum: score,
  cost: 1.4,
  truths: 3,
  done: 5,
  boils: [
    {
      boil: boil.boil,
      title: boil.name,
      started: boil.started,
      why: null,
      score,
      cost: 2.2,
      untold: null,
      worst: { at: 460 * MINUTE, pan: 'p1', words: 'called 4 min after its finish' },
    },
  ],
});

/** Two settings run through, the search behind them; `part` says what is otherwise. */
const tuned = (part: Partial<TuneView> = {}): TuneView => ({
  running: false,
  stopped: false,
  share: 1,
  secondsLeft: 0,
  done: 5,
  boils: 5,
  settings: [
    settingRow('as it was', {}),
    settingRow('As in Settings now', { settings: { near_finish_lead_s: 600, scorch_lead_s: 240 } }),
  ],
  proposal: {
    settings: { near_finish_lead_s: 840 },
    gains: ['Called 4 min sooner before the finish.'],
    costs: ['2 more calls in 5 boils.'],
    truths: 3,
  },
  problems: ['The boil "2027-03-01-torn" cannot be read.'],
  ...part,
});

const offsets: OffsetsView = { probes: [], working: 0 };

/** undefined for what is of no past boil. */
export function pastAnswer(command: Command): unknown {
  if ('replay_strip' in command) return strip;
  if ('replay_differences' in command) return differences;
  if ('compare' in command) return compare;
  if ('small_curves' in command) return small;
  if ('ghost' in command) return ghost;
  if ('tune_look' in command) return tuned();
  return 'probe_offsets' in command ? offsets : undefined;
}

/** A replay of two of the pans, that stands near its end beside what was expected and what came. */
export const replayedNow = liveNow(2, {
  view: 'replay',
  mode: 'replay',
  replay: {
    playing: false,
    length: 3e7,
    title: 'First',
    started: '2027-04-18T07:30:00-07:00',
    readUntil: 3e7,
    choices: { pans: [] },
    known: [
      {
        pan: 'p1',
        said: { at: 2.9e7, low: 2.8e7, high: 3e7 },
        was: { at: 2.95e7, by: 'called' },
        later_s: 500,
        inRange: true,
      },
    ],
  },
});
