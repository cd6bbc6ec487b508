// Of which pan the form for its finish and its calls is open; kept apart so that a call can leave that pan chosen.
import { signal } from '@preact/signals';

/** Null while none is. */
export const openLimits = signal<string | null>(null);
