// Keeps watch over the watching of a live boil: that a call could be heard, that the machine lasts, and who else is told.
import type { Tongue } from '../language/tongue.ts';
import type { MachineSleep, PageReport, Settings } from '../protocol/messages.ts';
import type { BoilRun } from './boil-run.ts';
import type { MachineClock } from './clock.ts';
import { Hearing } from './hearing.ts';
import { PowerWatch, joinedPower, pagePower } from './power-watch.ts';
import type { Power } from './power.ts';
import { languages } from './languages.ts';
import { SecondChannel, callSentence } from './second-channel.ts';
import type { SleepFound } from './sleep-settings.ts';
import { SleepWatch } from './sleep-watch.ts';

/** So long after a start nobody can be expected to have opened a page and tapped it, ms. */
const START_MS = 30_000;
/** Looks come once a second; after a longer pause this program or the machine slept, and no page could speak, ms. */
const LONGEST_PAUSE_MS = 2500;
/** And then pages have so long to speak again, ms. */
const WAKE_MS = 4000;
const POWER_EVERY_MS = 30_000;
/** A page's word on the battery counts so long, ms. */
const PAGE_POWER_MS = 10_000;

export interface WatchkeeperOptions {
  machine: MachineClock;
  /** The calls are to be heard from pages; else the caller hears them some other way. */
  pagesSound: boolean;
  readPower(): Promise<Power | null>;
  /** What would put the machine to sleep; null where the system does not tell. Not asked where it is left out. */
  readSleep?: ((onBattery: boolean | null) => Promise<SleepFound | null>) | undefined;
  settings(): Settings;
  /** The caller's own second way: a notification, a bell. */
  tellOtherwise(sentence: (tongue: Tongue) => string): void;
  /** Runs the person's command; gives what failed, or null. */
  runCommand(command: readonly string[], sentence: string): Promise<string | null>;
}

/** What is watched over for one boil. */
interface Watched {
  run: BoilRun;
  sinceMs: number;
  lookedMs: number;
  /** Since when looks have come without a pause. */
  awakeMs: number;
  power: PowerWatch;
  sleep: SleepWatch;
  powerDueMs: number;
  second: SecondChannel;
}

export class Watchkeeper {
  readonly #options: WatchkeeperOptions;
  readonly #hearing = new Hearing();
  #pagePower: { power: Power; ms: number } | null = null;
  #watched: Watched | null = null;

  constructor(options: WatchkeeperOptions) {
    this.#options = options;
  }

  /** A page's sign of life. */
  report({ audio, battery }: PageReport): void {
    const ms = this.#options.machine.monotonicMs();
    this.#hearing.report(audio, ms);
    const power = pagePower(battery);
    if (power !== null) this.#pagePower = { power, ms };
  }

  /** What would put the machine to sleep; null where no live boil is watched, or nothing was asked. */
  get sleep(): MachineSleep | null {
    return this.#watched?.sleep.now ?? null;
  }

  /** One look, at least once a second, and whenever an alarm changes. Practice boils call nobody away. */
  look(run: BoilRun | null): void {
    if (run === null || run.isOver || run.kind !== 'live') {
      this.#watched = null;
      return;
    }
    const nowMs = this.#options.machine.monotonicMs();
    if (this.#watched?.run !== run) {
      const isLow = run.calls().alarms.some(({ alarm, condition }) => alarm === 'power-low' && condition === 'active');
      const fresh = { power: new PowerWatch(isLow), sleep: new SleepWatch(), second: new SecondChannel() };
      this.#watched = {
        run,
        sinceMs: nowMs,
        lookedMs: nowMs,
        awakeMs: Number.NEGATIVE_INFINITY,
        powerDueMs: nowMs,
        ...fresh,
      };
    }
    const watched = this.#watched;
    if (nowMs - watched.lookedMs > LONGEST_PAUSE_MS) watched.awakeMs = nowMs;
    watched.lookedMs = nowMs;
    const canBeHeard = this.#canBeHeard(watched, nowMs);
    if (this.#options.pagesSound && canBeHeard !== null) {
      run.own('no-sound', !canBeHeard, canBeHeard ? 'a page can sound' : this.#hearing.why(nowMs));
    }
    this.#tellOthers(watched, canBeHeard !== false);
    if (nowMs >= watched.powerDueMs) void this.#lookAtPower(watched, nowMs);
  }

  /** Whether a call could be heard now; null while it is too early to tell. */
  #canBeHeard({ sinceMs, awakeMs }: Watched, nowMs: number): boolean | null {
    if (!this.#options.pagesSound || this.#hearing.canHear(nowMs)) return true;
    const isWaking = nowMs - awakeMs < WAKE_MS;
    const isStarting = !this.#hadListener(sinceMs) && nowMs - sinceMs < START_MS;
    return isWaking || isStarting ? null : false;
  }

  #hadListener(sinceMs: number): boolean {
    return this.#hearing.soundingMs >= sinceMs;
  }

  #tellOthers({ run, sinceMs, second }: Watched, heard: boolean): void {
    const calls = run.calls();
    // Where no page ever listened in this boil, none was lost.
    const lost = this.#hadListener(sinceMs);
    const alarms = calls.alarms.filter(({ alarm }) => lost || alarm !== 'no-sound');
    const due = second.due({ ...calls, alarms }, heard);
    for (const alarm of due)
      this.#tell(run, (tongue) => callSentence(alarm, run.header, tongue, this.#options.settings()));
  }

  #tell(run: BoilRun, sentence: (tongue: Tongue) => string): void {
    this.#options.tellOtherwise(sentence);
    const { language, second_channel } = this.#options.settings();
    const { command } = second_channel;
    if (command.length === 0) return;
    const tongue = languages().tongueFor(language, []);
    void this.#options.runCommand(command, sentence(tongue)).then((failed) => failed !== null && run.say(failed));
  }

  async #lookAtPower(watched: Watched, nowMs: number): Promise<void> {
    watched.powerDueMs = nowMs + POWER_EVERY_MS;
    const system = await this.#options.readPower();
    if (this.#watched !== watched || watched.run.isOver) return;
    const page = this.#pagePower;
    const fromPage = page !== null && nowMs - page.ms < PAGE_POWER_MS ? page.power : null;
    const power = joinedPower(system, fromPage);
    const { news, why } = watched.power.look(power, watched.run.neededSeconds());
    if (news !== null) watched.run.say(news);
    if (power !== null) watched.run.own('power-low', why !== null, why ?? 'there is mains power again');
    await this.#lookAtSleep(watched, power);
  }

  async #lookAtSleep(watched: Watched, power: Power | null): Promise<void> {
    const found = await this.#options.readSleep?.(power === null ? null : power.onBattery);
    if (found === undefined || this.#watched !== watched || watched.run.isOver) return;
    const news = watched.sleep.look(found);
    if (news !== null) watched.run.say(news);
  }
}
