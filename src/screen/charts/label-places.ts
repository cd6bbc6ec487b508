// Where the names of a chart's lines stand: clear of the curve and of each other, or left out where there is no room.

export interface Spot {
  x: number;
  /** The text's lower edge, px from the top. */
  y: number;
}

export interface Wanted {
  width: number;
  height: number;
  /** The lower edge that the text should have, px. */
  y: number;
}

/** A text that stands already. */
export interface Taken extends Spot {
  width: number;
  height: number;
}

const GAP = 6;
/** Where along its line a text is tried, as a share of the room: left, the middle, right, and only then between. */
const SHARES = [0, 0.5, 1, 0.25, 0.75];

function touches(one: Taken, other: Taken): boolean {
  return (
    one.x < other.x + other.width + GAP &&
    other.x < one.x + one.width + GAP &&
    one.y > other.y - other.height &&
    other.y > one.y - one.height
  );
}

/** The first of some places for one text that touches nothing of what `stands`; the first of all where every one does. */
export const freePlace = (places: readonly [Taken, ...Taken[]], stands: readonly Taken[]): Taken =>
  places.find((place) => !stands.some((other) => touches(place, other))) ?? places[0];

/**
 * Where the words of marks stand in a row with its lower edge at `y`, px, each beginning at its mark, in the order of the
 * marks along it; null for one that would touch the word before it or what `stands` already, or would pass `right`.
 */
export function wordsInRow(
  marks: readonly { x: number; width: number }[],
  { y, height, right }: { y: number; height: number; right: number },
  stands: readonly Taken[],
): (Spot | null)[] {
  const taken = [...stands];
  return marks.map(({ x, width }) => {
    const place = { x, y, width, height };
    if (x + width > right || taken.some((other) => touches(place, other))) return null;
    taken.push(place);
    return { x, y };
  });
}

function isCrossed(place: Taken, curve: readonly Spot[]): boolean {
  return curve.some(
    ({ x, y }) =>
      x >= place.x - GAP && x <= place.x + place.width + GAP && y >= place.y - place.height - GAP && y <= place.y + GAP,
  );
}

/**
 * The places of texts between `left` and `right`, in the order of what matters most; null for one that finds no room.
 * Of the places on its own line a text takes the first that the curve leaves free: left, middle, right, where the
 * newest of the curve is, then between these; where the curve is everywhere it stands at the left over it. None touches
 * what `stands` already.
 */
export function labelPlaces(
  wanted: readonly Wanted[],
  curve: readonly Spot[],
  left: number,
  right: number,
  stands: readonly Taken[] = [],
): (Spot | null)[] {
  const taken = [...stands];
  return wanted.map(({ width, height, y }) => {
    const spare = right - left - width;
    const open = SHARES.map((share): Taken => ({ x: left + spare * share, y, width, height })).filter(
      (place) => !taken.some((other) => touches(place, other)),
    );
    const chosen = open.find((place) => !isCrossed(place, curve)) ?? open[0];
    if (chosen === undefined) return null;
    taken.push(chosen);
    return { x: chosen.x, y: chosen.y };
  });
}

/**
 * Where words of so much width and height stand beside a mark on the curve: over or under it, to its right or its left,
 * then further from it; the first place within `area` that touches nothing of what `stands` and that the curve leaves
 * free. Where the curve is everywhere, the first that touches nothing; null where there is none.
 */
export function besideMark(
  mark: Spot,
  { width, height }: { width: number; height: number },
  area: { left: number; right: number; top: number; bottom: number },
  { curve, stands }: { curve: readonly Spot[]; stands: readonly Taken[] },
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
      place.x + width <= area.right &&
      place.y - height >= area.top &&
      place.y <= area.bottom &&
      !stands.some((other) => touches(place, other)),
  );
  return places.find((place) => !isCrossed(place, curve)) ?? places[0] ?? null;
}

/** Between a mark and its words. */
const MARK_PX = 18;
/** How far from its mark words are tried, in heights of the text. */
const BESIDE_ROWS = [0, 1, 2, 3];
