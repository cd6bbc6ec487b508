// One kept boil under several settings: run through as it was for its truth, and under each of them.
import { alarmHistory, isAbout } from '../../core/boil/alarm-history.ts';
import type { RaisingShown } from '../../core/boil/alarm-history.ts';
import type { Entry, Header } from '../../core/boil/entries.ts';
import { mergePatch } from '../../core/boil/merge-patch.ts';
import type { RaisingName } from '../../core/season/records.ts';
import { type Cost, costOf, type Worst, worstOf } from '../../core/tuning/cost.ts';
import { offsetFacts } from '../../core/tuning/probe-offset.ts';
import type { OffsetFacts } from '../../core/tuning/probe-offset.ts';
import { scoreOf } from '../../core/tuning/score.ts';
import type { BoilScore } from '../../core/tuning/score.ts';
import { panTruths, type Untold, untoldOf } from '../../core/tuning/truth.ts';
import { checkHeader } from '../../protocol/header-schema.ts';
import { parseEntry } from '../../protocol/recording.ts';
import { runThrough, type RunThrough } from './run-through.ts';

/** A boil as the notebook keeps it. */
export interface KeptBoil {
  boil: string;
  header: Header;
  texts: Iterable<string>;
  /** Raisings that were called of no use after the boil. */
  noUse: readonly RaisingName[];
}

/** What one settings file would have done, or why it does not fit this boil. */
export type Tuned =
  | {
      boil: string;
      with: string;
      score: BoilScore;
      cost: Cost | null;
      worst: Worst | null;
      /** What was read of its end all the same, where the truth of no pan is known. */
      untold: Untold | null;
    }
  | { boil: string; with: string; why: string };

export interface SettingsFile {
  /** As the person named it. */
  name: string;
  /** JSON merge patch over the header. */
  patch: object;
}

/** Strengths change by less than 0.3 °Bx in it even at the end of a flat pan. */
const LOOK_EVERY_MS = 5_000;

/** What came of one boil: under each file, and what it tells of its probes as it was. */
export interface BoilTuned {
  tuned: Tuned[];
  facts: OffsetFacts;
}

/** How a kept boil would have done under each of the files; a file that makes no header of it is told as that. */
export function tuneBoil(kept: KeptBoil, files: readonly SettingsFile[]): BoilTuned {
  const checks = files.map(({ patch }) => checkHeader(mergePatch(kept.header, patch)));
  const headers = checks.flatMap((checked) => (checked.ok ? [checked.header] : []));
  const [asItWas, ...runs] = runThrough([kept.header, ...headers], entriesOf(kept.texts), LOOK_EVERY_MS) as [
    RunThrough,
    ...RunThrough[],
  ];
  const truths = panTruths(asItWas.state, asItWas.seen);
  const untold = truths.length === 0 ? untoldOf(asItWas.state) : null;
  const { raisings } = alarmHistory(asItWas.state.history, asItWas.state.marks, asItWas.state.header);
  const words = raisings.map((raising) => ({ ...raising, noUse: raising.noUse || isNamed(raising, kept.noUse) }));
  const tuned = files.map(({ name }, place): Tuned => {
    const checked = checks[place]!;
    if (!checked.ok) return { boil: kept.boil, with: name, why: checked.why };
    const run = runs[headers.indexOf(checked.header)]!;
    const { designs } = run.state;
    const score = scoreOf(run.calls, designs, truths, words);
    const finishBrix = (pan: string): number | null => designs[pan]?.finishBrix ?? null;
    const cost = costOf(score, finishBrix);
    return { boil: kept.boil, with: name, score, cost, worst: worstOf(score, finishBrix), untold };
  });
  return { tuned, facts: offsetFacts(asItWas.state) };
}

function* entriesOf(texts: Iterable<string>): Generator<Entry> {
  for (const text of texts) {
    const parsed = parseEntry(text);
    if (parsed.ok) yield parsed.entry;
  }
}

function isNamed(raising: RaisingShown, names: readonly RaisingName[]): boolean {
  return names.some(({ port, ...name }) => isAbout(raising, { ...name, port: port ?? undefined }));
}
