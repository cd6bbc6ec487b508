// A sheet of labels for the jars of a boil: what is known is printed, what is not has a line to write on.
import { formatNumber, formatStrength } from '../../core/quantities/format.ts';
import { volumeFromLitres } from '../../core/quantities/units.ts';
import type { BoilPage, Jars } from '../../core/season/records.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { Settings } from '../../protocol/messages.ts';
import { boilSource } from './boil-source.ts';
import { dayText } from './boil-time.ts';
import { settingsOf } from './report-data.ts';
import { MARGIN, Sheet, type Paper } from './sheet.ts';

export interface LabelOptions {
  paper: Paper;
  /** The person's own words, on every label. */
  text: string;
}

const COLUMNS = 3;
const ROWS = 7;
const MOST_SHEETS = 20;
const BLANK = '____________';

/** Beside the labels, for whoever cuts them: what a label has to say is a matter of the place. */
const ASIDE =
  'Not part of the labels. Ask your food authority what a label must say where you give away or sell: name of the food, weight or volume, maker and address, date, lot, ingredients.';

/**
 * One label for each jar of the boil's page, a sheet full where it names none; at most 20 sheets. Makes no claim of kind
 * or grade: the name is the boil's. Throws NotebookProblem (2) when there is no such boil.
 */
export async function* labelsPdf(notebook: Notebook, boil: string, options: LabelOptions): AsyncGenerator<Uint8Array> {
  const source = boilSource(notebook, boil);
  const { header } = source;
  const name = source.practice ? `PRACTICE: ${header.name ?? source.boil}` : header.name || source.boil;
  const sheet = new Sheet({ paper: options.paper, title: `Labels: ${name}`, date: new Date(header.started) });
  const about = { name, day: dayText(header.started), text: options.text, settings: settingsOf(notebook) };
  const labels = labelsOf(notebook.page(source.boil), about);
  labels.forEach((lines, index) => {
    const place = index % (COLUMNS * ROWS);
    if (index > 0 && place === 0) sheet.addPage();
    drawLabel(sheet, lines, place);
  });
  sheet.onEveryPage(() => drawAside(sheet));
  yield* sheet.finished('');
}

interface About {
  name: string;
  day: string;
  text: string;
  settings: Settings;
}

function labelsOf(page: BoilPage, about: About): string[][] {
  const most = MOST_SHEETS * COLUMNS * ROWS;
  const jars = page.jars ?? [];
  const labels: string[][] = [];
  for (const jar of jars) {
    const lines = linesOf(page, jar, about);
    for (let count = 0; count < jar.count && labels.length < most; count += 1) labels.push(lines);
  }
  if (labels.length > 0) return labels;
  return Array<string[]>(COLUMNS * ROWS).fill(linesOf(page, null, about));
}

/** The name first; density only where somebody measured it. */
function linesOf({ syrup }: BoilPage, jar: Jars | null, { name, day, text, settings }: About): string[] {
  const brix = syrup?.brix;
  return [
    name,
    `Date ${jar?.filled ?? day}`,
    `Lot ${jar?.lot ?? BLANK}`,
    `Volume ${jar === null ? BLANK : jarVolume(jar.litres, settings)}`,
    `Density ${brix === undefined ? BLANK : formatStrength(brix, brix, brix, settings.strength)}`,
    ...(text.trim() === '' ? [] : [text.trim()]),
  ];
}

/** Fluid ounces in a gallon: 128 of the US, 160 imperial (NIST Handbook 44, appendix C; from memory). */
const OUNCES = { 'us-gallon': [128, 'US fl oz'], 'imperial-gallon': [160, 'imp fl oz'] } as const;

/** "250 ml"; beside gallons "8.5 US fl oz (250 ml)", for nobody counts a jar in gallons. */
function jarVolume(litres: number, { volume }: Settings): string {
  const metric = litres < 1 ? `${formatNumber(litres * 1000, 0)} ml` : `${Number(litres.toFixed(2))} L`;
  if (volume === 'litre') return metric;
  const [ounces, symbol] = OUNCES[volume];
  return `${formatNumber(volumeFromLitres(litres, volume) * ounces, 1)} ${symbol} (${metric})`;
}

function drawLabel(sheet: Sheet, [name = '', ...lines]: string[], place: number): void {
  const width = (sheet.width - 2 * MARGIN) / COLUMNS;
  const height = (sheet.doc.page.height - 2 * MARGIN) / ROWS;
  const x = MARGIN + (place % COLUMNS) * width;
  const y = MARGIN + Math.floor(place / COLUMNS) * height;
  sheet.doc.rect(x, y, width, height).dash(2, { space: 3 }).lineWidth(0.4).strokeColor('#999').stroke().undash();
  sheet.text(name, x + 10, y + 10, { size: 13, bold: true, width: width - 20, oneLine: true });
  const [date, lot, volume, density, own] = lines;
  [date, lot, volume, density].forEach((line, index) => {
    sheet.text(line ?? '', x + 10, y + 30 + index * 13, { size: 9, width: width - 20, oneLine: true });
  });
  if (own !== undefined) sheet.text(own, x + 10, y + 84, { size: 8, width: width - 20, oneLine: true });
}

function drawAside(sheet: Sheet): void {
  const { doc } = sheet;
  doc.save().rotate(-90, { origin: [14, doc.page.height - MARGIN] });
  sheet.text(ASIDE, 14, doc.page.height - MARGIN, {
    size: 7,
    colour: '#555',
    width: doc.page.height - 2 * MARGIN,
    oneLine: false,
  });
  doc.restore();
}
