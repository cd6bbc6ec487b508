// The application service: one boil at most, a replay beside it, the notebook behind it; commands in, snapshots out.
import type { HeaderPatch } from '../core/boil/entries.ts';
import { sapKey } from '../core/boil/sap-key.ts';
import type { SearchedSettings } from '../core/tuning/search.ts';
import { VERSION } from '../program/program-files.ts';
import { sapKinds } from '../core/physics/sap-kinds.ts';
import type { SerialSourceOptions } from '../ingest/serial-source.ts';
import type { Tongue } from '../language/tongue.ts';
import { NotebookProblem } from '../notebook/contract.ts';
import type { Notebook } from '../notebook/contract.ts';
import type { FolderLock } from '../notebook/open-notebook.ts';
import type { Setup } from '../protocol/header-schema.ts';
import { settingsSchema } from '../protocol/messages.ts';
import { areUnchosen, keepSettings, keptSettings, unchosenOf } from './kept-settings.ts';
import { isPhoneCommand } from '../protocol/phone-messages.ts';
import { isCompareCommand } from '../protocol/compare-messages.ts';
import { isLookCommand } from '../protocol/look-messages.ts';
import { isReplayCommand } from '../protocol/replay-messages.ts';
import type { Command, HostMessage, Settings } from '../protocol/messages.ts';
import { isProbeCommand } from '../protocol/probe-messages.ts';
import { isProbeSetupCommand } from '../protocol/probe-setup-messages.ts';
import { isSeasonCommand } from '../protocol/season-messages.ts';
import { BackupKeeper, folderRefusal } from './backup-keeper.ts';
import type { BoilRun, RunListener } from './boil-run.ts';
import { BoilStarter } from './boil-starter.ts';
import { systemClock } from './clock.ts';
import type { MachineClock } from './clock.ts';
import { CompareDesk } from './compare/compare-desk.ts';
import type { Tonight } from './compare/ghost.ts';
import { ExportDesk } from './export/export-desk.ts';
import { takeIn } from './import/take-in.ts';
import { LookDesk } from './look-desk.ts';
import { whyNotLit } from './check-deed.ts';
import { done, refused } from './outcome.ts';
import type { Outcome } from './outcome.ts';
import { parseCommand } from './parse-command.ts';
import { PhoneDesk } from './phones.ts';
import type { OwnAddress } from './phones.ts';
import { PortDesk } from './port-desk.ts';
import type { Power } from './power.ts';
import { SetupDesk } from './probes/setup-desk.ts';
import { Publisher } from './publish.ts';
import { ReplayDesk } from './replay/replay-desk.ts';
import { runCommand } from './run-command.ts';
import { SeasonDesk } from './season-desk.ts';
import { isSameSetup, callSettingsOf } from './setup.ts';
import { liveNow, replayNow } from './snapshots.ts';
import { TuneDesk } from './tuning/tune-desk.ts';
import { Watchkeeper } from './watchkeeper.ts';
import type { WatchkeeperOptions } from './watchkeeper.ts';

type Answered = Extract<HostMessage, { kind: 'answered' }>;
type Pieces = AsyncIterable<Uint8Array | string>;

export interface HostOptions {
  /** The data folder; made when it is not there. */
  folder: string;
  /** A practice boil is wanted: refused while a real boil waits to go on, which is then left as it is. */
  practice?: boolean | undefined;
  /** What the caller wants watched: refused while a boil of another setup runs. */
  setup?: Setup | undefined;
  /** Interval of the listener's readings, ms of boil time. */
  everyMs?: number | undefined;
  listener?: RunListener | undefined;
  machine?: MachineClock | undefined;
  /** The calls are to be heard from pages: `no-sound` is called while no page can sound. Else the caller sounds. */
  pagesSound?: boolean | undefined;
  /** The caller's own second way to tell of a call: a notification, a bell. */
  tellOtherwise?: ((sentence: (tongue: Tongue) => string) => void) | undefined;
  /** What the machine runs from; never known where nobody hands this in. */
  readPower?: (() => Promise<Power | null>) | undefined;
  /** What would put the machine to sleep; nothing is said of it where nobody hands this in. */
  readSleep?: WatchkeeperOptions['readSleep'];
  /** This machine's addresses in its own networks; looked up where nobody hands them in. */
  addresses?: (() => OwnAddress[]) | undefined;
  /** What lists the machine's ports and what opens one, where that is not done by Node's own processes. */
  ports?: Pick<SerialSourceOptions, 'list' | 'openPort'> | undefined;
  /** Another notebook than the folder's; a test hands in one that fails. */
  notebook?: Notebook | undefined;
}

