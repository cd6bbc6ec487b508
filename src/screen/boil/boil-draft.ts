// A boil's set-up as it stands in the form: texts in the units shown, turned to and from a header.
import type { Header, Pan, Port, Probe, SapKind, Settings, Setup } from '../client/types.ts';
import { inField } from '../language/numbers.ts';
import { say } from '../language/say.ts';
import type { MessageKey } from '../language/say.ts';
import {
  brixOf,
  metresOf,
  metresShown,
  mmOf,
  mmShown,
  powerShown,
  strengthShown,
  noNumber,
  outside,
  power,
  typedNumber,
  unitSymbols,
  wattsOf,
} from '../words/amounts.ts';
import {
  differenceFromCelsius,
  celsiusFromDifference,
  celsiusFromTemperature,
  temperatureFromCelsius,
} from '../../core/quantities/units.ts';
import type { LeadName } from '../words/lead-words.ts';
import { problemInSap, sapDraft, sapOf } from './sap-draft.ts';
import type { SapDraft } from './sap-draft.ts';
import { problemInVessel, vesselDraft, vesselOf } from './vessel-draft.ts';
import type { VesselDraft } from './vessel-draft.ts';

export type FinishKind = 'usual' | 'strength' | 'rise';

/** Every text is as typed; '' is "not given". `before` carries what the form does not show. */
export interface PanDraft {
  before: Pan;
  name: string;
  sap: SapDraft;
  vessel: VesselDraft;
  heat: '' | 'propane' | 'wood' | 'electric' | 'other';
  power: string;
  finish: FinishKind;
  finishAt: string;
  ceiling: string;
  leastDepth: string;
  /** s before; null is "as in Settings". */
  leads: Record<LeadName, number | null>;
  /** A probe's id, '' for none, or `many` for a list that is kept as it is. */
  probe: string;
}

export interface BoilDraft {
  name: string;
  altitude: string;
  ports: Port[];
  probes: Probe[];
  pans: PanDraft[];
}

function text(value: number | undefined, digits: number): string {
  return value === undefined ? '' : inField(value, digits);
}

/** A finish as it stands in the form. */
export function finishDraft(
  finish: Pan['finish'],
  settings: Settings,
): Pick<PanDraft, 'finish' | 'finishAt' | 'ceiling'> {
  if (finish === undefined) return { finish: 'usual', finishAt: '', ceiling: '' };
  const ceiling =
    finish.ceiling_c === undefined ? '' : text(temperatureFromCelsius(finish.ceiling_c, settings.temperature), 1);
  const digits = settings.strength === 'sg' ? 4 : 1;
  if ('brix' in finish)
    return { finish: 'strength', finishAt: text(strengthShown(finish.brix, settings), digits), ceiling };
  return { finish: 'rise', finishAt: text(differenceFromCelsius(finish.rise_c, settings.temperature), 2), ceiling };
}

/** A pan's own leads; null where it has none. */
export function leadsOf(said: Partial<Record<LeadName, number | undefined>> | undefined): PanDraft['leads'] {
  const { near_finish_lead_s: near, scorch_lead_s: scorch, low_level_lead_s: low } = said ?? {};
  return { near_finish_lead_s: near ?? null, scorch_lead_s: scorch ?? null, low_level_lead_s: low ?? null };
}

/** A lead that goes by Settings is not in the pan; what else the pan's settings say stays. */
function settingsOfPan({ before, leads }: PanDraft): Pan['settings'] {
  const own = Object.entries(leads).filter(([, seconds]) => seconds !== null);
  const others = Object.entries(before.settings ?? {}).filter(([name]) => !(name in leads));
  const all = [...others, ...own];
  return all.length === 0 ? undefined : Object.fromEntries(all);
}

function panDraft(pan: Pan, settings: Settings, kinds: readonly SapKind[]): PanDraft {
  const size = (mm: number | undefined): string => text(mm === undefined ? undefined : mmShown(mm, settings), 2);
  const watts = pan.heat?.power_w;
  return {
    before: pan,
    name: pan.name ?? '',
    sap: sapDraft(pan.sap, kinds),
    vessel: vesselDraft(pan.vessel, settings),
    heat: pan.heat?.kind ?? '',
    power: text(watts === undefined ? undefined : powerShown(watts, settings), settings.power === 'watt' ? 1 : 0),
    ...finishDraft(pan.finish, settings),
    leastDepth: size(pan.min_depth_mm),
    leads: leadsOf(pan.settings),
    probe: Array.isArray(pan.probe) ? 'many' : (pan.probe ?? ''),
  };
}

/** Whether a pan is called as the form calls it by itself. */
export function isUsualName(name: string): boolean {
  const number = /\d+/u.exec(name)?.[0];
  return number !== undefined && name === say('pan.numbered', { number });
}

