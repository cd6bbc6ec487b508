// What the alarms of every fixture ask of one person: raisings an hour, chatter, floods, and how long from the cause to the call.
import { createReadStream, readdirSync } from 'node:fs';
import { readStory } from '../../fixtures/read-story.ts';
import { applyEntry, type BoilState, startBoil } from '../../src/core/boil/fold.ts';
import { alarmHistory } from '../../src/core/boil/alarm-history.ts';
import type { LookBack } from '../../src/core/boil/look-back.ts';
import { median } from '../../src/core/pan/robust-statistics.ts';
import { foldTools } from '../../src/host/fold-tools.ts';
import { readRecording } from '../../src/protocol/recording.ts';

const recordings = new URL('../../fixtures/recordings/', import.meta.url);
const stories = new URL('../../fixtures/stories/', import.meta.url);

interface Called {
  alarm: string;
  pan: string | null;
  t: number;
  /** From the moment at which the cause was found to the call, s. */
  waitedS: number;
}

interface Played {
  name: string;
  hours: number;
  lookBack: LookBack;
  called: Called[];
}

/** What truly happened, and the alarm that tells of it. */
const TELLS: Record<string, string> = {
  'reached-finish': 'finish',
  shallow: 'low-level',
  'passed-ceiling': 'scorch-risk',
  burned: 'scorch-risk',
  'probe-lost': 'probe-lost',
  'port-lost': 'port-lost',
};

export async function alarms(): Promise<void> {
  const all: Played[] = [];
  for (const file of readdirSync(recordings)) all.push(await play(file));
  console.log('  recording                      hours  raised  an hour  worst hour  chatter  floods');
  for (const one of all) console.log(row(one.name, one.hours, [one.lookBack]));
  const hours = all.reduce((sum, one) => sum + one.hours, 0);
  console.log(
    row(
      'all',
      hours,
      all.map(({ lookBack }) => lookBack),
    ),
  );
  console.log('\n  cause found to call, s            calls  middle   worst');
  const byAlarm = Map.groupBy(
    all.flatMap(({ called }) => called),
    ({ alarm }) => alarm,
  );
  for (const [alarm, calls] of byAlarm)
    console.log(
      waitRow(
        alarm,
        calls.map(({ waitedS }) => waitedS),
      ),
    );
  console.log('\n  what truly happened to call, s (negative: called before)');
  for (const one of all) await printTruth(one);
}

async function play(file: string): Promise<Played> {
  let state: BoilState | null = null;
  const pending = new Map<string, number>();
  const called: Called[] = [];
  for await (const item of readRecording(createReadStream(new URL(file, recordings)))) {
    if (item.kind === 'header') state = startBoil(item.header);
    if (item.kind !== 'entry' || state === null) continue;
    applyEntry(state, item.entry, foldTools);
    for (const { alarm, pan, event, t } of state.fresh) {
      const since = pending.get(`${alarm} ${pan}`) ?? t;
      if (event === 'raised') called.push({ alarm, pan, t, waitedS: (t - since) / 1000 });
    }
    pending.clear();
    for (const one of state.book.alarms) {
      if (one.condition === 'pending') pending.set(`${one.alarm} ${one.pan}`, one.since);
    }
  }
  if (state === null) throw new Error(`${file} has no header`);
  const name = file.replace('.boil.jsonl', '');
  return {
    name,
    hours: state.now / 3_600_000,
    lookBack: alarmHistory(state.history, state.marks, state.header).lookBack,
    called,
  };
}

function row(name: string, hours: number, looks: readonly LookBack[]): string {
  const sum = (of: (one: LookBack) => number): number => looks.reduce((all, one) => all + of(one), 0);
  const raised = sum((one) => one.raised);
  const worst = Math.max(...looks.map((one) => one.worstHour));
  const cells = [hours.toFixed(1).padStart(6), pad(raised, 8), (raised / hours).toFixed(2).padStart(9)];
  cells.push(
    pad(worst, 12),
    pad(
      sum((one) => one.chatter),
      9,
    ),
    pad(
      sum((one) => one.floods),
      8,
    ),
  );
  return `  ${name.padEnd(30)}${cells.join('')}`;
}

const pad = (value: number, width: number): string => String(value).padStart(width);

function waitRow(alarm: string, waits: readonly number[]): string {
  const middle = median(waits).toFixed(1).padStart(8);
  return `  ${alarm.padEnd(30)}${pad(waits.length, 9)}${middle}${Math.max(...waits)
    .toFixed(1)
    .padStart(8)}`;
}

/** The call nearest to each thing that truly happened in its pan. */
async function printTruth({ name, called }: Played): Promise<void> {
  const { truth } = await readStory(new URL(`${name}.story.json`, stories));
  for (const { t, what, pan } of truth) {
    const alarm = TELLS[what];
    const calls = called.filter(
      (one) => one.alarm === alarm && (pan === undefined || one.pan === null || one.pan === pan),
    );
    if (alarm === undefined) continue;
    const nearest = calls.toSorted((a, b) => Math.abs(a.t - t) - Math.abs(b.t - t))[0];
    const said = nearest === undefined ? 'never' : ((nearest.t - t) / 1000).toFixed(1);
    console.log(`  ${name.padEnd(30)}${what.padEnd(16)}${alarm.padEnd(13)}${(pan ?? '').padEnd(8)}${said.padStart(9)}`);
  }
}
