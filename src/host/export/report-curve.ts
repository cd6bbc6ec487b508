// Draws the curve of a boil on paper: each pan's temperature, water point and finish, with marks below and alarms above.
import { temperatureFromCelsius } from '../../core/quantities/units.ts';
import type { MessageKey, Tongue } from '../../language/tongue.ts';
import { minutesPastMidnight, timeText } from './boil-time.ts';
import { panTitle } from './mark-line.ts';
import type { PanCurve, ReportData } from './report-data.ts';
import type { Sheet } from './sheet.ts';

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** Told apart on grey paper by their dashes too; darker than 4.5 : 1 on white. */
const PENS: readonly { colour: string; dash: number[] }[] = [
  { colour: '#0b3d91', dash: [] },
  { colour: '#8a2c0d', dash: [6, 2] },
  { colour: '#1b6b3a', dash: [2, 2] },
  { colour: '#6a1b9a', dash: [8, 2, 2, 2] },
  { colour: '#4a4a4a', dash: [1, 3] },
];
const WATER = '#5f6f7f';
const FINISH = '#b00020';
/** What lies further below the water point is the warming up, which says little. */
const BELOW_WATER_C = 6;
const MOST_FLAGS = 400;
const STEPS_MIN = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 10_080, 43_200];
const MOST_TICKS = 10;

/** The key under the plot: names in so many columns, one row under the other. */
const KEY_COLUMNS = 4;
const KEY_ROW = 12;

/** Says what was drawn, or that no pan was ever read. */
export function drawCurve(sheet: Sheet, data: ReportData, box: Box, tongue: Tongue): string {
  const range = rangeOf(data.curves);
  if (range === null) return tongue.say('paper.no_curve');
  const key = Math.ceil(data.curves.length / KEY_COLUMNS) * KEY_ROW;
  const plot = { x: box.x + 30, y: box.y + 12, width: box.width - 30, height: box.height - 34 - key };
  const scale: Scale = { ...plot, ...range, lastT: Math.max(1, data.lastT) };
  drawFrame(sheet, scale, data, tongue);
  sheet.doc.save().rect(plot.x, plot.y, plot.width, plot.height).clip();
  data.curves.forEach((curve, index) => drawPan(sheet, scale, curve, penOf(index)));
  sheet.doc.restore();
  drawFlags(sheet, scale, data);
  drawKey(sheet, data, { ...box, y: box.y + box.height - key });
  return drawnWords(data, scale, tongue);
}

/** What the lines and signs are: only of those that stand in this curve. */
function drawnWords({ curves, marks, raisings }: ReportData, { low, high }: Scale, tongue: Tongue): string {
  const isIn = (value: number | null | undefined): boolean =>
    value !== null && value !== undefined && value >= low && value <= high;
  // A single point makes no line, and what lies beyond the frame is cut off.
  const isLine = (values: (number | null)[]): boolean =>
    values.some((value, point) => isIn(value) && isIn(values[point + 1]));
  const drawn: readonly (readonly [MessageKey, boolean])[] = [
    ['paper.curve.read', curves.some((curve) => !isByHandOnly(curve))],
    ['paper.curve.by_hand', curves.some(({ byHand }) => byHand.length > 0)],
    ['paper.curve.water', curves.some(({ water }) => isLine(water))],
    ['paper.curve.finish', curves.some(({ finish }) => isLine(finish))],
    ['paper.curve.marks', marks.some(({ withdrawn }) => !withdrawn)],
    ['paper.curve.alarms', raisings.length > 0],
  ];
  return drawn.flatMap(([key, isDrawn]) => (isDrawn ? [tongue.say(key)] : [])).join(' ');
}

interface Scale extends Box {
  low: number;
  high: number;
  lastT: number;
}

/** The pen of a pan; once all are in use, the colours come again with the dashes of another. */
function penOf(index: number): { colour: string; dash: number[] } {
  const again = Math.floor(index / PENS.length);
  return { colour: PENS[index % PENS.length]!.colour, dash: PENS[(index + again) % PENS.length]!.dash };
}

