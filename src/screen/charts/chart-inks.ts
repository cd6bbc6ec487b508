// The colours, patterns and letters of a chart, taken from the theme that the page has.

export const FACE = "Arial, 'Liberation Sans', Helvetica, system-ui, sans-serif";
/** The shelf is three metres away, a phone is in the hand: px of the chart's text by the chart's width. */
const WIDE_PX = 700;
/** The radius of what is marked by a dot or a ring, px. */
export const DOT_PX = 8;
export const textPx = (width: number): number => (width >= WIDE_PX ? 24 : 18);
export const labelFont = (context: { chart: { width: number } }) => ({
  size: textPx(context.chart.width),
  weight: 600,
  family: FACE,
});

export interface Inks {
  ink: string;
  muted: string;
  grid: string;
  ground: string;
  water: string;
  finish: string;
  scorch: string;
  reading: string;
  band: string;
}

export function inksOf(element: Element): Inks {
  const style = getComputedStyle(element);
  const read = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: read('--ink'),
    muted: read('--ink-soft'),
    grid: read('--hairline'),
    ground: read('--card'),
    water: read('--line-water'),
    finish: read('--line-finish'),
    scorch: read('--line-scorch'),
    reading: read('--line-reading'),
    band: read('--line-band'),
  };
}

/** Slanting strokes: the burning side is told by its pattern as well as by its colour. */
export function hatch(context: CanvasRenderingContext2D, colour: string): CanvasPattern | string {
  const tile = document.createElement('canvas');
  tile.width = 12;
  tile.height = 12;
  const pen = tile.getContext('2d');
  if (pen === null) return 'transparent';
  pen.strokeStyle = colour;
  pen.globalAlpha = 0.55;
  pen.lineWidth = 2;
  for (const shift of [-12, 0, 12]) {
    pen.beginPath();
    pen.moveTo(shift, 12);
    pen.lineTo(shift + 12, 0);
    pen.stroke();
  }
  return context.createPattern(tile, 'repeat') ?? 'transparent';
}

/** Dots: what is only expected is told from what was seen by its pattern. */
export function stipple(context: CanvasRenderingContext2D, colour: string): CanvasPattern | string {
  const tile = document.createElement('canvas');
  tile.width = 8;
  tile.height = 8;
  const pen = tile.getContext('2d');
  if (pen === null) return 'transparent';
  pen.fillStyle = colour;
  pen.globalAlpha = 0.6;
  for (const [x, y] of [
    [2, 2],
    [6, 6],
  ] as const) {
    pen.beginPath();
    pen.arc(x, y, 1.3, 0, 2 * Math.PI);
    pen.fill();
  }
  return context.createPattern(tile, 'repeat') ?? 'transparent';
}

/** Text with a rim of the ground's colour, so that it is legible over lines. */
export function rimmed(context: CanvasRenderingContext2D, inks: Inks, text: string, x: number, y: number): void {
  context.lineWidth = 5;
  context.strokeStyle = inks.ground;
  context.lineJoin = 'round';
  context.strokeText(text, x, y);
  context.fillStyle = inks.ink;
  context.fillText(text, x, y);
}
