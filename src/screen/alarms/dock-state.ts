// What of the alarms at the foot is open: the foremost few, all of them, those put aside, or the choice of how long to put one aside.
import { signal } from '@preact/signals';

export const openList = signal<'few' | 'all' | 'aside'>('few');

/** The key of the alarm that is about to be put aside; null for none. */
export const puttingAside = signal<string | null>(null);