/** The next pan, with an id that no other pan has, of the same sap, kind of fire and finish as the one before; its power is nobody's but that burner's. */
export function anotherPan(pans: readonly PanDraft[], settings: Settings, kinds: readonly SapKind[]): PanDraft {
  const taken = new Set(pans.map((pan) => pan.before.id));
  let n = pans.length + 1;
  while (taken.has(`p${n}`)) n += 1;
  const last = pans.at(-1);
  const pan = panDraft({ id: `p${n}`, name: say('pan.numbered', { number: String(n) }) }, settings, kinds);
  if (last === undefined) return pan;
  const { sap, heat, finish, finishAt } = last;
  return { ...pan, sap, heat, finish, finishAt };
}

/** A draft of a set-up or of a running boil's header; of nothing, one pan. */
export function boilDraft(from: Setup | Header | null, settings: Settings, kinds: readonly SapKind[]): BoilDraft {
  const pans = from?.pans ?? [];
  const altitude = from?.site?.altitude_m;
  return {
    name: from?.name ?? '',
    altitude: text(altitude === undefined ? undefined : metresShown(altitude, settings), 0),
    ports: from?.ports ?? [],
    probes: from?.probes ?? [],
    pans: pans.length > 0 ? pans.map((pan) => panDraft(pan, settings, kinds)) : [anotherPan([], settings, kinds)],
  };
}

interface Checked {
  label: string;
  typed: string;
  least: number;
  greatest: number;
  unit: string;
  needed?: boolean;
}

/** What a pan is called in a sentence. */
export const calledIn = (pan: PanDraft): string => pan.name.trim() || say('pan.any');

function problemWith({ label, typed, least, greatest, unit, needed = false }: Checked): string | null {
  if (typed.trim() === '') return needed ? say('boil.problem.needed', { field: label }) : null;
  const value = typedNumber(typed);
  if (value === null) return noNumber(label, typed);
  return value < least || value > greatest ? outside({ field: label, typed, least, greatest, unit }) : null;
}

function panChecks(pan: PanDraft, settings: Settings): Checked[] {
  const of = (what: MessageKey): string => say('boil.of_pan', { pan: calledIn(pan), what: say(what) });
  const inches = settings.length === 'inch';
  const units = unitSymbols(settings);
  const checks: Checked[] = [
    {
      label: of('boil.check.power'),
      typed: pan.power,
      ...POWERS[settings.power],
      unit: units.power,
    },
    {
      label: of('boil.check.least_depth'),
      typed: pan.leastDepth,
      least: 0,
      greatest: inches ? 20 : 500,
      unit: units.length,
    },
    {
      label: of('boil.check.ceiling'),
      typed: pan.ceiling,
      ...CEILINGS[settings.temperature],
      unit: units.temperature,
    },
  ];
  const finish = { label: of('boil.check.finish'), typed: pan.finishAt, needed: true };
  if (pan.finish === 'strength')
    checks.push({ ...finish, ...STRENGTHS[settings.strength], unit: isBare(settings) ? '' : units.strength });
  if (pan.finish === 'rise') checks.push({ ...finish, least: 0.5, greatest: 40, unit: units.temperature });
  return checks;
}

/** What is wrong with the power that was typed for a pan's fire; null for nothing. */
export function problemInPower(pan: PanDraft, settings: Settings): string | null {
  const [checked] = panChecks(pan, settings);
  return problemWith({ ...checked!, label: say('boil.power') });
}

/** From what no pan boils over on, kW and Btu/h: 60 typed for 60,000 Btu/h planned a boil of a year. */
const POWERS = { watt: { least: 0.1, greatest: 1000 }, 'btu-per-hour': { least: 300, greatest: 3_000_000 } } as const;

/** Finishes that anybody boils to, on each scale. */
const STRENGTHS = {
  brix: { least: 10, greatest: 80 },
  baume: { least: 5, greatest: 43 },
  sg: { least: 1.03, greatest: 1.42 },
} as const;

/** A specific gravity is typed as a bare number. */
export const isBare = (settings: Settings): boolean => settings.strength === 'sg';

/** A thermometer that has to come off before a mark has it somewhere here; the recording takes no more than 200 °C. */
const CEILINGS = { C: { least: 50, greatest: 200 }, F: { least: 122, greatest: 392 } } as const;

/** Places that anybody boils at, as the recording takes them. */
const HEIGHTS = { mm: { least: -500, greatest: 9000 }, inch: { least: -1640, greatest: 29_527 } } as const;

/** The first thing that is wrong with a pan's sap or vessel. */
function problemInPan(pan: PanDraft, settings: Settings): string | null {
  const problem = problemInSap(pan.sap) ?? problemInVessel(pan.vessel, settings);
  return problem === null ? null : say('boil.of_pan', { pan: calledIn(pan), what: problem });
}