const xOf = (scale: Scale, t: number): number => scale.x + (t / scale.lastT) * scale.width;
const xOfPoint = (scale: Scale, point: number, points: number): number =>
  scale.x + ((point + 0.5) / points) * scale.width;
const yOf = (scale: Scale, celsius: number): number =>
  scale.y + ((scale.high - celsius) / (scale.high - scale.low)) * scale.height;

/** In °C; the lowest water point less some, or all there is where no water point is known. */
function rangeOf(curves: readonly PanCurve[]): { low: number; high: number } | null {
  const known = (values: (number | null)[]): number[] => values.filter((value) => value !== null);
  const seen = curves.flatMap(({ low, high, byHand }) => [
    ...known([...low, ...high]),
    ...byHand.map(({ celsius }) => celsius),
  ]);
  if (seen.length === 0) return null;
  const water = curves.flatMap((curve) => known(curve.water));
  const least = leastOf(seen);
  // A boil that never came so far is nothing but its warming up.
  const floor = leastOf([...water, greatestOf(seen)]) - BELOW_WATER_C;
  const low = water.length === 0 ? least : Math.max(least, floor);
  const high = greatestOf([...seen, ...curves.flatMap((curve) => known(curve.finish))]);
  return { low: Math.min(low, high - 2) - 0.5, high: high + 1 };
}

const leastOf = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b), Infinity);
const greatestOf = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), -Infinity);

function drawFrame(sheet: Sheet, scale: Scale, { settings, source }: ReportData, tongue: Tongue): void {
  const { doc } = sheet;
  const unit = settings.temperature;
  for (const value of ticks(temperatureFromCelsius(scale.low, unit), temperatureFromCelsius(scale.high, unit))) {
    const celsius = unit === 'F' ? ((value - 32) * 5) / 9 : value;
    const y = yOf(scale, celsius);
    doc
      .moveTo(scale.x, y)
      .lineTo(scale.x + scale.width, y)
      .lineWidth(0.3)
      .strokeColor('#c8c8c8')
      .stroke();
    sheet.text(tongue.digits(String(value)), scale.x - 28, y - 4, { size: 7, width: 24, align: 'right' });
  }
  sheet.text(`°${unit}`, scale.x - 28, scale.y - 12, { size: 7, width: 24, align: 'right' });
  for (const t of timeTicks(source.header.started, scale.lastT)) {
    const x = xOf(scale, t);
    doc
      .moveTo(x, scale.y)
      .lineTo(x, scale.y + scale.height)
      .lineWidth(0.3)
      .strokeColor('#e0e0e0')
      .stroke();
    sheet.text(timeText(source.header.started, t, settings, tongue), x - 15, scale.y + scale.height + 9, {
      size: 7,
      width: 30,
      align: 'center',
    });
  }
  doc.rect(scale.x, scale.y, scale.width, scale.height).lineWidth(0.5).strokeColor('#888').stroke();
}

/** Round values of 1, 2 or 5 times a power of ten. */
function ticks(low: number, high: number): number[] {
  const rough = (high - low) / 8;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((part) => part * power).find((size) => size >= rough) ?? power * 10;
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => Number(((first + index) * step).toPrecision(6)));
}

/** Boil times, ms, at round times of day. */
function timeTicks(started: string, lastT: number): number[] {
  const minutes = lastT / 60_000;
  const step = STEPS_MIN.find((size) => minutes / size <= MOST_TICKS) ?? minutes;
  const past = minutesPastMidnight(started);
  const first = Math.ceil(past / step) * step - past;
  const count = Math.floor((minutes - first) / step) + 1;
  return Array.from({ length: Math.max(0, count) }, (_, index) => (first + index * step) * 60_000);
}

