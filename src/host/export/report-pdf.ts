// The report of a boil on paper: one page of figures and curve, then the log.
import type { MessageKey, Tongue } from '../../language/tongue.ts';
import type { Notebook } from '../../notebook/contract.ts';
import { lengthOfTime } from '../../core/quantities/time.ts';
import { dayText, timeText } from './boil-time.ts';
import { figureLines, type FigureLine } from './figure-words.ts';
import type { SliceOptions } from './in-slices.ts';
import { drawCurve } from './report-curve.ts';
import { reportData, type ReportData } from './report-data.ts';
import { drawLog } from './report-log.ts';
import { MARGIN, Sheet } from './sheet.ts';
import type { Paper } from '../../core/quantities/paper.ts';
import { syrupCalled } from './syrup-words.ts';

export interface ReportOptions extends SliceOptions {
  paper: Paper;
  /** What it is written in. */
  tongue: Tongue;
}

const LINE = 12.5;
const FROM_LINE = 9.5;
const TITLE_WIDTH = 122;
const LEAST_CURVE = 180;

/** The file in pieces; the same boil gives the same bytes. Throws NotebookProblem (2) when there is no such boil. */
export async function* reportPdf(notebook: Notebook, boil: string, options: ReportOptions): AsyncGenerator<Uint8Array> {
  const { tongue } = options;
  const data = await reportData(notebook, boil, options);
  const { header, practice } = data.source;
  const title = titleOf(data);
  const sheet = new Sheet({ paper: options.paper, title, date: new Date(header.started), tongue });
  let y = drawHead(sheet, data, title, tongue);
  y = drawFigures(sheet, data, y, tongue);
  y = drawWords(sheet, data, y, tongue);
  drawCurveBelow(sheet, data, y, tongue);
  drawLog(sheet, data, tongue);
  if (practice) sheet.onEveryPage(() => drawPractice(sheet, tongue));
  yield* sheet.finished(`${title}, ${tongue.day(dayText(header.started))}`);
}

const titleOf = ({ source: { header, boil } }: ReportData): string => (header.name ?? '') || boil;

function drawHead(
  sheet: Sheet,
  { source: { header, practice }, settings, lastT }: ReportData,
  title: string,
  tongue: Tongue,
): number {
  const { started, site } = header;
  sheet.text(title, MARGIN, MARGIN, { size: 18, bold: true, oneLine: true });
  const parts = [
    tongue.say('paper.when', {
      day: tongue.day(dayText(started)),
      from: timeText(started, 0, settings, tongue),
      to: timeText(started, lastT, settings, tongue),
      length: lengthOfTime(lastT / 1000),
    }),
    ...(site?.name === undefined || site.name === '' ? [] : [site.name]),
    syrupCalled(header, tongue),
  ];
  sheet.text(parts.join(' · '), MARGIN, MARGIN + 23, { size: 10, oneLine: true });
  if (!practice) return MARGIN + 44;
  sheet.text(tongue.say('paper.practice'), MARGIN, MARGIN + 37, { size: 10, bold: true, colour: '#b00020' });
  return MARGIN + 58;
}

/** Two columns, read downwards, one row of both under the other. */
function drawFigures(sheet: Sheet, data: ReportData, top: number, tongue: Tongue): number {
  const lines = figureLines(data, tongue);
  const rows = Math.ceil(lines.length / 2);
  let y = top;
  for (const [row, left] of lines.slice(0, rows).entries()) {
    const right = lines[rows + row];
    const bottom = drawFigure(sheet, left, MARGIN, y);
    y = Math.max(bottom, right === undefined ? y : drawFigure(sheet, right, sheet.width / 2, y));
  }
  return y + 6;
}

/** Where it comes from stands under it, for beside it no language has the room. Gives where the next one may stand. */
function drawFigure(sheet: Sheet, { title, value, isKnown, from }: FigureLine, x: number, y: number): number {
  const width = sheet.width / 2 - MARGIN - TITLE_WIDTH - 8;
  sheet.text(title, x, y, { size: 8.5, width: TITLE_WIDTH - 6, oneLine: true });
  const under = { size: 8.5, bold: isKnown, colour: isKnown ? '#1c1c1c' : '#666', width };
  const below = y + sheet.text(value, x + TITLE_WIDTH, y, under);
  sheet.text(from, x + TITLE_WIDTH, below - 0.5, { size: 6.5, colour: '#666', width, oneLine: true });
  return below + FROM_LINE;
}

/** What the person wrote about it, as much as leaves room for the curve. */
function drawWords(sheet: Sheet, { page }: ReportData, top: number, tongue: Tongue): number {
  const words: [MessageKey, string | undefined][] = [
    ['notebook.own.taste', page.taste],
    ['notebook.own.colour', page.colour],
    ['paper.next_time', page.next_time],
    ['notebook.own.notes', page.notes],
  ];
  let y = top;
  for (const [title, text] of words) {
    if (text === undefined || text.trim() === '' || y + LEAST_CURVE + 30 > sheet.bottom) continue;
    sheet.text(tongue.say('paper.own_words', { title: tongue.say(title), text }).slice(0, 600), MARGIN, y, {
      size: 8.5,
      oneLine: text.length > 110,
    });
    y += LINE;
  }
  return y;
}

function drawCurveBelow(sheet: Sheet, data: ReportData, top: number, tongue: Tongue): void {
  const box = { x: MARGIN, y: top + 8, width: sheet.width - 2 * MARGIN, height: sheet.bottom - top - 32 };
  sheet.text(drawCurve(sheet, data, box, tongue), MARGIN, sheet.bottom - 18, { size: 6.5, colour: '#555' });
}

/** Slanted across the paper, light enough to read through. */
function drawPractice(sheet: Sheet, tongue: Tongue): void {
  const { doc } = sheet;
  const [x, y] = [sheet.width / 2, doc.page.height / 2];
  doc
    .save()
    .rotate(-50, { origin: [x, y] })
    .fillOpacity(0.1);
  sheet.text(tongue.say('paper.practice_stamp'), x - 300, y - 50, {
    size: 100,
    bold: true,
    width: 600,
    align: 'center',
    colour: '#b00020',
  });
  doc.restore();
}
