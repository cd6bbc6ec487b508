// The settings as the notebook keeps them: what somebody chose, read with the usual value for each that nobody did.
import type { Notebook } from '../notebook/contract.ts';
import { type Settings, settingsSchema } from '../protocol/messages.ts';

const KEY = 'settings';

/** What is usual differs by region, which a page tells that is read there. */
const BY_REGION: readonly (keyof Settings)[] = [
  'temperature',
  'volume',
  'length',
  'pressure',
  'mass',
  'power',
  'clock',
];

/** What was kept; the usual settings where nothing was, or where it cannot be read. */
export const keptSettings = (notebook: Pick<Notebook, 'setting'>): Settings =>
  settingsSchema.catch(settingsSchema.parse({})).parse(notebook.setting(KEY) ?? {});

/** Those of the kept settings that somebody chose, or that a page gave as usual; none where they cannot be read. */
function chosen(notebook: Pick<Notebook, 'setting'>): Partial<Settings> {
  const kept = notebook.setting(KEY) ?? {};
  const read = settingsSchema.safeParse(kept);
  if (!read.success) return {};
  return Object.fromEntries(Object.entries(read.data).filter(([name]) => name in (kept as object)));
}

/** Whether a unit or the clock is still nobody's choice, so that a page may say what is usual where it is read. */
export function areUnchosen(notebook: Pick<Notebook, 'setting'>): boolean {
  const kept = chosen(notebook);
  return BY_REGION.some((name) => !(name in kept));
}

/** Of what is usual where a page is read, that which nobody has chosen. */
export function unchosenOf(notebook: Pick<Notebook, 'setting'>, usual: Partial<Settings>): Partial<Settings> {
  const kept = chosen(notebook);
  return Object.fromEntries(Object.entries(usual).filter(([name]) => !(name in kept)));
}

/** Keeps what was changed beside what was chosen before; what nobody chose is not kept, and so stays open. */
export const keepSettings = (notebook: Pick<Notebook, 'setting' | 'keepSetting'>, changed: Partial<Settings>): void =>
  notebook.keepSetting(KEY, { ...chosen(notebook), ...changed });
