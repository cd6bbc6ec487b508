// How well a probe does, in words: noise, step, lag, losses, how much it is off and since when.
import { formatNumber } from '../../core/quantities/format.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import type { ProbeHealth, Settings } from '../client/types.ts';
import { temperature } from './amounts.ts';
import { dayAndTime, lengthOfTime } from './clock.ts';
import { errorWords } from './setup-words.ts';

type Probe = ProbeHealth['probes'][number];

/** Noise over this moves the strength, °C; a lag over this makes a dip come late, s. */
const NOISY_C = 0.25;
const SLOW_S = 15;

function by(celsius: number, digits: number, settings: Settings): string {
  return `${formatNumber(Math.abs(differenceFromCelsius(celsius, settings.temperature)), digits)} °${settings.temperature}`;
}

function noise({ noiseC }: Probe, settings: Settings): string {
  if (noiseC === null) return 'its noise is not known yet';
  return noiseC > NOISY_C
    ? `▲ it jumps about by ${by(noiseC, 2, settings)}`
    : `quiet, within ${by(noiseC, 2, settings)}`;
}

function step({ stepC }: Probe, settings: Settings): string {
  return stepC === null ? 'its steps are not known yet' : `tells steps of ${by(stepC, 2, settings)}`;
}

function lag({ lagS }: Probe): string {
  if (lagS === null) return 'its lag is not known: dip the cold tip into boiling water once';
  const words = `follows within ${lagS < 10 ? formatNumber(lagS, 1) : formatNumber(lagS, 0)} s`;
  return lagS > SLOW_S ? `▲ slow, ${words}` : words;
}

function losses({ losses: count, lostSeconds }: Probe): string {
  if (count === 0) return 'never lost';
  return `lost ${count === 1 ? 'once' : `${count} times`}, ${lengthOfTime(lostSeconds)} in all`;
}

function drift({ driftC, checkedAt }: Probe, settings: Settings): string {
  const when = checkedAt === null ? '' : `, checked ${dayAndTime(checkedAt)}`;
  if (driftC === null) return when;
  if (Math.abs(driftC) < 0.05) return `${when}, as at the check before`;
  return `${when}, ${by(driftC, 1, settings)} ${driftC > 0 ? 'more' : 'less'} than at the check before`;
}

/** "Quiet, within 0.04 °C; tells steps of 0.06 °C; … shows 0.40 °C too much (± 0.10 °C), checked 18 Apr 2027, 08:10." */
export function healthWords(probe: Probe, settings: Settings): string {
  const parts = [noise(probe, settings), step(probe, settings), lag(probe), losses(probe)];
  const error = `${errorWords(probe.error, settings)}${drift(probe, settings)}`;
  const all = [...parts, error].join('; ');
  return `${all[0]!.toUpperCase()}${all.slice(1)}.`;
}

/** Two tips in one boiling pan differ by less than this once both are right, °C. */
const AGREE_C = 1;

/** "The 2 probes of Back pot agree within 0.2 °C: 101.3 °C together." */
export function togetherWords(
  pan: string,
  { meanC, apartC, odd, probes }: ProbeHealth['together'][number],
  settings: Settings,
): string {
  const what = `The ${probes.length} probes of ${pan}`;
  if (apartC < AGREE_C)
    return `✓ ${what} agree within ${by(apartC, 1, settings)}: ${temperature(meanC, settings)} together.`;
  const differ = `▲ ${what} are ${by(apartC, 1, settings)} apart`;
  return odd === null
    ? `${differ}, and nobody can tell which is wrong: check both in boiling water.`
    : `${differ}: ${odd} is the odd one out. Without it they show ${temperature(meanC, settings)}.`;
}

/** "A: no number, 12 lines". */
export function refusedWords(port: string, reason: string, count: number): string {
  return `${port}: ${reason}, ${count} ${count === 1 ? 'line' : 'lines'}`;
}
