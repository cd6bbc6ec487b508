// Which correction the charts and the list of marks tell of in full, by its key.
import { signal } from '@preact/signals';

export const shownCorrection = signal<string | null>(null);
