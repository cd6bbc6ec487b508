// Which pan is chosen for its chart and for marks.
import { signal } from '@preact/signals';
import type { Now } from '../client/types.ts';

const chosen = signal<string | null>(null);

/** The chosen pan, or the first when none was chosen or it has left the boil. */
export function selectedPan(now: Now): string | null {
  const ids = now.readings.map((reading) => reading.pan);
  return ids.find((id) => id === chosen.value) ?? ids[0] ?? null;
}

/** No pan is chosen any more. */
export function forgetPan(): void {
  chosen.value = null;
}

/** Chooses the pan that marks are noted for. */
export function selectPan(id: string): void {
  chosen.value = id;
}
