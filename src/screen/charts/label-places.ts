// Where the names of a chart's lines stand: clear of the curve and of each other, or left out where there is no room.

export interface Spot {
  x: number;
  /** The text's lower edge, px from the top. */
  y: number;
}

export interface Wanted {
  width: number;
  height: number;
  /** The lower edges that the text may have, px, the best first. */
  rows: readonly number[];
  /** Between which it may stand, px. */
  left: number;
  right: number;
}

/** A text that stands already. */
export interface Taken extends Spot {
  width: number;
  height: number;
}

const GAP = 6;
/** Between two texts over each other, px. */
const ROW_GAP = 2;
/** Where along its line a text is tried, as a share of the room: left, the middle, right, and only then between. */
const SHARES = [0, 0.5, 1, 0.25, 0.75];

function touches(one: Taken, other: Taken): boolean {
  return (
    one.x < other.x + other.width + GAP &&
    other.x < one.x + one.width + GAP &&
    one.y + ROW_GAP > other.y - other.height &&
    other.y + ROW_GAP > one.y - one.height
  );
}

/** Whether a text touches nothing of what `stands`. */
export const isFree = (place: Taken, stands: readonly Taken[]): boolean =>
  !stands.some((other) => touches(place, other));

/** The first of some places for one text that touches nothing of what `stands`; the first of all where every one does. */
export const freePlace = (places: readonly [Taken, ...Taken[]], stands: readonly Taken[]): Taken =>
  places.find((place) => isFree(place, stands)) ?? places[0];

/**
 * Where the words of marks stand in a row with its lower edge at `y`, px, in the order of the marks along it: from its
 * mark to the right, else up to it from the left. Null for one that would pass an edge, or touch the word before it, what
 * `stands` already, or the curve; its mark then stands without words.
 */
export function wordsInRow(
  marks: readonly { x: number; width: number }[],
  { y, height, left, right }: { y: number; height: number; left: number; right: number },
  { curve, stands }: { curve: readonly Spot[]; stands: readonly Taken[] },
): (Spot | null)[] {
  const taken = [...stands];
  return marks.map(({ x, width }) => {
    const place = [x, x - width]
      .map((at): Taken => ({ x: at, y, width, height }))
      .find((each) => each.x >= left && each.x + width <= right && isFree(each, taken) && !isCrossed(each, curve));
    if (place === undefined) return null;
    taken.push(place);
    return { x: place.x, y };
  });
}

function isCrossed(place: Taken, curve: readonly Spot[]): boolean {
  return curve.some(
    ({ x, y }) =>
      x >= place.x - GAP && x <= place.x + place.width + GAP && y >= place.y - place.height - GAP && y <= place.y + GAP,
  );
}

/** Between a line and the name over or under it, px. */
const OFF_LINE_PX = 5;

/**
 * The lower edges that the name of a level line may have, the best first: in the line, which it breaks; over it; under
 * it. None that would cover another line, for it would name that one.
 */
export function rowsAt(line: number, height: number, others: readonly number[]): number[] {
  return [line + height / 2, line - OFF_LINE_PX, line + height + OFF_LINE_PX].filter(
    (y) => !others.some((other) => other > y - height - 2 && other < y + 2),
  );
}

/**
 * The places of texts in the order of what matters most; null for one that finds no room. A text takes the first of its
 * rows, and in it the first place that the curve leaves free: left, middle, right, then between these; where the curve is
 * everywhere it stands over it. None touches what `stands` already.
 */
export function labelPlaces(
  wanted: readonly Wanted[],
  curve: readonly Spot[],
  stands: readonly Taken[] = [],
): (Taken | null)[] {
  const taken = [...stands];
  return wanted.map(({ width, height, rows, left, right }) => {
    const spare = right - left - width;
    if (spare < 0) return null;
    const open = rows
      .flatMap((y) => SHARES.map((share): Taken => ({ x: left + spare * share, y, width, height })))
      .filter((place) => isFree(place, taken));
    const chosen = open.find((place) => !isCrossed(place, curve)) ?? open[0] ?? null;
    if (chosen !== null) taken.push(chosen);
    return chosen;
  });
}

/**
 * Where words of so much width and height stand beside a mark on the curve: over or under it, to its right or its left,
 * then further from it; the first place within `area` that touches nothing of what `stands`, that the curve leaves free
 * and, where one does, that the level `lines` leave free, too. Null where there is none: the mark then stands alone.
 */
export function besideMark(
  mark: Spot,
  { width, height }: { width: number; height: number },
  area: { left: number; right: number; top: number; bottom: number },
  { curve, lines, stands }: { curve: readonly Spot[]; lines: readonly number[]; stands: readonly Taken[] },
): Taken | null {
  const right = Math.min(mark.x + MARK_PX, area.right - width);
  const places = BESIDE_ROWS.flatMap((rows) => {
    const away = MARK_PX + rows * height;
    return [right, mark.x - MARK_PX - width].flatMap((x) =>
      [mark.y - away, mark.y + away + height].map((y): Taken => ({ x, y, width, height })),
    );
  }).filter(
    (place) =>
      place.x >= area.left &&
      place.y - height >= area.top &&
      place.y <= area.bottom &&
      isFree(place, stands) &&
      !isCrossed(place, curve),
  );
  const isOnLine = ({ y }: Taken): boolean => lines.some((line) => line > y - height && line < y);
  return places.find((place) => !isOnLine(place)) ?? places[0] ?? null;
}

/** Between a mark and its words. */
const MARK_PX = 18;
/** How far from its mark words are tried, in heights of the text. */
const BESIDE_ROWS = [0, 1, 2, 3];