function drawPan(
  sheet: Sheet,
  scale: Scale,
  curve: PanCurve,
  { colour, dash }: { colour: string; dash: number[] },
): void {
  strokeLine(sheet, scale, curve.water, WATER, [1, 2], 0.6);
  strokeLine(sheet, scale, curve.finish, FINISH, [4, 2], 0.6);
  const { doc } = sheet;
  curve.low.forEach((low, point) => {
    const high = curve.high[point] ?? null;
    if (low === null || high === null || yOf(scale, low) - yOf(scale, high) < 1) return;
    const x = xOfPoint(scale, point, curve.low.length);
    doc.moveTo(x, yOf(scale, low)).lineTo(x, yOf(scale, high)).undash().lineWidth(0.6).strokeColor(colour).stroke();
  });
  const middle = curve.low.map((low, point) => (low === null ? null : (low + (curve.high[point] ?? low)) / 2));
  strokeLine(sheet, scale, middle, colour, dash, 1);
  const { byHand } = curve;
  if (isByHandOnly(curve)) joinHandReadings(sheet, scale, byHand, colour);
  for (const { at, celsius } of byHand)
    doc.circle(xOf(scale, at), yOf(scale, celsius), HAND_DOT).fillColor(colour).fill();
}

const HAND_DOT = 2;
const isByHandOnly = ({ low }: PanCurve): boolean => low.every((celsius) => celsius === null);

/** Thin and dotted: an aid to the eye, for between two readings nobody looked. */
function joinHandReadings({ doc }: Sheet, scale: Scale, byHand: PanCurve['byHand'], colour: string): void {
  byHand.forEach(({ at, celsius }, index) => {
    const [x, y] = [xOf(scale, at), yOf(scale, celsius)];
    if (index === 0) doc.moveTo(x, y);
    else doc.lineTo(x, y);
  });
  if (byHand.length > 1) doc.dash(1, { space: 1.5 }).lineWidth(0.6).strokeColor(colour).stroke().undash();
}

/** Lifts the pen where nothing was read. */
function strokeLine(
  { doc }: Sheet,
  scale: Scale,
  values: readonly (number | null)[],
  colour: string,
  dash: number[],
  width: number,
): void {
  let isDown = false;
  values.forEach((value, point) => {
    if (value === null) {
      isDown = false;
      return;
    }
    const [x, y] = [xOfPoint(scale, point, values.length), yOf(scale, value)];
    if (isDown) doc.lineTo(x, y);
    else doc.moveTo(x, y);
    isDown = true;
  });
  if (dash.length > 0) doc.dash(dash[0]!, { space: dash[1] ?? dash[0]! });
  else doc.undash();
  doc.lineWidth(width).strokeColor(colour).stroke().undash();
}

function drawFlags({ doc }: Sheet, scale: Scale, { marks, raisings }: ReportData): void {
  const below = scale.y + scale.height;
  for (const { at, withdrawn } of marks.slice(0, MOST_FLAGS)) {
    if (withdrawn) continue;
    const x = xOf(scale, at);
    doc
      .moveTo(x, below)
      .lineTo(x, below + 6)
      .lineWidth(0.7)
      .strokeColor('#1c1c1c')
      .stroke();
  }
  for (const { raisedAt } of raisings) {
    const x = xOf(scale, raisedAt);
    doc
      .polygon([x - 3, scale.y - 7], [x + 3, scale.y - 7], [x, scale.y - 1])
      .fillColor(FINISH)
      .fill();
  }
}

function drawKey(sheet: Sheet, { curves, source }: ReportData, { x, y: top, width }: Box): void {
  const step = width / KEY_COLUMNS;
  curves.forEach((curve, index) => {
    const { colour, dash } = penOf(index);
    const left = x + (index % KEY_COLUMNS) * step;
    const y = top + Math.floor(index / KEY_COLUMNS) * KEY_ROW;
    if (isByHandOnly(curve)) {
      sheet.doc
        .circle(left + 10, y + 4, HAND_DOT)
        .fillColor(colour)
        .fill();
    } else {
      if (dash.length > 0) sheet.doc.dash(dash[0]!, { space: dash[1] ?? dash[0]! });
      sheet.doc
        .moveTo(left, y + 4)
        .lineTo(left + 20, y + 4)
        .lineWidth(1.2)
        .strokeColor(colour)
        .stroke()
        .undash();
    }
    sheet.text(panTitle(source.header, curve.pan), left + 24, y, { size: 8, width: step - 28, oneLine: true });
  });
}
