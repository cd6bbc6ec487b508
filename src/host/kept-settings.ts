// The settings as the notebook keeps them: read with the usual value for each that is not there, and kept.
import type { Notebook } from '../notebook/contract.ts';
import { type Settings, settingsSchema } from '../protocol/messages.ts';

const KEY = 'settings';

/** What was kept; the usual settings where nothing was, or where it cannot be read. */
export const keptSettings = (notebook: Pick<Notebook, 'setting'>): Settings =>
  settingsSchema.catch(settingsSchema.parse({})).parse(notebook.setting(KEY) ?? {});

/** Whether none were ever kept, so that all are usual ones and nobody's choice. */
export const areUnchosen = (notebook: Pick<Notebook, 'setting'>): boolean => (notebook.setting(KEY) ?? null) === null;

/** Keeps them all, in place of those before. */
export const keepSettings = (notebook: Pick<Notebook, 'keepSetting'>, settings: Settings): void =>
  notebook.keepSetting(KEY, settings);
