// The probes that somebody set up and checked outside of a boil: kept in the notebook, and told to the next boil.
import type { Header } from '../../core/boil/entries.ts';
import { errorFrom } from '../../core/probes/check-offset.ts';
import { probeName } from '../../core/pan/baseline.ts';
import type { Notebook, Teaching } from '../../notebook/contract.ts';
import type { Setup } from '../../protocol/header-schema.ts';
import { isOnPort } from '../../protocol/probe-setup-messages.ts';
import type { KeptProbe, Place, ProbeCheck, ProbeError } from '../../protocol/probe-setup-messages.ts';

const KEY = 'probes';

interface Kept {
  probes: KeptProbe[];
  place: Place;
}

/** The probes that somebody set up, and the place; none where nobody did. */
export function keptProbes(notebook: Pick<Notebook, 'setting'>): Kept {
  return (notebook.setting(KEY) as Kept | null) ?? { probes: [], place: {} };
}

/** All of them at once, in place of what was kept of the same channels of the same port: half of it is never there. */
export function keepProbes(
  notebook: Pick<Notebook, 'setting' | 'keepSetting'>,
  fresh: KeptProbe[],
  place: Place,
): void {
  const isSame = (one: KeptProbe, other: KeptProbe): boolean =>
    one.channel === other.channel && (one.path === other.path || (one.device !== null && one.device === other.device));
  const others = keptProbes(notebook).probes.filter((old) => !fresh.some((one) => isSame(old, one)));
  notebook.keepSetting(KEY, { probes: [...others, ...fresh], place });
}

/** How much a probe shows too much by its checks; null where there is none. */
export function errorOf(checks: readonly ProbeCheck[]): ProbeError | null {
  const seen = (where: ProbeCheck['in']) => {
    const check = checks.find((one) => one.in === where);
    if (check === undefined) return null;
    return { shownC: check.shown_c, sigmaC: check.sigma_c, trueC: check.true_c, trueSigmaC: check.true_sigma_c };
  };
  return errorFrom(seen('boiling'), seen('ice'));
}

/**
 * What the checks teach the probes of a setup, as an earlier boil would: each check a teaching of its own date, so that
 * the newest of boil and check counts.
 */
export function checkTeachings(setup: Setup | Header, kept: readonly KeptProbe[]): Teaching[] {
  const { probes = [], ports = [] } = setup as Header;
  return kept.flatMap((one): Teaching[] => {
    const port = ports.find((each) => isOnPort(one, each));
    const probe = probes.find(({ port: id, channel }) => id === port?.id && channel === one.channel);
    const at = lastCheckOf(one);
    if (probe === undefined || one.error === null || at === null) return [];
    const { tooHighC, sigmaC } = one.error;
    const learnt = { names: [probeName(probe.id)], mean: [tooHighC], covariance: [[sigmaC ** 2]] };
    return [{ boil: '', name: 'Probe check', started: at, learnt, probes, forgotten: [] }];
  });
}

/** Wall clock of the newest check, ISO 8601; null for none. */
export function lastCheckOf({ checks }: KeptProbe): string | null {
  return (
    checks
      .map(({ at }) => at)
      .sort((a, b) => Date.parse(a) - Date.parse(b))
      .at(-1) ?? null
  );
}

/** Boils and checks, the newest first. */
export const newestFirst = (teachings: readonly Teaching[]): Teaching[] =>
  [...teachings].sort((a, b) => Date.parse(b.started) - Date.parse(a.started));
