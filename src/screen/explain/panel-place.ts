// Where the panel stands: beside the number that was pressed, clear of the first line above and the calls below.

/** Edges in px of the window. */
export interface Edges {
  left: number;
  top: number;
  right: number;
  bottom: number;
}

export interface Place {
  left: number;
  top: number;
  maxHeight: number;
}

const GAP_PX = 8;

/** Under the number where it fits, else over it, else beside it, else where the room is; never outside of the room. */
export function placeOf(number: Edges, size: { width: number; height: number }, room: Edges): Place {
  const maxHeight = Math.max(0, room.bottom - room.top - 2 * GAP_PX);
  const height = Math.min(size.height, maxHeight);
  const highest = room.top + GAP_PX;
  const lowest = room.bottom - GAP_PX - height;
  const under = number.bottom + GAP_PX;
  const over = number.top - GAP_PX - height;
  const middle = (number.left + number.right - size.width) / 2;
  const isClear = under <= lowest || over >= highest;
  const top = under <= lowest ? under : over >= highest ? over : number.top;
  return {
    left: within(isClear ? middle : beside(number, size.width, room), room.left, room.right - size.width),
    top: Math.max(highest, Math.min(top, lowest)),
    maxHeight,
  };
}

/** To the right of the number where there is room, else to its left. */
function beside(number: Edges, width: number, room: Edges): number {
  const right = number.right + GAP_PX;
  return right + width + GAP_PX <= room.right ? right : number.left - GAP_PX - width;
}

const within = (left: number, least: number, most: number): number =>
  Math.max(least + GAP_PX, Math.min(left, most - GAP_PX));
