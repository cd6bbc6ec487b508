// The colours, patterns and letters of a chart, taken from the theme that the page has.

export const FACE = "Arial, 'Liberation Sans', Helvetica, system-ui, sans-serif";
/** The shelf is three metres away, a phone is in the hand: px of the chart's text by the chart's width. */
const WIDE_PX = 700;
/** The radius of what is marked by a dot or a ring, px. */
export const DOT_PX = 8;
/** Height of a chart’s letters, px, by its width, px. */
export const textPx = (width: number): number => (width >= WIDE_PX ? 24 : 18);
/** The font of labels in a chart of that width. */
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

/** The theme’s colours as an element of the page has them. */
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

/** A tile is drawn once for each colour: a chart that is dragged is drawn sixty times a second. */
const patterns = new Map<string, CanvasPattern | string>();

function tiled(
  context: CanvasRenderingContext2D,
  key: string,
  size: number,
  draw: (pen: CanvasRenderingContext2D) => void,
): CanvasPattern | string {
  const known = patterns.get(key);
  if (known !== undefined) return known;
  const tile = document.createElement('canvas');
  tile.width = size;
  tile.height = size;
  const pen = tile.getContext('2d');
  if (pen !== null) draw(pen);
  const made = context.createPattern(tile, 'repeat') ?? 'transparent';
  patterns.set(key, made);
  return made;
}

/** Slanting strokes: the burning side is told by its pattern as well as by its colour. */
export const hatch = (context: CanvasRenderingContext2D, colour: string): CanvasPattern | string =>
  tiled(context, `hatch ${colour}`, 12, (pen) => {
    pen.strokeStyle = colour;
    pen.globalAlpha = 0.55;
    pen.lineWidth = 2;
    for (const shift of [-12, 0, 12]) {
      pen.beginPath();
      pen.moveTo(shift, 12);
      pen.lineTo(shift + 12, 0);
      pen.stroke();
    }
  });

/** Dots: what is only expected is told from what was seen by its pattern. */
export const stipple = (context: CanvasRenderingContext2D, colour: string): CanvasPattern | string =>
  tiled(context, `stipple ${colour}`, 8, (pen) => {
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
  });

/** Text with a rim of the ground's colour, so that it is legible over lines. */
export function rimmed(context: CanvasRenderingContext2D, inks: Inks, text: string, x: number, y: number): void {
  context.lineWidth = 5;
  context.strokeStyle = inks.ground;
  context.lineJoin = 'round';
  context.strokeText(text, x, y);
  context.fillStyle = inks.ink;
  context.fillText(text, x, y);
}

/** Round a text on its own ground, px: left and right, and over and under. */
const GROUND_PX = 5;

/** Text on a ground of its own, which hides what runs behind it; `x` and `y` are the ground's left and lower edge. */
export function grounded(
  context: CanvasRenderingContext2D,
  inks: Inks,
  text: string,
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
): void {
  context.fillStyle = inks.ground;
  context.beginPath();
  context.roundRect(x, y - height, width, height, GROUND_PX);
  context.fill();
  context.fillStyle = inks.ink;
  context.textBaseline = 'middle';
  context.fillText(text, x + GROUND_PX, y - height / 2 + 1);
  context.textBaseline = 'bottom';
}

/** How wide and high a text is with its ground, px. */
export const groundOf = (context: CanvasRenderingContext2D, text: string, letters: number) => ({
  width: context.measureText(text).width + 2 * GROUND_PX,
  height: letters + 2,
});
