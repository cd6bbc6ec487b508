// Where a temperature stands on a pan's bar: fixed places for water point, finish and scorch limit, straight between.

/** Temperatures in °C; null where not known. */
export interface Landmarks {
  water: number | null;
  finish: number | null;
  scorch: number | null;
}

/** Shares of the bar's length. The places are the same on every pan, so that pans can be compared at a glance. */
export const PLACE = { cold: 0, water: 0.18, finish: 0.66, scorch: 0.88, end: 1 } as const;

/** Colder than this under the water point, a pan stands at the very start, °C. */
const COLD_SPAN = 40;
/** A scorch limit that is not known leaves as much room past the finish, as a share of the rise to the finish. */
const ROOM_PAST_FINISH = 0.5;

type Point = readonly [celsius: number, place: number];

function points({ water, finish, scorch }: Landmarks): Point[] | null {
  if (water === null) return null;
  const list: Point[] = [
    [water - COLD_SPAN, PLACE.cold],
    [water, PLACE.water],
  ];
  if (finish !== null && finish > water) list.push([finish, PLACE.finish]);
  const top = list.at(-1)?.[0] ?? water;
  const burns = scorch ?? (finish === null ? null : finish + (finish - water) * ROOM_PAST_FINISH);
  if (burns === null || burns <= top) return list.length > 2 ? list : null;
  list.push([burns, PLACE.scorch], [burns + (burns - water) * 0.2, PLACE.end]);
  return list;
}

/** The place of a temperature on the bar, 0 to 1; null where the bar cannot be drawn yet. */
export function placeOf(celsius: number, landmarks: Landmarks): number | null {
  const list = points(landmarks);
  if (list === null) return null;
  let [lastCelsius, lastPlace] = list[0] ?? [0, 0];
  if (celsius <= lastCelsius) return lastPlace;
  for (const [nextCelsius, nextPlace] of list.slice(1)) {
    if (celsius <= nextCelsius) {
      return lastPlace + ((celsius - lastCelsius) / (nextCelsius - lastCelsius)) * (nextPlace - lastPlace);
    }
    [lastCelsius, lastPlace] = [nextCelsius, nextPlace];
  }
  return lastPlace;
}

/**
 * The place of a pan that shows so many °C. One that boils and is at its finish, by an instrument or by count, stands at
 * the mark of the finish at the least: mark and word say the same.
 */
export function panPlace(celsius: number, isDone: boolean, landmarks: Landmarks): number | null {
  const place = placeOf(celsius, landmarks);
  const { water, finish } = landmarks;
  const stands = isDone && place !== null && finish !== null && water !== null && celsius >= water;
  return stands ? Math.max(place, PLACE.finish) : place;
}