/** What is wrong with the draft, in a sentence that names the pan and the field; null when it can be used. */
export function problemInDraft(draft: BoilDraft, settings: Settings): string | null {
  if (draft.pans.length === 0) return say('boil.no_pan');
  const height = {
    label: say('boil.check.height'),
    typed: draft.altitude,
    ...HEIGHTS[settings.length],
    unit: unitSymbols(settings).height,
  };
  const checks = [height, ...draft.pans.flatMap((pan) => panChecks(pan, settings))];
  const problems = [...checks.map(problemWith), ...draft.pans.map((pan) => problemInPan(pan, settings))];
  return problems.find((problem) => problem !== null) ?? null;
}

/** Under and over these a burner under one pan is rather a slip of the finger or another unit, W (judgement). */
const LEAST_BURNER_W = 500;
const MOST_BURNER_W = 60_000;

/** What is asked about a checked draft before it is used: the first burner that can hardly be meant; null for none. */
export function doubtInDraft({ pans }: BoilDraft, settings: Settings): string | null {
  for (const pan of pans) {
    const typed = pan.heat === '' ? null : typedNumber(pan.power);
    const watts = typed === null ? null : wattsOf(typed, settings);
    if (watts === null || (watts >= LEAST_BURNER_W && watts <= MOST_BURNER_W)) continue;
    return say('boil.doubt.power', {
      pan: calledIn(pan),
      power: power(watts, settings),
      least: power(LEAST_BURNER_W, settings),
      most: power(MOST_BURNER_W, settings),
    });
  }
  return null;
}

function number(typed: string): number | undefined {
  return typedNumber(typed) ?? undefined;
}

function mm(typed: string, settings: Settings): number {
  return mmOf(number(typed) ?? 0, settings);
}

/** The usual strength of each sap, as recording.md has it. */
export const usualBrix = (kind: SapDraft['kind']): number => (kind === 'maple' ? 66.9 : 67);

/** The finish of a checked draft; undefined for what is usual. */
export function wantedFinish(pan: PanDraft, settings: Settings): Pan['finish'] {
  const ceiling = number(pan.ceiling);
  const guard = ceiling === undefined ? {} : { ceiling_c: celsiusFromTemperature(ceiling, settings.temperature) };
  const at = number(pan.finishAt) ?? 0;
  if (pan.finish === 'strength') return { ...finishStrength(pan, at, settings), ...guard };
  if (pan.finish === 'rise') return { rise_c: celsiusFromDifference(at, settings.temperature), ...guard };
  return ceiling === undefined ? undefined : { brix: usualBrix(pan.sap.kind), ...guard };
}

/** A strength that was not touched stays as it was written, though its scale shows fewer digits. */
function finishStrength(pan: PanDraft, typed: number, settings: Settings): { brix: number } {
  const { finish } = pan.before;
  const isUntouched =
    finish !== undefined && 'brix' in finish && finishDraft(pan.before.finish, settings).finishAt === pan.finishAt;
  return { brix: isUntouched ? finish.brix : brixOf(typed, settings) };
}

/** A field that was emptied leaves the pan; what the form does not show stays. */
function panOf(pan: PanDraft, settings: Settings, kinds: readonly SapKind[]): Pan {
  const typed = number(pan.power);
  const powerSaid = typed === undefined ? {} : { power_w: wattsOf(typed, settings) };
  const next: Pan = {
    ...pan.before,
    name: pan.name.trim() || undefined,
    sap: sapOf(pan.sap, pan.before.sap, kinds),
    vessel: vesselOf(pan.vessel, settings),
    heat: pan.heat === '' ? undefined : { ...pan.before.heat, kind: pan.heat, power_w: undefined, ...powerSaid },
    finish: wantedFinish(pan, settings),
    min_depth_mm: pan.leastDepth.trim() === '' ? undefined : mm(pan.leastDepth, settings),
    settings: settingsOfPan(pan),
    probe: pan.probe === 'many' ? pan.before.probe : pan.probe || undefined,
  };
  return JSON.parse(JSON.stringify(next)) as Pan;
}

/** The set-up of a checked draft; also the merge patch for a running boil, as its lists are whole. */
export function setupOf(draft: BoilDraft, settings: Settings, kinds: readonly SapKind[]): Setup {
  const altitude = number(draft.altitude);
  return {
    ...(draft.name.trim() === '' ? {} : { name: draft.name.trim() }),
    ...(altitude === undefined ? {} : { site: { altitude_m: metresOf(altitude, settings) } }),
    ports: draft.ports,
    probes: draft.probes,
    pans: draft.pans.map((pan) => panOf(pan, settings, kinds)),
  };
}
