// Spans of time: in milliseconds, in which all moments are counted, and in the figures that people read.

export const MINUTE_MS = 60_000;
export const HOUR_MS = 60 * MINUTE_MS;
export const DAY_MS = 24 * HOUR_MS;

/** From here on minutes are told with the hours: nobody counts in 112 min (judgement). */
const LONG_MIN = 90;
const SHORT_S = 120;

/** Hours with their minutes, however short; full hours without. */
const withHours = (minutes: number): string => {
  const hours = `${Math.floor(minutes / 60)}\u00a0h`;
  return minutes % 60 === 0 ? hours : `${hours}\u00a0${String(minutes % 60).padStart(2, '0')}\u00a0min`;
};

/** The hour on a clock of twelve of an hour from 0 to 23, and its half of the day: 12 am at midnight, 12 pm at noon. */
export const onTwelve = (hour: number): { hour: number; half: 'am' | 'pm' } => ({
  hour: hour % 12 === 0 ? 12 : hour % 12,
  half: hour < 12 ? 'am' : 'pm',
});

/** "1 min", "89 min", "1 h 30 min", "15 h" of seconds, to the minute; no blank in it breaks. */
export function inMinutes(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  if (minutes < LONG_MIN) return `${minutes}\u00a0min`;
  return withHours(minutes);
}

/** "40 s", "89 min", "3 h 05 min", on one line; seconds below zero count as zero. */
export function lengthOfTime(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  return whole < SHORT_S ? `${whole}\u00a0s` : inMinutes(whole);
}

/** Both ends of a range of s in one form, "1 h 20 min" beside "1 h 45 min"; what is less than an hour stays in minutes. */
export function endsOfTime(low: number, high: number): [low: string, high: string] {
  const minutes = Math.round(low / 60);
  const isAlike = minutes >= 60 && Math.round(high / 60) >= LONG_MIN;
  return [isAlike ? withHours(minutes) : lengthOfTime(low), lengthOfTime(high)];
}

// A decimal, a clock's or a range's second number is no count of minutes; letters behind it are another unit.
const COUNTED = /(?<![\d.,:–-])(\d+)[ \u00a0]min(?: \((\d+)–(\d+)\))?(?!\p{L})/gu;
const BLANKS =
  /(?<=\d) (?=(?:s|min|h|%|°Bx|°C|°F|mm|L|kg|hPa)(?![\p{L}\d]))|(?<=\d[ \u00a0]h) (?=\d+[ \u00a0]min(?!\p{L}))/gu;

/** A sentence with its times as `lengthOfTime` writes them, "in about 1 h 52 min" of "in about 112 min", and no number parted from its unit. */
export const timesInWords = (sentence: string): string =>
  sentence
    .replaceAll(COUNTED, (whole: string, minutes: string, low?: string, high?: string) => {
      if (Number(minutes) < LONG_MIN) return whole;
      const [time = '', ...ends] = [minutes, low, high].flatMap((each) =>
        each === undefined ? [] : inMinutes(Number(each) * 60),
      );
      return ends.length === 0 ? time : `${time} (${ends.join('–')})`;
    })
    .replaceAll(BLANKS, '\u00a0');
