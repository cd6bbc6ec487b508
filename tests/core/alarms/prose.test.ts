// DEVELOPERS.md tells the truth of the alarms: every name, priority, delay and lead in its tables is the code's.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { REPEAT_ACKNOWLEDGED_MS, REPEAT_UNANSWERED_MS } from '../../../src/core/alarms/engine.ts';
import { PAN_RULES } from '../../../src/core/alarms/rules.ts';
import { ALARM_WORDS } from '../../../src/core/alarms/words.ts';
import { leadTimes } from '../../../src/core/boil/lead-times.ts';
import { settingsSchema } from '../../../src/protocol/messages.ts';
import { tarnHollow } from '../boil/tarn-hollow.ts';

const prose = readFileSync(new URL('../../../DEVELOPERS.md', import.meta.url), 'utf8');

/** The cells of a section's first table, row by row, without its head. */
function tableOf(heading: string): string[][] {
  const section = prose.slice(prose.indexOf(`### ${heading}`)).split(/\n###? /u)[0]!;
  const rows = section.split('\n').filter((line) => line.startsWith('|'));
  return rows.slice(2).map((row) =>
    row
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
}

const nameOf = (cell: string | undefined): string => (cell ?? '').replaceAll('`', '');
const reasons = tableOf('4.1');
const limits = tableOf('4.2');

test('every alarm of the contract has its cause, consequence, cure, time and priority', () => {
  expect(reasons.map(([name]) => nameOf(name))).toEqual(Object.keys(ALARM_WORDS));
  for (const cells of reasons) expect(cells.filter((cell) => cell !== '')).toHaveLength(6);
});

test('the delays are those of the rules, and what is not raised yet is named', () => {
  const delays = new Map(limits.map((cells) => [nameOf(cells[0]), cells[3]]));
  for (const { alarm, onDelayMs, offDelayMs } of PAN_RULES) {
    expect([alarm, delays.get(alarm)]).toEqual([alarm, `${onDelayMs / 1000} / ${offDelayMs / 1000} s`]);
  }
  const missing = Object.keys(ALARM_WORDS).filter((name) => !delays.has(name));
  const said = /^(.+) are in the contract and are not raised yet/mu.exec(prose)?.[1] ?? '';
  expect([...said.matchAll(/`([a-z-]+)`/gu)].map(([, name]) => name)).toEqual(missing);
});

test('the leads are those of the program', () => {
  const { nearFinishLeadS, scorchLeadS, lowLevelLeadS } = leadTimes(tarnHollow());
  const settings = settingsSchema.parse({});
  expect([nearFinishLeadS, scorchLeadS, lowLevelLeadS]).toEqual([
    settings.near_finish_lead_s,
    settings.scorch_lead_s,
    settings.low_level_lead_s,
  ]);
  const raisedWhen = (alarm: string) => limits.find(([name]) => nameOf(name) === alarm)?.[1];
  expect(raisedWhen('near-finish')).toContain(`lead (${nearFinishLeadS} s)`);
  expect(raisedWhen('scorch-risk')).toContain(`lead (${scorchLeadS} s)`);
  expect(raisedWhen('low-level')).toContain(`lead (${lowLevelLeadS} s)`);
});

test('the repeats are those of the engine', () => {
  expect(prose).toContain(`still there ${REPEAT_ACKNOWLEDGED_MS / 60_000} min later`);
  expect(REPEAT_UNANSWERED_MS, 'counted by the minute').toBe(60_000);
});
