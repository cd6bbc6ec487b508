// Several headers over one boil: what each calls is, to the letter, what a run of that header alone calls.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Entry, Header } from '../../../src/core/boil/entries.ts';
import { mergePatch } from '../../../src/core/boil/merge-patch.ts';
import { startBoil } from '../../../src/core/boil/fold.ts';
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import { foldTools } from '../../../src/host/fold-tools.ts';
import { Folding } from '../../../src/host/folding.ts';
import { runThrough } from '../../../src/host/tuning/run-through.ts';
import { parseEntry } from '../../../src/protocol/recording.ts';
import { shortBoil } from './short-boils.ts';

const LOOK_EVERY_MS = 5000;

function boilOf(text: string): { header: Header; entries: Entry[] } {
  const [head, ...rest] = text.trimEnd().split('\n');
  const entries = rest.flatMap((line) => {
    const parsed = parseEntry(line);
    return parsed.ok ? [parsed.entry] : [];
  });
  return { header: JSON.parse(head!) as Header, entries };
}

const recorded = (name: string) =>
  boilOf(readFileSync(new URL(`../../../fixtures/recordings/${name}.boil.jsonl`, import.meta.url), 'utf8'));

/** A boil in which everything is done that alarms, and not the pans, are asked of: answers, a reminder, calls of the program, a gap, other lead times. */
function eventful(): { header: Header; entries: Entry[] } {
  const { header, entries } = boilOf(shortBoil(4));
  const t = (minutes: number): number => minutes * 60_000 + 7;
  const more: Entry[] = [
    { t: t(3), mark: { kind: 'remind', text: 'skim', seconds: 600 } },
    { t: t(20), called: { pan: null, alarm: 'no-sound', event: 'raised', priority: 'medium', why: 'no page' } },
    { t: t(25), answer: { acknowledge: { pan: null, alarm: 'no-sound' } } },
    { t: t(30), called: { pan: null, alarm: 'no-sound', event: 'cleared', priority: 'medium', why: '' } },
    { t: t(31), set: { settings: { near_finish_lead_s: 1500 } } },
    { t: t(34), mark: { kind: 'remind', text: 'jars', seconds: 60 } },
    { t: t(45), answer: { put_aside: { pan: 'p1', alarm: 'near-finish', seconds: 120, reason: 'here' } } },
    { t: t(47), answer: { silence: { seconds: 60 } } },
  ];
  const isInGap = ({ t: at }: Entry): boolean => at > t(36) && at < t(37);
  const all = [...entries.filter((one) => !isInGap(one)), ...more, { t: t(37), run: 'gap', seconds: 60 } as Entry];
  return { header, entries: all.sort((a, b) => a.t - b.t) };
}

/** The first seven differ in lead times alone. */
const PATCHES: object[] = [
  {},
  { settings: { near_finish_lead_s: 120 } },
  { settings: { near_finish_lead_s: 3000 } },
  { settings: { near_finish_deadband: 5, scorch_lead_s: 1800 } },
  { settings: { near_finish_deadband: 1 } },
  { settings: { low_level_lead_s: 3600, near_finish_lead_s: null } },
  { settings: { scorch_lead_s: 0 } },
  { settings: { finish_probability: 0.95 } },
  { site: { altitude_m: 300 }, settings: { near_finish_lead_s: 60 } },
];

function alone(header: Header, entries: readonly Entry[]): { calls: AlarmTransition[]; history: object } {
  const calls: AlarmTransition[] = [];
  const listener = { alarm: (one: AlarmTransition) => void calls.push(one), readings: () => {} };
  const folding = new Folding(startBoil(header), foldTools, listener, null);
  for (const entry of entries) folding.take(entry, '');
  folding.reach(entries.at(-1)!.t);
  return {
    calls: calls.filter(({ event }) => event === 'raised' || event === 'escalated' || event === 'cleared'),
    history: folding.state.history,
  };
}

test.each([
  ['an eventful boil', eventful],
  ...['scorched', 'pulled-cable', 'birch-below-a-boil'].map((name) => [name, () => recorded(name)] as const),
] as const)('%s: headers that share a fold call as each alone', (_, make) => {
  const { header, entries } = make();
  const headers = PATCHES.map((patch) => {
    const checked = foldTools.checkHeader(mergePatch(header, patch));
    if (!checked.ok) throw new Error(checked.why);
    return checked.header;
  });
  const [first, ...pans] = header.pans!;
  headers.push({ ...header, pans: [{ ...first!, settings: { near_finish_lead_s: 2000 } }, ...pans] });
  const runs = runThrough(headers, entries, LOOK_EVERY_MS);
  const single = headers.map((one) => alone(one, entries));
  expect(runs.map(({ calls }) => calls)).toEqual(single.map(({ calls }) => calls));
  const { beside } = runs[0]!.state;
  expect(beside.map(({ history }) => history)).toEqual([1, 2, 3, 4, 5, 6, 9].map((place) => single[place]!.history));
  const byLeads = runs.slice(0, 7).map(({ calls }) => JSON.stringify(calls));
  expect(new Set(byLeads).size).toBeGreaterThan(2);
  expect(runs[9]!.state).toBe(runs[0]!.state);
  expect(runs[7]!.state).not.toBe(runs[0]!.state);
  expect(runs[8]!.state).not.toBe(runs[7]!.state);
});

test('the eventful boil has a call of each kind that no pan makes', () => {
  const { header, entries } = eventful();
  const text = JSON.stringify(alone(header, entries));
  for (const word of ['reminder', 'no-sound', 'near-finish', '"reason":"here"']) expect(text).toContain(word);
});

test('what is looked at in the fold of the first is the same whoever calls beside it', () => {
  const { header, entries } = eventful();
  const [together] = runThrough([header, { ...header, settings: { near_finish_lead_s: 60 } }], entries, LOOK_EVERY_MS);
  const [single] = runThrough([header], entries, LOOK_EVERY_MS);
  expect(together!.seen.get('p1')!.length).toBeGreaterThan(100);
  expect(together!.seen).toEqual(single!.seen);
  expect(together!.state.history).toEqual(single!.state.history);
});
