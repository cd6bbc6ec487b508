// Does what is asked of replays: opens one, steers it, and lays other choices over it. It knows no live boil, so it can change none.
import { mergePatch } from '../../core/boil/merge-patch.ts';
import type { Notebook } from '../../notebook/contract.ts';
import { checkHeader } from '../../protocol/header-schema.ts';
import type { ReplayCommand } from '../../protocol/replay-messages.ts';
import type { MachineClock } from '../clock.ts';
import { done, refused } from '../outcome.ts';
import type { Outcome } from '../outcome.ts';
import { gathered } from '../slices.ts';
import { readOpened } from './opened-recording.ts';
import { ReplayView } from './replay-view.ts';
import type { Replayable } from './whole-boil.ts';

type Control = Extract<ReplayCommand, { replay_control: unknown }>['replay_control'];

export class ReplayDesk {
  readonly #notebook: Pick<Notebook, 'find' | 'entries' | 'header'>;
  readonly #machine: MachineClock;
  readonly #changed: (urgent: boolean) => void;
  #view: ReplayView | null = null;
  #opened: Replayable | null = null;
  #openedCount = 0;
  /** Stands for the boil that is being read; another is asked for, or it is put away: then it is not wanted any more. */
  #reading: symbol | null = null;

  /** `changed` is called when there is something else to show. */
  constructor(
    notebook: Pick<Notebook, 'find' | 'entries' | 'header'>,
    machine: MachineClock,
    changed: (urgent: boolean) => void,
  ) {
    this.#notebook = notebook;
    this.#machine = machine;
    this.#changed = changed;
  }

  /** The replay that is open, or null. */
  get view(): ReplayView | null {
    return this.#view;
  }

  async do(command: ReplayCommand): Promise<Outcome> {
    if ('replay' in command) return this.#open(command.replay.boil, command.replay.at);
    if ('replay_close' in command) return this.#putAway();
    const view = this.#view;
    if (view === null) return refused('No replay is open.');
    if ('replay_strip' in command) return { ok: true, data: view.strip(command.replay_strip.points) };
    if ('replay_known' in command) return { ok: true, data: view.known(command.replay_known.at) };
    if ('replay_choices' in command) return this.#lay(view, command.replay_choices.patch);
    if ('replay_differences' in command) return differences(view, command.replay_differences.points);
    return control(view, command.replay_control);
  }

  /** Reads a recording for a replay only, in place of one that was opened before. Throws with a sentence. */
  async openRecording(
    pieces: AsyncIterable<Uint8Array | string>,
    name: string,
  ): Promise<{ boil: string; leftOut: number }> {
    this.#openedCount += 1;
    const { recording, leftOut } = await readOpened(pieces, name, `opened-${this.#openedCount}`);
    this.#opened = recording;
    return { boil: recording.boil, leftOut };
  }

  close(): void {
    this.#reading = null;
    this.#view?.close();
    this.#view = null;
  }

  #putAway(): Outcome {
    if (this.#view === null && this.#reading === null) return refused('No replay is open.');
    this.close();
    return done;
  }

  async #open(boil: string, at: number | undefined): Promise<Outcome> {
    const reading = (this.#reading = Symbol(boil));
    const recording = boil === this.#opened?.boil ? this.#opened : await this.#kept(boil);
    if (reading !== this.#reading) return done;
    this.close();
    this.#view = new ReplayView(recording, this.#machine, this.#changed, at);
    this.#changed(true);
    return done;
  }

  async #kept(name: string): Promise<Replayable> {
    const { boil, name: title } = this.#notebook.find(name);
    const texts = await gathered(this.#notebook.entries(boil), this.#machine);
    return { boil, title, header: this.#notebook.header(boil), texts };
  }

  #lay(view: ReplayView, patch: Record<string, unknown> | null): Outcome {
    if (patch === null) {
      view.lay(null);
      return done;
    }
    const checked = checkHeader(mergePatch(view.headerAsItWas, patch));
    if (!checked.ok) return refused(`With these choices the boil does not hold together: ${checked.why}.`);
    view.lay({ patch, header: checked.header });
    return done;
  }
}

function control(view: ReplayView, command: Control): Outcome {
  if ('playing' in command) view.play(command.playing);
  else if ('speed' in command) view.setSpeed(command.speed);
  else if ('seek' in command) view.seek(command.seek);
  else if ('by' in command) view.seekBy(command.by);
  else if (!view.step(command.step === 'next', command.to)) return refused(nothingThere(command));
  return done;
}

function nothingThere({ step, to }: Extract<Control, { step: unknown }>): string {
  const what = { mark: 'mark', alarm: 'call', either: 'mark or call' }[to];
  return `There is no ${what} ${step === 'next' ? 'after' : 'before'} this moment, as far as the boil is read.`;
}

function differences(view: ReplayView, points: number): Outcome {
  const data = view.differences(points);
  return data === null ? refused('No other choices are laid over this replay.') : { ok: true, data };
}
