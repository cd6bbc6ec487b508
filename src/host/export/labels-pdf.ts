// A sheet of labels for the jars of a boil: what is known is printed, what is not has a line to write on.
import { formatNumber, formatStrength } from '../../core/quantities/format.ts';
import { volumeFromLitres } from '../../core/quantities/units.ts';
import type { BoilPage, Jars } from '../../core/season/records.ts';
import type { Tongue } from '../../language/tongue.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { Settings } from '../../protocol/messages.ts';
import { boilSource } from './boil-source.ts';
import { dayText } from './boil-time.ts';
import { settingsOf } from './report-data.ts';
import { MARGIN, Sheet } from './sheet.ts';
import type { Paper } from '../../core/quantities/paper.ts';
import { syrupCalled } from './syrup-words.ts';

export interface LabelOptions {
  paper: Paper;
  /** The person's own words, on every label. */
  text: string;
  /** What they are written in. */
  tongue: Tongue;
}

const COLUMNS = 3;
const ROWS = 7;
const MOST_SHEETS = 20;
const BLANK = '____________';

/**
 * One label for each jar of the boil's page, a sheet full where it names none; at most 20 sheets. The kind of syrup is what
 * the pans were said to hold; no grade is claimed. Throws NotebookProblem (2) when there is no such boil.
 */
export async function* labelsPdf(notebook: Notebook, boil: string, options: LabelOptions): AsyncGenerator<Uint8Array> {
  const source = boilSource(notebook, boil);
  const { header } = source;
  const { tongue } = options;
  const own = header.name || source.boil;
  const name = source.practice ? tongue.say('label.practice', { name: own }) : own;
  const title = tongue.say('label.title', { name });
  const sheet = new Sheet({ paper: options.paper, title, date: new Date(header.started), tongue });
  const about = {
    syrup: syrupCalled(header, tongue),
    name,
    day: dayText(header.started),
    text: options.text,
    settings: settingsOf(notebook),
    tongue,
  };
  const labels = labelsOf(notebook.page(source.boil), about);
  labels.forEach((lines, index) => {
    const place = index % (COLUMNS * ROWS);
    if (index > 0 && place === 0) sheet.addPage();
    drawLabel(sheet, lines, place);
  });
  sheet.onEveryPage(() => drawAside(sheet, tongue.say('label.aside')));
  yield* sheet.finished('');
}

interface About {
  syrup: string;
  name: string;
  day: string;
  text: string;
  settings: Settings;
  tongue: Tongue;
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

/** What it is first, then the boil's name; density only where somebody measured it. */
function linesOf(page: BoilPage, jar: Jars | null, about: About): string[] {
  const { syrup, name, day, text, settings, tongue } = about;
  const brix = page.syrup?.brix;
  const density = brix === undefined ? BLANK : tongue.amount(formatStrength(brix, brix, brix, settings.strength));
  return [
    syrup,
    name,
    tongue.say('label.date', { date: tongue.day(jar?.filled ?? day) }),
    tongue.say('label.lot', { lot: jar?.lot ?? BLANK }),
    tongue.say('label.volume', { volume: jar === null ? BLANK : jarVolume(jar.litres, settings, tongue) }),
    tongue.say('label.density', { density }),
    ...(text.trim() === '' ? [] : [text.trim()]),
  ];
}

/** Fluid ounces in a gallon: 128 of the US, 160 imperial (NIST Handbook 44, appendix C; from memory). */
const OUNCES = {
  'us-gallon': [128, 'unit.us_fluid_ounce'],
  'imperial-gallon': [160, 'unit.imperial_fluid_ounce'],
} as const;

/** "250 mL"; beside gallons "16 US fl oz (473 mL)", for nobody counts a jar in gallons. */
function jarVolume(litres: number, { volume }: Settings, tongue: Tongue): string {
  const metric =
    litres < 1 ? `${formatNumber(litres * 1000, 0)} mL` : `${tongue.digits(String(Number(litres.toFixed(2))))} L`;
  if (volume === 'litre') return metric;
  const [ounces, symbol] = OUNCES[volume];
  const number = tongue.digits(String(Number((volumeFromLitres(litres, volume) * ounces).toFixed(1))));
  return `${number} ${tongue.say(symbol)} (${metric})`;
}

function drawLabel(sheet: Sheet, [syrup = '', name = '', ...lines]: string[], place: number): void {
  const width = (sheet.width - 2 * MARGIN) / COLUMNS;
  const height = (sheet.doc.page.height - 2 * MARGIN) / ROWS;
  const x = MARGIN + (place % COLUMNS) * width;
  const y = MARGIN + Math.floor(place / COLUMNS) * height;
  const line = { width: width - 20, oneLine: true };
  sheet.doc.rect(x, y, width, height).dash(2, { space: 3 }).lineWidth(0.4).strokeColor('#999').stroke().undash();
  sheet.text(syrup, x + 10, y + 9, { ...line, size: 13, bold: true });
  sheet.text(name, x + 10, y + 25, { ...line, size: 9, bold: true });
  const [date, lot, volume, density, own] = lines;
  [date, lot, volume, density].forEach((words, index) => {
    sheet.text(words ?? '', x + 10, y + 38 + index * 12, { ...line, size: 9 });
  });
  if (own !== undefined) sheet.text(own, x + 10, y + 87, { ...line, size: 8 });
}

/** Beside the labels, for whoever cuts them: what a label has to say is a matter of the place. */
function drawAside(sheet: Sheet, words: string): void {
  const { doc } = sheet;
  doc.save().rotate(-90, { origin: [14, doc.page.height - MARGIN] });
  sheet.text(words, 14, doc.page.height - MARGIN, {
    size: 7,
    colour: '#555',
    width: doc.page.height - 2 * MARGIN,
    oneLine: false,
  });
  doc.restore();
}
