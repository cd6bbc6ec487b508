// What the screen is told of alarms beyond a message: the title of each by its name, and which of several is said first.
import { ALARM_WORDS } from '../core/alarms/words.ts';
import type { AlarmName } from '../core/boil/entries.ts';

export { foremost } from '../core/alarms/alarm.ts';

/** "About to burn". */
export function alarmTitle(alarm: AlarmName): string {
  return ALARM_WORDS[alarm].title;
}
