// Answers the screen while somebody sets probes up: how they stand, what a check shows, and keeps the whole at the end.
import type { Learnt, PortFormat, Sensor } from '../../core/boil/entries.ts';
import { type ProbeTrack, probeState } from '../../core/boil/probe-track.ts';
import type { BoilState } from '../../core/boil/state.ts';
import { waterThere } from '../../core/boil/water-there.ts';
import { CHECK_SIGMA_C } from '../../core/pan/baseline.ts';
import { ICE_SIGMA_C } from '../../core/probes/check-offset.ts';
import { steadiness } from '../../core/probes/steadiness.ts';
import { whichRises } from '../../core/probes/which-rises.ts';
import { readLine } from '../../ingest/read-line.ts';
import { recognise } from '../../ingest/recognise/recognise.ts';
import type { Notebook } from '../../notebook/contract.ts';
import type { Setup } from '../../protocol/header-schema.ts';
import { NOT_THERE_C } from '../../protocol/probe-setup-messages.ts';
import type {
  KeptProbe,
  KeptProbes,
  ProbeCheck,
  ProbeSetupCommand,
  ProbeWatch,
  Tried,
} from '../../protocol/probe-setup-messages.ts';
import { isoWithOffset, type MachineClock } from '../clock.ts';
import { type Outcome, refused } from '../outcome.ts';
import { checkDue } from './check-due.ts';
import { errorOf, keepProbes, keptProbes } from './kept-probes.ts';
import { knownProbes } from './known-probes.ts';
import { type Looked, probeHealth } from './probe-health.ts';

export interface SetupDeskOptions {
  notebook: Pick<Notebook, 'setting' | 'keepSetting'>;
  machine: MachineClock;
  /** What is listened to outside of a boil, or null. */
  heard(): { state: BoilState; t: number } | null;
  /** The boil that runs, or null. */
  boil(): { state: BoilState; t: number } | null;
  /** What the next boil is likely to begin with, and what it then knows beforehand. */
  next(): { setup: Setup; learnt: Learnt | undefined } | null;
}

export class SetupDesk {
  readonly #options: SetupDeskOptions;

  constructor(options: SetupDeskOptions) {
    this.#options = options;
  }

  do(command: ProbeSetupCommand): Outcome {
    if ('recognise' in command) return { ok: true, data: recognise(command.recognise) };
    if ('try_format' in command)
      return { ok: true, data: tried(command.try_format.lines, command.try_format.format as PortFormat) };
    if ('probe_watch' in command) return this.#watch(command.probe_watch.path);
    if ('probe_check' in command) return this.#check(command.probe_check);
    if ('probe_error' in command) return { ok: true, data: errorOf(command.probe_error) };
    if ('probes_keep' in command) return this.#keep(command.probes_keep);
    if ('probes_kept' in command) return { ok: true, data: this.#kept() };
    if ('probes_known' in command)
      return { ok: true, data: knownProbes(this.#options.next(), keptProbes(this.#options.notebook).probes) };
    return this.#health();
  }

  #watch(path: string): Outcome {
    const heard = this.#options.heard();
    if (heard === null) return refused('Nobody listens to a board now.');
    const { t } = heard;
    const tracks = tracksOf(heard.state, path);
    const rising = whichRises(
      tracks.map(({ channel, track }) => ({ channel, recent: track.recent })),
      t,
    );
    const watch: ProbeWatch = {
      channels: tracks.map(({ channel, track }, place) => {
        const { state, ratePerMin, heardS } = steadiness(track.recent, t);
        const isThere = !['lost', 'broken'].includes(probeState(track, t));
        const risenC = rising.channels[place]!.risenC;
        return { channel, celsius: isThere ? track.celsius : null, state, ratePerMin, heardS, risenC };
      }),
      rises: rising.one,
      several: rising.several,
    };
    return { ok: true, data: watch };
  }

  #check({
    path,
    channel,
    in: where,
    place,
  }: Extract<ProbeSetupCommand, { probe_check: unknown }>['probe_check']): Outcome {
    const heard = this.#options.heard();
    const track =
      heard === null ? undefined : tracksOf(heard.state, path).find((one) => one.channel === channel)?.track;
    if (heard === null || track === undefined) return refused(`Nothing is heard of ${channel} on ${path}.`);
    const { state, celsius, sigmaC } = steadiness(track.recent, heard.t);
    if (state !== 'steady' || celsius === null || sigmaC === null) {
      return refused(`${channel} has not come to rest yet: hold its tip there for a whole minute.`);
    }
    const truth = where === 'ice' ? { celsius: 0, sigmaC: ICE_SIGMA_C } : waterThere(place);
    if (truth === null)
      return refused('Nobody knows how hot water boils here: type the height or the air pressure first.');
    if (Math.abs(celsius - truth.celsius) > NOT_THERE_C)
      return refused(notThere(channel, celsius, truth.celsius, where));
    const own = where === 'ice' ? 0 : CHECK_SIGMA_C;
    const check: ProbeCheck = {
      in: where,
      shown_c: celsius,
      sigma_c: Math.hypot(sigmaC, own, 0.001),
      true_c: truth.celsius,
      true_sigma_c: truth.sigmaC,
      at: isoWithOffset(this.#options.machine.wallMs()),
    };
    return { ok: true, data: check };
  }

  #keep({ baud, place, probes }: Extract<ProbeSetupCommand, { probes_keep: unknown }>['probes_keep']): Outcome {
    const fresh = probes.map((one): KeptProbe => ({
      ...one,
      sensor: one.sensor as Sensor | undefined,
      baud,
      error: errorOf(one.checks),
    }));
    keepProbes(this.#options.notebook, fresh, place);
    return { ok: true, data: fresh };
  }

  #kept(): KeptProbes {
    const { probes, place } = keptProbes(this.#options.notebook);
    const wall = isoWithOffset(this.#options.machine.wallMs());
    return { probes, place, due: checkDue(probes, this.#options.boil()?.state ?? null, wall) };
  }

  #health(): Outcome {
    const looked = this.#options.boil() ?? this.#options.heard();
    if (looked === null) return { ok: true, data: { probes: [], together: [], refused: [] } };
    const nowMs = this.#options.machine.wallMs();
    const at: Looked = { ...looked, wallAt: (t) => isoWithOffset(nowMs - (looked.t - t)) };
    return { ok: true, data: probeHealth(at, keptProbes(this.#options.notebook).probes) };
  }
}

function tried(lines: readonly string[], format: PortFormat): Tried {
  return { lines: lines.map((text) => ({ text, ...readLine(text, format) })) };
}

function tracksOf(state: BoilState, path: string): { channel: string; track: ProbeTrack }[] {
  const told = (state.header.probes ?? []).flatMap(({ id, port, channel }) =>
    port === path ? [{ channel, track: state.probes[id]! }] : [],
  );
  const strays = Object.entries(state.strays).flatMap(([id, track]) =>
    track.port === path ? [{ channel: id.slice(path.length + 1), track }] : [],
  );
  return [...told, ...strays];
}

function notThere(channel: string, celsius: number, truth: number, where: ProbeCheck['in']): string {
  const shown = `${channel} stands still at ${celsius.toFixed(1)} °C`;
  return where === 'ice'
    ? `${shown}, which is no ice water: stir crushed ice with a little water, and hold the tip in the middle of it.`
    : `${shown}, and water boils at about ${truth.toFixed(0)} °C here: bring plain water to a full boil, hold the tip under the surface, and look at the height and the pressure that you typed.`;
}
