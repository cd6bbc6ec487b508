// The report of a boil on paper: one page of figures and curve, then the log.
import type { Notebook } from '../../notebook/contract.ts';
import { dayText, lengthText, timeText } from './boil-time.ts';
import { figureLines } from './figure-words.ts';
import type { SliceOptions } from './in-slices.ts';
import { drawCurve } from './report-curve.ts';
import { reportData, type ReportData } from './report-data.ts';
import { drawLog } from './report-log.ts';
import { MARGIN, Sheet, type Paper } from './sheet.ts';

export interface ReportOptions extends SliceOptions {
  paper: Paper;
}

const LINE = 12.5;
const LEAST_CURVE = 180;
const PRACTICE = 'Practice boil: the program made it up, no sap was boiled.';

/** The file in pieces; the same boil gives the same bytes. Throws NotebookProblem (2) when there is no such boil. */
export async function* reportPdf(notebook: Notebook, boil: string, options: ReportOptions): AsyncGenerator<Uint8Array> {
  const data = await reportData(notebook, boil, options);
  const { header, practice } = data.source;
  const title = titleOf(data);
  const sheet = new Sheet({ paper: options.paper, title, date: new Date(header.started) });
  let y = drawHead(sheet, data, title);
  y = drawFigures(sheet, data, y);
  y = drawWords(sheet, data, y);
  drawCurveBelow(sheet, data, y);
  drawLog(sheet, data);
  if (practice) sheet.onEveryPage(() => drawPractice(sheet));
  yield* sheet.finished(`${title}, ${dayText(header.started)}`);
}

const titleOf = ({ source: { header, boil } }: ReportData): string => (header.name ?? '') || boil;

function drawHead(sheet: Sheet, { source: { header, practice }, lastT }: ReportData, title: string): number {
  const { started, site } = header;
  sheet.text(title, MARGIN, MARGIN, { size: 18, bold: true, oneLine: true });
  const parts = [
    `${dayText(started)}, ${timeText(started, 0)} to ${timeText(started, lastT)} (${lengthText(lastT / 1000)})`,
    ...(site?.name === undefined || site.name === '' ? [] : [site.name]),
  ];
  sheet.text(parts.join(' · '), MARGIN, MARGIN + 23, { size: 10, oneLine: true });
  if (!practice) return MARGIN + 44;
  sheet.text(PRACTICE, MARGIN, MARGIN + 37, { size: 10, bold: true, colour: '#b00020' });
  return MARGIN + 58;
}

/** Two columns, read downwards. */
function drawFigures(sheet: Sheet, { figures, settings }: ReportData, top: number): number {
  const lines = figureLines(figures, settings);
  const rows = Math.ceil(lines.length / 2);
  const width = (sheet.width - 2 * MARGIN) / 2;
  lines.forEach(({ title, value, from }, index) => {
    const x = MARGIN + (index < rows ? 0 : width);
    const y = top + (index % rows) * LINE;
    sheet.text(title, x, y, { size: 8.5, width: 112, oneLine: true });
    const isKnown = from !== '';
    sheet.text(value, x + 112, y, {
      size: 8.5,
      bold: isKnown,
      colour: isKnown ? '#1c1c1c' : '#666',
      width: 104,
      oneLine: true,
    });
    sheet.text(from, x + 214, y + 1, { size: 6.5, colour: '#666', width: width - 216, oneLine: true });
  });
  return top + rows * LINE + 6;
}

/** What the person wrote about it, as much as leaves room for the curve. */
function drawWords(sheet: Sheet, { page }: ReportData, top: number): number {
  const words: [string, string | undefined][] = [
    ['Taste', page.taste],
    ['Colour', page.colour],
    ['Next time', page.next_time],
    ['Notes', page.notes],
  ];
  let y = top;
  for (const [title, text] of words) {
    if (text === undefined || text.trim() === '' || y + LEAST_CURVE + 30 > sheet.bottom) continue;
    sheet.text(`${title}: ${text}`.slice(0, 600), MARGIN, y, { size: 8.5, oneLine: text.length > 110 });
    y += LINE;
  }
  return y;
}

function drawCurveBelow(sheet: Sheet, data: ReportData, top: number): void {
  const box = { x: MARGIN, y: top + 8, width: sheet.width - 2 * MARGIN, height: sheet.bottom - top - 24 };
  const said = drawCurve(sheet, data, box);
  sheet.text(said ?? 'No temperature was read in this boil, so there is no curve.', MARGIN, sheet.bottom - 12, {
    size: 6.5,
    colour: '#555',
    oneLine: said !== null,
  });
}

/** Slanted across the paper, light enough to read through. */
function drawPractice(sheet: Sheet): void {
  const { doc } = sheet;
  const [x, y] = [sheet.width / 2, doc.page.height / 2];
  doc
    .save()
    .rotate(-50, { origin: [x, y] })
    .fillOpacity(0.1);
  sheet.text('PRACTICE', x - 300, y - 50, { size: 100, bold: true, width: 600, align: 'center', colour: '#b00020' });
  doc.restore();
}
