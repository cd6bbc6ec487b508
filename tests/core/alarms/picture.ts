// Everything that can be seen and heard of a book of alarms at one moment, as the `>` lines of an alarm story.
import type { AlarmTransition } from '../../../src/core/alarms/alarm.ts';
import type * as engineModule from '../../../src/core/alarms/engine.ts';
import type { AlarmBook, AlarmState } from '../../../src/core/alarms/engine.ts';

export type Engine = typeof engineModule;

interface Placed {
  pan: string | null;
  port?: string | null | undefined;
  about?: string | null | undefined;
}

/** `p1`, `port:A`, `no:3` for a reminder, `-` for the whole program. */
function placeName({ pan, port, about }: Placed): string {
  if (pan !== null) return pan;
  if (port !== null && port !== undefined) return `port:${port}`;
  return about === null || about === undefined ? '-' : `no:${about}`;
}

/** The sound, the list in its order, what is not listed, and what was told since the last picture; t in ms. */
export function picture(engine: Engine, book: AlarmBook, t: number, told: readonly AlarmTransition[]): string[] {
  const list = engine.listAlarms(book).map((listed, index) => {
    const state = book.alarms.find((one) => isSame(one, listed))!;
    return `${index + 1}. ${listedLine(state, listed.condition)}`;
  });
  const hidden = book.alarms
    .filter((state) => !engine.listAlarms(book).some((listed) => isSame(state, listed)))
    .map((state) => `not listed: ${placeName(state)} ${state.alarm} ${state.condition}`);
  const calls = told.map((one) => `told: ${one.event} ${placeName(one)} ${one.alarm} (${one.priority})`);
  return [soundLine(engine, book, t), ...list, ...hidden, ...calls];
}

function soundLine(engine: Engine, book: AlarmBook, t: number): string {
  const repeats = engine.unansweredHigh(book, t)?.repeats ?? 0;
  const silenced = book.silencedUntil === null ? '' : `, silenced until ${book.silencedUntil / 1000}`;
  return `sound: ${engine.soundNow(book, t) ?? 'none'}${silenced}${repeats > 0 ? `, repeat ${repeats}` : ''}`;
}

function listedLine(state: AlarmState, shown: 'active' | 'over'): string {
  const condition = shown === 'active' ? state.condition : state.condition === 'ok' ? 'over' : 'over, pending';
  const aside = state.asideUntil === null ? '' : `, aside until ${state.asideUntil / 1000}: ${state.asideReason}`;
  const answer = state.answered ? 'acknowledged' : 'unanswered';
  return `${placeName(state)} ${state.alarm} ${state.priority}, ${condition}, ${answer}${aside}`;
}

function isSame(state: AlarmState, other: { alarm: string; pan: string | null; port: string | null; since: number }) {
  return (
    state.alarm === other.alarm &&
    state.pan === other.pan &&
    state.port === other.port &&
    state.raisedAt === other.since
  );
}
