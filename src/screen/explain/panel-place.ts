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

/** Under the number where it fits, else over it, else where the room is; never outside of the room. */
export function placeOf(number: Edges, size: { width: number; height: number }, room: Edges): Place {
  const maxHeight = Math.max(0, room.bottom - room.top - 2 * GAP_PX);
  const height = Math.min(size.height, maxHeight);
  const lowest = room.bottom - GAP_PX - height;
  const under = number.bottom + GAP_PX;
  const over = number.top - GAP_PX - height;
  const wanted = under <= lowest ? under : over >= room.top + GAP_PX ? over : lowest;
  const rightmost = room.right - GAP_PX - size.width;
  return {
    left: Math.max(room.left + GAP_PX, Math.min(number.left, rightmost)),
    top: Math.max(room.top + GAP_PX, Math.min(wanted, lowest)),
    maxHeight,
  };
}
