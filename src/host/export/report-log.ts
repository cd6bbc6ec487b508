// The log of a report: marks and alarms in order of time, page after page.
import { amountsInUnits } from '../../core/quantities/written-amounts.ts';
import { hostWords } from '../../language/host-words.ts';
import type { MessageKey, Tongue } from '../../language/tongue.ts';
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import { isFirstPour } from '../../protocol/first-pour.ts';
import type { Settings } from '../../protocol/messages.ts';
import { lengthOfTime, timesInWords } from '../../core/quantities/time.ts';
import { dayText, timeText } from './boil-time.ts';
import { markLine, panTitle } from './mark-line.ts';
import type { ReportData } from './report-data.ts';
import { MARGIN, type Sheet } from './sheet.ts';

interface LogLine {
  at: number;
  isAlarm: boolean;
  text: string;
}

/** About sixty pages; more of it stands in the recording. */
const MOST_LINES = 2500;
const TIME_WIDTH = 92;
const WHAT_WIDTH = 38;

/** Draws the log on pages of its own; none where nothing was noted and nothing called. */
export function drawLog(sheet: Sheet, data: ReportData, tongue: Tongue): void {
  const lines = logLines(data, tongue);
  if (lines.length === 0) return;
  let y = newPage(sheet, tongue);
  const { started } = data.source.header;
  const width = sheet.width - 2 * MARGIN - TIME_WIDTH - WHAT_WIDTH;
  for (const { at, isAlarm, text } of lines.slice(0, MOST_LINES)) {
    const height = sheet.heightOf(text, width) + 3;
    if (y + height > sheet.bottom) y = newPage(sheet, tongue);
    sheet.text(`${tongue.day(dayText(started, at))} ${timeText(started, at, data.settings, tongue)}`, MARGIN, y);
    sheet.text(tongue.say(isAlarm ? 'paper.log.alarm' : 'paper.log.mark'), MARGIN + TIME_WIDTH, y, { bold: isAlarm });
    sheet.text(text, MARGIN + TIME_WIDTH + WHAT_WIDTH, y, { width });
    y += height;
  }
  const more = lines.length - MOST_LINES;
  if (more > 0) sheet.text(tongue.say('paper.log.more', { count: more }), MARGIN, y, { bold: true });
}

function newPage(sheet: Sheet, tongue: Tongue): number {
  sheet.addPage();
  sheet.text(tongue.say('paper.log'), MARGIN, MARGIN, { size: 13, bold: true });
  return MARGIN + 24;
}

function logLines(data: ReportData, tongue: Tongue): LogLine[] {
  const { source, settings, marks, raisings, earlierRaisings } = data;
  const { header } = source;
  const corrected = new Set(marks.flatMap(({ mark: { corrects } }) => (corrects === undefined ? [] : [corrects])));
  const isCorrected = (id: string | undefined): boolean => id !== undefined && corrected.has(id);
  const noted: LogLine[] = marks.map((each) => {
    const { at, mark, withdrawn, questioned } = each;
    const line = markLine(mark, { header, settings, tongue, first: isFirstPour(each, marks) }).slice(0, 1000);
    const undone = isCorrected(mark.id) ? 'paper.mark.corrected' : 'paper.mark.taken_back';
    const remark = withdrawn ? undone : questioned ? 'paper.mark.asked_about' : null;
    return { at, isAlarm: false, text: remark === null ? line : tongue.say(remark, { line }) };
  });
  const called: LogLine[] = raisings.map((raising) => ({
    at: raising.raisedAt,
    isAlarm: true,
    text: raisingText(raising, raising.pan === null ? raising.port : panTitle(header, raising.pan), settings, tongue),
  }));
  const earlier: LogLine[] =
    earlierRaisings === 0
      ? []
      : [{ at: 0, isAlarm: true, text: tongue.say('paper.log.earlier', { count: earlierRaisings }) }];
  return [...earlier, ...noted, ...called].sort((one, other) => one.at - other.at);
}

type Raising = ReportData['raisings'][number];

/** The words of the screen. */
const PRIORITIES: Record<Raising['priority'], MessageKey> = {
  high: 'alarm.priority.high',
  medium: 'alarm.priority.medium',
  low: 'alarm.priority.low',
};

/** "Over after 11 min; seen after 28 min": what became of a call, in order of time. */
export function courseText(
  {
    raisedAt,
    answeredAt,
    clearedAt,
    asides,
    noUse,
  }: Pick<Raising, 'raisedAt' | 'answeredAt' | 'clearedAt' | 'asides' | 'noUse'>,
  tongue: Tongue,
): string {
  const length = (t: number): string => lengthOfTime((t - raisedAt) / 1000);
  const steps = [
    answeredAt === null
      ? { at: raisedAt, words: tongue.say('paper.call.not_answered') }
      : { at: answeredAt, words: tongue.say('paper.call.answered', { length: length(answeredAt) }) },
    ...asides.map(({ at, reason }) => ({
      at,
      words: reason === '' ? tongue.say('paper.call.aside') : tongue.say('paper.call.aside_why', { reason }),
    })),
    clearedAt === null
      ? { at: Number.MAX_SAFE_INTEGER, words: tongue.say('paper.call.still_there') }
      : { at: clearedAt, words: tongue.say('paper.call.over', { length: length(clearedAt) }) },
  ].toSorted((one, other) => one.at - other.at);
  const said = [...steps.map(({ words }) => words), ...(noUse ? [tongue.say('paper.call.no_use')] : [])];
  const all = said.reduce((before, after) => tongue.say('paper.call.then', { before, after }));
  return `${all.charAt(0).toUpperCase()}${all.slice(1)}`;
}

const withStop = (text: string): string => (/[.!?]$/u.test(text) ? text : `${text}.`);

/** A call as the log prints it, with what became of it; `where` is its pan or board, null for the whole program. */
export function raisingText(raising: Raising, where: string | null, settings: Settings, tongue: Tongue): string {
  const { alarm, priority, why } = raising;
  const amounts = amountsInUnits(why, settings, (amount) => tongue.amount(amount));
  const inUnits = timesInWords(hostWords(amounts, tongue));
  const words = tongue.say('paper.call', {
    title: hostWords(alarmTitle(alarm), tongue),
    priority: tongue.say(PRIORITIES[priority]),
    // Some reasons are sentences of their own.
    why: withStop(alarm === 'reminder' ? why : inUnits),
    course: courseText(raising, tongue),
  });
  return where === null ? words : tongue.say('mark.of_pan', { pan: where, words });
}
