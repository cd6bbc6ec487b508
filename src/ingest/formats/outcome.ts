// Gathers what one line gives: readings and reasons, with every channel that is named twice taken out.
import type { LineReading, LineResult } from '../../core/boil/line-reading.ts';
import { hasUnreadableBytes, type Refusal, type Value } from './value.ts';

const longestShown = 40;

/** A reason with the piece of the line that it is about, safe to show. */
const refusal = (reason: string, piece: string): string => `${reason}: ${shown(piece)}`;

export class Outcome {
  readings: LineReading[] = [];
  rejected: string[] = [];
  /** Channels whose value was refused: named again in the same line, they are in conflict all the same. */
  #refused: string[] = [];

  /** Takes what readValue made of a channel's value; `piece` is the place in the line, for the reason. */
  add(channel: string, read: Value | Refusal, piece: string): void {
    if (typeof read !== 'string') this.readings.push({ channel, value: read.value, unit: read.unit });
    else this.refuse(read, channel, piece);
  }

  refuse(reason: string, channel: string, piece: string): void {
    this.#refused.push(channel);
    this.rejected.push(refusal(reason, piece));
  }

  reject(reason: string, piece: string): void {
    this.rejected.push(refusal(reason, piece));
  }

  result(): LineResult {
    if (this.#hasRepeated()) this.#takeOutRepeated();
    return { readings: this.readings, rejected: this.rejected };
  }

  #hasRepeated(): boolean {
    const { readings } = this;
    if (this.#refused.length > 0 || readings.length > 8) return true;
    for (let later = 1; later < readings.length; later++) {
      for (let earlier = 0; earlier < later; earlier++) {
        if (readings[earlier]!.channel === readings[later]!.channel) return true;
      }
    }
    return false;
  }

  /** Nobody can tell which of two values is the right one, so neither is used. */
  #takeOutRepeated(): void {
    const times = new Map<string, number>();
    for (const channel of this.#refused) times.set(channel, (times.get(channel) ?? 0) + 1);
    for (const { channel } of this.readings) times.set(channel, (times.get(channel) ?? 0) + 1);
    for (const [channel, count] of times) if (count > 1) this.reject('named twice', channel);
    this.readings = this.readings.filter(({ channel }) => times.get(channel) === 1);
  }
}

/** A whole line that cannot be used, and why. */
export const nothingFrom = (why: string): LineResult => ({ readings: [], rejected: [why] });

function shown(piece: string): string {
  const cut = piece.length > longestShown ? `${piece.slice(0, longestShown)}…` : piece;
  return hasUnreadableBytes(cut) ? cut.replace(/[^ -~…]/g, '?') : cut;
}
