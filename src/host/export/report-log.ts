// The log of a report: marks and alarms in order of time, page after page.
import { alarmTitle } from '../../protocol/alarm-titles.ts';
import { dayText, lengthText, timeText } from './boil-time.ts';
import { markLine, panTitle } from './mark-line.ts';
import type { ReportData } from './report-data.ts';
import { MARGIN, type Sheet } from './sheet.ts';

interface LogLine {
  at: number;
  what: 'Mark' | 'Alarm';
  text: string;
}

/** About sixty pages; more of it stands in the recording. */
const MOST_LINES = 2500;
const TIME_WIDTH = 78;
const WHAT_WIDTH = 38;

export function drawLog(sheet: Sheet, data: ReportData): void {
  const lines = logLines(data);
  if (lines.length === 0) return;
  let y = newPage(sheet);
  const { started } = data.source.header;
  const width = sheet.width - 2 * MARGIN - TIME_WIDTH - WHAT_WIDTH;
  for (const { at, what, text } of lines.slice(0, MOST_LINES)) {
    const height = sheet.heightOf(text, width) + 3;
    if (y + height > sheet.bottom) y = newPage(sheet);
    sheet.text(`${dayText(started, at)} ${timeText(started, at)}`, MARGIN, y);
    sheet.text(what, MARGIN + TIME_WIDTH, y, { bold: what === 'Alarm' });
    sheet.text(text, MARGIN + TIME_WIDTH + WHAT_WIDTH, y, { width });
    y += height;
  }
  const more = lines.length - MOST_LINES;
  if (more > 0) sheet.text(`${more} more lines stand in the recording.`, MARGIN, y, { bold: true });
}

function newPage(sheet: Sheet): number {
  sheet.addPage();
  sheet.text('Marks and alarms', MARGIN, MARGIN, { size: 13, bold: true });
  return MARGIN + 24;
}

function logLines(data: ReportData): LogLine[] {
  const { source, settings, marks, raisings, earlierRaisings } = data;
  const { header } = source;
  const noted: LogLine[] = marks.map(({ at, mark, withdrawn, questioned }) => {
    const remark = withdrawn ? ' (taken back)' : questioned ? ' (asked about, not used)' : '';
    return { at, what: 'Mark', text: markLine(mark, header, settings).slice(0, 1000) + remark };
  });
  const called: LogLine[] = raisings.map((raising) => ({
    at: raising.raisedAt,
    what: 'Alarm',
    text: raisingText(raising, raising.pan === null ? raising.port : panTitle(header, raising.pan)),
  }));
  const earlier: LogLine[] =
    earlierRaisings === 0
      ? []
      : [{ at: 0, what: 'Alarm', text: `${earlierRaisings} alarms before those that are listed` }];
  return [...earlier, ...noted, ...called].sort((one, other) => one.at - other.at);
}

function raisingText(raising: ReportData['raisings'][number], where: string | null): string {
  const { alarm, priority, why, raisedAt, answeredAt, clearedAt, asides, noUse } = raising;
  const after = (t: number): string => lengthText((t - raisedAt) / 1000);
  const course = [
    answeredAt === null ? 'Not answered' : `Answered after ${after(answeredAt)}`,
    ...asides.map(({ reason }) => `put aside${reason === '' ? '' : `: ${reason}`}`),
    clearedAt === null ? 'still there at the end' : `over after ${after(clearedAt)}`,
    ...(noUse ? ['of no use, you said'] : []),
  ].join('; ');
  return `${where === null ? '' : `${where}: `}${alarmTitle(alarm)} (${priority}): ${why}. ${course}.`;
}
