// The probes that somebody set up and checked outside of a boil: kept in the notebook, and told to the next boil.
import type { Header } from '../../core/boil/entries.ts';
import { errorFrom, isSure, type Seen } from '../../core/probes/check-offset.ts';
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

/**
 * The probes that somebody set up, and the place; none where nobody did. What their checks tell is worked out anew: an
 * older program may have kept more of a check than it is worth.
 */
export function keptProbes(notebook: Pick<Notebook, 'setting'>): Kept {
  const { probes, place } = (notebook.setting(KEY) as Kept | null) ?? { probes: [], place: {} };
  return { probes: probes.map((one) => ({ ...one, error: errorOf(one.checks) })), place };
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

/** "Back pot (T1)": a probe of a boil as somebody named it; its id where nobody did. */
export function calledProbe(header: Header, kept: readonly KeptProbe[], id: string): string {
  const probe = header.probes?.find((one) => one.id === id);
  const port = header.ports?.find((one) => one.id === probe?.port);
  const own = kept.find((one) => one.channel === probe?.channel && isOnPort(one, port ?? {}));
  return own === undefined || own.name === '' ? id : `${own.name} (${own.channel})`;
}

/** How much a probe shows too much by its checks; null where there is none, or none that is sure enough. */
export function errorOf(checks: readonly ProbeCheck[]): ProbeError | null {
  const seen = (where: ProbeCheck['in']): Seen | null => {
    const check = checks.find((one) => one.in === where);
    return check === undefined ? null : seenIn(check);
  };
  return errorFrom(seen('boiling'), seen('ice'));
}

const seenIn = ({ shown_c, sigma_c, true_c, true_sigma_c }: ProbeCheck): Seen => ({
  shownC: shown_c,
  sigmaC: sigma_c,
  trueC: true_c,
  trueSigmaC: true_sigma_c,
});

/**
 * What the checks teach the probes of a setup, as an earlier boil would: each check a teaching of its own date, so that
 * the newest of boil and check counts.
 */
export function checkTeachings(setup: Setup | Header, kept: readonly KeptProbe[]): Teaching[] {
  const { probes = [], ports = [] } = setup as Header;
  return kept.flatMap((one): Teaching[] => {
    const port = ports.find((each) => isOnPort(one, each));
    const probe = probes.find(({ port: id, channel }) => id === port?.id && channel === one.channel);
    const at = lastCheckOf({ checks: one.checks.filter((check) => isSure(seenIn(check))) });
    if (probe === undefined || one.error === null || at === null) return [];
    const { tooHighC, sigmaC } = one.error;
    const learnt = { names: [probeName(probe.id)], mean: [tooHighC], covariance: [[sigmaC ** 2]] };
    return [{ boil: '', name: 'Probe check', started: at, learnt, probes, forgotten: [] }];
  });
}

/** Wall clock of the newest check, ISO 8601; null for none. */
export function lastCheckOf({ checks }: Pick<KeptProbe, 'checks'>): string | null {
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
