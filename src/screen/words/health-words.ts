// How well a probe does, in words: noise, step, lag, losses, how much it is off and since when.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { differenceFromCelsius } from '../../core/quantities/units.ts';
import type { ProbeHealth, Settings } from '../client/types.ts';
import { hostWords } from '../language/host-words.ts';
import { language } from '../language/language.ts';
import { say, setApart } from '../language/say.ts';
import { number, temperature } from './amounts.ts';
import { dayAndTime } from './clock.ts';
import { errorWords } from './setup-words.ts';

type Probe = ProbeHealth['probes'][number];

/** Noise over this moves the strength, °C; a lag over this makes a dip come late, s. */
const NOISY_C = 0.25;
const SLOW_S = 15;

function by(celsius: number, digits: number, settings: Settings): string {
  return `${number(Math.abs(differenceFromCelsius(celsius, settings.temperature)), digits)} °${settings.temperature}`;
}

function noise({ noiseC }: Probe, settings: Settings): string {
  if (noiseC === null) return say('health.noise.unknown');
  return noiseC > NOISY_C
    ? say('health.noise.much', { by: by(noiseC, 2, settings) })
    : say('health.noise.quiet', { by: by(noiseC, 2, settings) });
}

function step({ stepC }: Probe, settings: Settings): string {
  return stepC === null ? say('health.step.unknown') : say('health.step', { by: by(stepC, 2, settings) });
}

function lag({ lagS }: Probe): string {
  if (lagS === null) return say('health.lag.unknown');
  const seconds = number(lagS, lagS < 10 ? 1 : 0);
  return lagS > SLOW_S ? say('health.lag.slow', { seconds }) : say('health.lag', { seconds });
}

function losses({ losses: count, lostSeconds }: Probe): string {
  if (count === 0) return say('health.never_lost');
  return say('health.lost', { count, length: lengthOfTime(lostSeconds) });
}

function drift({ driftC, checkedAt }: Probe, settings: Settings): string {
  const when = checkedAt === null ? '' : say('health.checked', { time: dayAndTime(checkedAt) });
  if (driftC === null) return when;
  if (Math.abs(driftC) < 0.05) return `${when}${say('health.drift.none')}`;
  return `${when}${say(driftC > 0 ? 'health.drift.more' : 'health.drift.less', { by: by(driftC, 1, settings) })}`;
}

/** "Quiet, within 0.04 °C; tells steps of 0.06 °C; … shows 0.40 °C too much (± 0.10 °C), checked 18 Apr 2027, 08:10." */
export function healthWords(probe: Probe, settings: Settings): string {
  const parts = [noise(probe, settings), step(probe, settings), lag(probe), losses(probe)];
  const error =
    probe.error === null && probe.checkedAt !== null
      ? say('health.check_unsure', { time: dayAndTime(probe.checkedAt) })
      : `${errorWords(probe.error, settings)}${drift(probe, settings)}`;
  const all = setApart([...parts, error]);
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
  const said = { count: probes.length, pan, apart: by(apartC, 1, settings) };
  const together = temperature(meanC, settings);
  if (odd.length >= probes.length) return say('health.all_odd', said);
  if (odd.length > 0) {
    const names = new Intl.ListFormat(language.value, { type: 'conjunction' }).format(odd);
    return say('health.odd', { ...said, odd: names, many: odd.length, together });
  }
  return apartC < AGREE_C ? say('health.agree', { ...said, together }) : say('health.differ', said);
}

/** "A: no number, 12 lines". */
export function refusedWords(port: string, reason: string, count: number): string {
  return say('health.refused', { port, reason: hostWords(reason), count });
}
