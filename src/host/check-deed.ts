// Says why a mark, an answer, a change of the set-up or the time of a fire cannot be taken, before it is written down.
import { ALARM_WORDS } from '../core/alarms/words.ts';
import { type AlarmHistory, isAbout } from '../core/boil/alarm-history.ts';
import { mergePatch } from '../core/boil/merge-patch.ts';
import type { AlarmName, Answer, Header, HeaderPatch, Mark } from '../core/boil/entries.ts';
import { DAY_MS } from '../core/quantities/time.ts';
import { checkHeader } from '../protocol/header-schema.ts';
import type { AlarmView, MarkView } from '../protocol/messages.ts';

/** What is known of the boil when somebody does something; t is ms of boil time. */
export interface Scene {
  t: number;
  header: Header;
  marks: readonly MarkView[];
  alarms: readonly AlarmView[];
  history: AlarmHistory;
}

/** A sentence, or null when the mark can be taken. */
export function whyNotMark(mark: Mark, scene: Scene): string | null {
  // A recording may hold one; who notes it now is told, for the boil knows nothing of the time before it.
  if (mark.happened !== undefined && mark.happened < 0) {
    return `happened is ${mark.happened}, which is before the boil began (0): note what was in a pan by then at 0.`;
  }
  if (mark.happened !== undefined && mark.happened > scene.t) {
    return `happened is ${mark.happened}, which is later than now (${scene.t}): a mark tells of what has been.`;
  }
  if (mark.kind === 'withdraw') return whyNotWithdraw(mark.id, scene.marks);
  if (mark.id !== undefined && hasMark(mark.id, scene.marks)) {
    return `There is a mark with the id "${mark.id}" already: give this one another.`;
  }
  return whyNotAbout(mark, scene) ?? whyNotNames(mark, scene.header);
}

/** A sentence, or null when the answer can be taken. */
export function whyNotAnswer(answer: Answer, scene: Scene): string | null {
  if ('silence' in answer) return null;
  const named = 'acknowledge' in answer ? answer.acknowledge : answer.put_aside;
  const found = scene.alarms.some(
    ({ alarm, pan, port }) =>
      alarm === named.alarm && pan === named.pan && (named.port === undefined || named.port === port),
  );
  if (found) return null;
  const pan = scene.header.pans?.find(({ id }) => id === named.pan);
  const where = named.pan === null ? '' : ` of "${pan?.name ?? named.pan}"`;
  return `There is no call "${titleOf(named.alarm)}"${where} now: there is nothing to answer.`;
}

/** As the screen calls it; a name that no alarm has stays as it was given. */
const titleOf = (alarm: string): string =>
  Object.hasOwn(ALARM_WORDS, alarm) ? ALARM_WORDS[alarm as AlarmName].title : alarm;

/** Nobody begins to enter a boil so long after its fire was lit, ms (judgement): a slip of the day rather. */
const LIT_AT_MOST_MS = 2 * DAY_MS;

/** A sentence, or null when a boil can begin with a fire that was lit at `litMs`; both ms since 1970. */
export function whyNotLit(litMs: number, wallMs: number): string | null {
  if (litMs > wallMs) return 'The fire cannot have been lit later than now: look at the time that was typed.';
  return wallMs - litMs <= LIT_AT_MOST_MS
    ? null
    : 'The fire was lit more than 48 hours ago, and a boil can be entered so long after at the most: look at the time that was typed.';
}

/** The header as it would be, or the sentence why the change cannot be made. */
export function changedHeader(header: Header, patch: HeaderPatch): { header: Header } | { why: string } {
  const checked = checkHeader(mergePatch(header, patch));
  return checked.ok ? { header: checked.header } : { why: `The change does not hold together: ${checked.why}.` };
}

/** A word on an alarm is about one that was raised. */
function whyNotAbout(mark: Mark, { history }: Scene): string | null {
  if (mark.kind !== 'note' || mark.about === undefined) return null;
  const { about } = mark;
  if (history.raisings.some((raising) => isAbout(raising, about))) return null;
  return `There was no alarm "${about.alarm}" raised at ${about.raised} ms: take one from the boil's history.`;
}

function whyNotWithdraw(id: string, marks: readonly MarkView[]): string | null {
  return hasMark(id, marks) ? null : `There is no mark with the id "${id}" to take back.`;
}

function hasMark(id: string, marks: readonly MarkView[]): boolean {
  return marks.some(({ mark }) => mark.kind !== 'withdraw' && mark.id === id);
}

function whyNotNames(mark: Mark, header: Header): string | null {
  const pans = ['pan', 'from', 'to'].flatMap((field) => (field in mark ? [mark[field as keyof Mark] as unknown] : []));
  for (const pan of pans) {
    if (typeof pan === 'string' && !header.pans?.some(({ id }) => id === pan)) return missing('pan', pan, header.pans);
  }
  if ('probe' in mark && mark.probe !== undefined && !header.probes?.some(({ id }) => id === mark.probe)) {
    return missing('probe', mark.probe, header.probes);
  }
  return null;
}

function missing(what: string, id: string, there: readonly { id: string }[] | undefined): string {
  const names = (there ?? []).map((item) => `"${item.id}"`).join(', ');
  return `There is no ${what} "${id}" in this boil; there is ${names === '' ? 'none' : names}.`;
}
