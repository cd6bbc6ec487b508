// The title of each alarm by its name, for where a message carries the name alone, as the history does.
import { ALARM_WORDS } from '../core/alarms/words.ts';
import type { AlarmName } from '../core/boil/entries.ts';

/** "About to burn". */
export function alarmTitle(alarm: AlarmName): string {
  return ALARM_WORDS[alarm].title;
}