function refuseBesideRealBoil(notebook: Notebook): void {
  const real = notebook.running();
  if (real === null || real.kind === 'practice') return;
  throw new NotebookProblem(
    `the boil "${real.boil}" is running in ${notebook.folder}: end it first, or practise in another folder with --data`,
    2,
  );
}

export class Host {
  /** Everything that is kept beside the boils. */
  readonly season: SeasonDesk;
  readonly exports: ExportDesk;
  readonly phones: PhoneDesk;
  readonly #ports: PortDesk;
  readonly #setup: SetupDesk;
  readonly #look: LookDesk;
  readonly #lock: FolderLock;
  readonly #notebook: Notebook;
  readonly #machine: MachineClock;
  readonly #starter: BoilStarter;
  readonly #publisher: Publisher;
  readonly #watchkeeper: Watchkeeper;
  readonly #replay: ReplayDesk;
  readonly #compare: CompareDesk;
  readonly #tune: TuneDesk;
  readonly #listener: RunListener;
  readonly #backups: BackupKeeper;
  readonly #hearers = new Set<(message: HostMessage) => void>();
  #settings: Settings;
  #run: BoilRun | null;

  constructor(options: HostOptions, lock: FolderLock, notebook: Notebook) {
    this.#lock = lock;
    this.#notebook = notebook;
    this.#machine = options.machine ?? systemClock();
    this.#listener = options.listener ?? {};
    this.#backups = new BackupKeeper(
      notebook.folder,
      () => this.#settings.backup_folder,
      (sentence) => this.say(sentence),
    );
    this.season = new SeasonDesk(notebook, this.#machine);
    this.exports = new ExportDesk(notebook, this.#machine);
    this.phones = new PhoneDesk(notebook, this.#machine, options.addresses);
    this.#settings = keptSettings(notebook);
    this.#watchkeeper = new Watchkeeper({
      machine: this.#machine,
      pagesSound: options.pagesSound ?? false,
      readPower: options.readPower ?? (async () => null),
      readSleep: options.readSleep,
      settings: () => this.#settings,
      tellOtherwise: options.tellOtherwise ?? (() => {}),
      runCommand,
    });
    this.#publisher = new Publisher(this.#machine, () => this.#publish());
    this.#replay = new ReplayDesk(notebook, this.#machine, (urgent) => this.#changed(urgent));
    this.#compare = new CompareDesk(notebook, this.#machine, (pan) => this.#tonight(pan));
    this.#tune = new TuneDesk(
      notebook,
      this.#machine,
      () => searchedOf(this.#settings),
      (now) => this.#tell(now),
    );
    this.#ports = new PortDesk({
      notebook,
      machine: this.#machine,
      running: () => (this.#run === null || this.#run.isOver ? null : this.#run),
      changed: (urgent) => this.#changed(urgent),
      ...options.ports,
    });
    this.#setup = new SetupDesk({
      notebook,
      machine: this.#machine,
      heard: () => this.#ports.listening?.look() ?? null,
      boil: () => (this.#run === null || this.#run.isOver ? null : this.#run.look()),
      next: () => {
        const setup = this.#starter.nextSetup();
        return setup === null ? null : { setup, learnt: this.#starter.taught(setup, this.#settings) };
      },
    });
    this.#look = new LookDesk({
      notebook,
      settings: () => this.#settings,
      run: () => this.#run,
      replay: () => this.#replay.view,
      nextSetup: () => this.#starter.nextSetup(),
    });
    this.#starter = new BoilStarter({
      notebook,
      machine: this.#machine,
      everyMs: options.everyMs ?? null,
      listener: options.listener ?? {},
      changed: (urgent) => this.#changed(urgent),
      asks: (port, moved) => this.#ports.asks(port, moved),
      ports: options.ports,
    });
    this.#run = null;
    if (options.setup !== undefined) this.#refuseOtherSetup(options.setup);
    if (options.practice === true) refuseBesideRealBoil(notebook);
    this.#run = this.#starter.takeUp();
  }

  /** Says a sentence to whoever watches. */
  say(sentence: string): void {
    if (this.#run === null) this.#listener.notice?.({ port: null, sentence });
    else this.#run.say(sentence);
  }

  /** The screen is served here: a second program that wants the folder is told so. */
  servedAt(url: string): void {
    this.#lock.tell(url);
  }

  /** The boil that runs, or null. */
  get running(): { boil: string; entries: number } | null {
    return this.#run === null || this.#run.isOver ? null : { boil: this.#run.boil, entries: this.#run.kept };
  }

  /** The setup of the last live boil, or null. */
  lastSetup(): Setup | null {
    return this.#starter.lastSetup();
  }

  /** Hands over `hello`, then everything that is published; returns the way to stop. */
  subscribe(hear: (message: HostMessage) => void): () => void {
    this.#hearers.add(hear);
    const { folder } = this.#notebook;
    const unchosen = areUnchosen(this.#notebook);
    hear({ kind: 'hello', version: VERSION, folder, settings: this.#settings, saps: sapKinds, lan: false, unchosen });
    hear(liveNow(this.#run, this.#ports.listening, this.#machine));
    return () => this.#hearers.delete(hear);
  }

  /** Does what a screen or a program asks for; the answer comes when the effect is on disk. Never rejects. */
  async command(value: unknown): Promise<Answered> {
    const parsed = parseCommand(value);
    if (!parsed.ok) return { kind: 'answered', ...parsed };
    const { ref } = parsed.command;
    try {
      return { kind: 'answered', ref, ...(await this.#do(parsed.command)) };
    } catch (error) {
      return { kind: 'answered', ref, ok: false, why: error instanceof Error ? error.message : String(error) };
    }
  }

  /** The lines of a kept boil's recording, without line ends. Throws NotebookProblem when there is no such boil. */
  recordingOf(boil: string): Iterable<string> {
    const header = this.#notebook.headerText(boil);
    return linesOf(header, this.#notebook.entries(boil));
  }

  /** Takes a recording or a SenML pack into the notebook; `name` is what sentences call the file. Throws with a sentence. */
  async importRecording(pieces: Pieces, name: string): Promise<{ boil: string; leftOut: string[] }> {
    const { boil, leftOut } = await takeIn(this.#notebook, pieces, name);
    return { boil: boil.boil, leftOut };
  }

  /** Opens a recording for a replay only, in place of one that was opened before. Throws with a sentence. */
  async openRecording(pieces: Pieces, name: string): Promise<{ boil: string; leftOut: number }> {
    return this.#replay.openRecording(pieces, name);
  }

  /** Leaves a live boil running in the notebook, ends a practice boil, and gives the folder back. */
  async close(): Promise<void> {
    this.#publisher.stop();
    this.season.close();
    this.#compare.close();
    this.#tune.close();
    this.#replay.close();
    if (this.#run?.kind === 'practice' && !this.#run.isOver) await this.#run.end();
    await Promise.all([this.#run?.leave(), this.#ports.letGo(), this.phones.close()]);
    await this.#backups.settled();
    this.#notebook.close();
    this.#lock.release();
  }

  async #do(command: Command): Promise<Outcome> {
    if ('mark' in command) return this.#withRun((run) => run.mark(command.mark as Parameters<BoilRun['mark']>[0]));
    if ('answer' in command)
      return this.#withRun((run) => run.answer(command.answer as Parameters<BoilRun['answer']>[0]));
    if ('set' in command) return this.#withRun((run) => this.#set(run, command.set));
    if ('end' in command) return this.#endOrPutAway();
    if ('start' in command) return this.#beginLive(command.start, command.lit);
    if ('practice' in command) return this.#begin(() => this.#starter.beginPractice(command.practice, this.#settings));
    if ('practice_speed' in command) return this.#setPracticeSpeed(command.practice_speed);
    if ('settings' in command) return this.#keepSettings(command.settings);
    if ('usual_settings' in command) return this.#keepSettings(unchosenOf(this.#notebook, command.usual_settings));
    if ('page' in command) {
      this.#watchkeeper.report(command.page);
      return done;
    }
    if (isSeasonCommand(command)) {
      const outcome = await this.season.do(command);
      if (outcome.ok && 'keep_page' in command) this.#backups.pageKept(command.keep_page.boil);
      return outcome;
    }
    if (isPhoneCommand(command)) return this.phones.do(command);
    if (isProbeCommand(command)) return this.#ports.do(command);
    if (isProbeSetupCommand(command)) return this.#setup.do(command);
    if (isLookCommand(command)) return this.#look.do(command);
    if (isReplayCommand(command)) return this.#replay.do(command);
    if (isCompareCommand(command)) return this.#compare.do(command);
    return this.#tune.do(command);
  }

  async #withRun(act: (run: BoilRun) => Promise<Outcome>): Promise<Outcome> {
    if (this.#run === null || this.#run.isOver) return refused('No boil is running.');
    return act(this.#run);
  }

  /** A practice boil that is over stays to be looked back on until somebody puts it away. */
  async #endOrPutAway(): Promise<Outcome> {
    if (this.#run?.kind !== 'practice' || !this.#run.isOver) return this.#withRun((run) => this.#end(run));
    this.#run = null;
    this.#publisher.urgent();
    return done;
  }

  async #end(run: BoilRun): Promise<Outcome> {
    const outcome = await run.end();
    if (outcome.ok) this.season.boilEnded(run.boil);
    if (outcome.ok && run.kind === 'live') this.#backups.boilEnded(run.boil);
    return outcome;
  }

  async #beginLive(setup: Setup, lit: string | undefined): Promise<Outcome> {
    const litMs = lit === undefined ? null : Date.parse(lit);
    const why = litMs === null ? null : whyNotLit(litMs, this.#machine.wallMs());
    if (why !== null) return refused(why);
    return this.#begin(() => this.#starter.beginLive(setup, this.#settings, litMs));
  }

  async #begin(begin: () => BoilRun): Promise<Outcome> {
    if (this.running !== null) return refused(`The boil "${this.running.boil}" is running: end it first.`);
    // The ports that are listened to are those that the boil needs.
    await this.#ports.letGo();
    this.#run = begin();
    this.#publisher.urgent();
    return { ok: true, data: this.running };
  }

  async #setPracticeSpeed(speed: number): Promise<Outcome> {
    const run = this.#run;
    if (run?.kind !== 'practice' || run.isOver) return refused('No practice boil is running.');
    await run.setSpeed(speed);
    return done;
  }

  /** What was corrected in a live boil is right in the next one, too. */
  async #set(run: BoilRun, patch: HeaderPatch): Promise<Outcome> {
    const outcome = await run.set(patch);
    if (outcome.ok && run.kind === 'live') this.#starter.keepChanged(run.header);
    return outcome;
  }

  async #keepSettings(changed: Partial<Settings>): Promise<Outcome> {
    const before = this.#settings;
    const why = folderRefusal(changed.backup_folder ?? '');
    if (why !== null) return refused(why);
    const given = withoutUndefined(changed);
    this.#settings = settingsSchema.parse({ ...before, ...given });
    keepSettings(this.#notebook, given);
    this.#tell({ kind: 'settings', settings: this.#settings });
    const calls = callSettingsOf(this.#settings);
    const isNews = JSON.stringify(calls) !== JSON.stringify(callSettingsOf(before));
    if (isNews && this.#run !== null && !this.#run.isOver) return this.#run.set({ settings: calls });
    return done;
  }

  /** What a pan of the boil that runs shows now; null where there is none. */
  #tonight(pan: string): Tonight | null {
    if (this.#run === null || this.#run.isOver) return null;
    const { t, readings, header } = this.#run.snapshot();
    const reading = readings.find((one) => one.pan === pan);
    const sap = sapKey(header?.pans?.find(({ id }) => id === pan)?.sap);
    return reading === undefined ? null : { pan, sap, t, brix: reading.brix };
  }

  #refuseOtherSetup(setup: Setup): void {
    const running = this.#notebook.running();
    if (running?.kind !== 'live' || isSameSetup(setup, this.lastSetup())) return;
    throw new NotebookProblem(
      `the boil "${running.boil}" is running with another setup: leave out --setup to go on with it, or end it first with "end ${running.boil}"`,
      2,
    );
  }

  #changed(urgent: boolean): void {
    if (urgent) this.#publisher.urgent();
    else this.#publisher.changed();
  }

  /** Called once a second at least, whether anybody hears it or not. */
  #publish(): void {
    this.#watchkeeper.look(this.#run);
    if (this.#hearers.size === 0) return;
    this.#tell({ ...liveNow(this.#run, this.#ports.listening, this.#machine), sleep: this.#watchkeeper.sleep });
    if (this.#replay.view !== null) this.#tell(replayNow(this.#replay.view, this.#machine));
  }

  #tell(message: HostMessage): void {
    for (const hear of this.#hearers) hear(message);
  }
}

function* linesOf(header: string, entries: Iterable<string>): Generator<string> {
  yield header;
  yield* entries;
}

function searchedOf(settings: Settings): SearchedSettings {
  const { near_finish_lead_s, scorch_lead_s, finish_probability } = settings;
  return { near_finish_lead_s, scorch_lead_s, finish_probability };
}

function withoutUndefined(settings: Partial<Settings>): Partial<Settings> {
  return Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined));
}
