// A boil's set-up as it stands in the form: texts in the units shown, turned to and from a header.
import type { Header, Pan, Port, Probe, Settings, Setup } from '../client/types.ts';
import { metresOf, metresShown, mmOf, mmShown, typedNumber, unitSymbols } from '../words/amounts.ts';
import {
  differenceFromCelsius,
  celsiusFromDifference,
  celsiusFromTemperature,
  temperatureFromCelsius,
} from '../../core/quantities/units.ts';

export type FinishKind = 'usual' | 'brix' | 'rise';

/** Every text is as typed; '' is "not given". `before` carries what the form does not show. */
export interface PanDraft {
  before: Pan;
  name: string;
  sap: 'maple' | 'birch' | 'mix';
  shape: '' | 'round' | 'rectangular';
  diameter: string;
  length: string;
  width: string;
  heat: '' | 'propane' | 'wood' | 'electric' | 'other';
  /** kW */
  power: string;
  finish: FinishKind;
  finishAt: string;
  ceiling: string;
  leastDepth: string;
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
  return value === undefined ? '' : String(Number(value.toFixed(digits)));
}

function finishOf(pan: Pan, settings: Settings): Pick<PanDraft, 'finish' | 'finishAt' | 'ceiling'> {
  const { finish } = pan;
  if (finish === undefined) return { finish: 'usual', finishAt: '', ceiling: '' };
  const ceiling =
    finish.ceiling_c === undefined ? '' : text(temperatureFromCelsius(finish.ceiling_c, settings.temperature), 1);
  if ('brix' in finish) return { finish: 'brix', finishAt: text(finish.brix, 1), ceiling };
  return { finish: 'rise', finishAt: text(differenceFromCelsius(finish.rise_c, settings.temperature), 2), ceiling };
}

export function panDraft(pan: Pan, settings: Settings): PanDraft {
  const { vessel } = pan;
  const size = (mm: number | undefined): string => text(mm === undefined ? undefined : mmShown(mm, settings), 2);
  return {
    before: pan,
    name: pan.name ?? '',
    sap: typeof pan.sap === 'object' ? 'mix' : (pan.sap ?? 'maple'),
    shape: vessel?.shape ?? '',
    diameter: vessel?.shape === 'round' ? size(vessel.diameter_mm) : '',
    length: vessel?.shape === 'rectangular' ? size(vessel.length_mm) : '',
    width: vessel?.shape === 'rectangular' ? size(vessel.width_mm) : '',
    heat: pan.heat?.kind ?? '',
    power: text(pan.heat?.power_w === undefined ? undefined : pan.heat.power_w / 1000, 1),
    ...finishOf(pan, settings),
    leastDepth: size(pan.min_depth_mm),
    probe: Array.isArray(pan.probe) ? 'many' : (pan.probe ?? ''),
  };
}

/** The next pan, with an id that no other pan has, of the same sap and heat as the one before. */
export function anotherPan(pans: readonly PanDraft[], settings: Settings): PanDraft {
  const taken = new Set(pans.map((pan) => pan.before.id));
  let n = pans.length + 1;
  while (taken.has(`p${n}`)) n += 1;
  const last = pans.at(-1);
  return {
    ...panDraft({ id: `p${n}`, name: `Pan ${n}` }, settings),
    sap: last?.sap === 'birch' ? 'birch' : 'maple',
    heat: last?.heat ?? '',
  };
}

/** A draft of a set-up or of a running boil's header; of nothing, one pan. */
export function boilDraft(from: Setup | Header | null, settings: Settings): BoilDraft {
  const pans = from?.pans ?? [];
  const altitude = from?.site?.altitude_m;
  return {
    name: from?.name ?? '',
    altitude: text(altitude === undefined ? undefined : metresShown(altitude, settings), 0),
    ports: from?.ports ?? [],
    probes: from?.probes ?? [],
    pans: pans.length > 0 ? pans.map((pan) => panDraft(pan, settings)) : [anotherPan([], settings)],
  };
}

interface Checked {
  label: string;
  typed: string;
  least: number;
  greatest: number;
  needed?: boolean;
}

function problemWith({ label, typed, least, greatest, needed = false }: Checked): string | null {
  if (typed.trim() === '') return needed ? `${label}: type a number.` : null;
  const value = typedNumber(typed);
  if (value === null) return `${label}: “${typed}” is no plain number.`;
  return value < least || value > greatest ? `${label}: ${typed} is outside of ${least} to ${greatest}.` : null;
}

function panChecks(pan: PanDraft, settings: Settings): Checked[] {
  const who = pan.name.trim() || 'A pan';
  const inches = settings.length === 'inch';
  const size = { least: inches ? 2 : 50, greatest: inches ? 200 : 5000, needed: true };
  const checks: Checked[] = [
    { label: `${who}, burner power`, typed: pan.power, least: 0, greatest: 1000 },
    { label: `${who}, least depth`, typed: pan.leastDepth, least: 0, greatest: inches ? 20 : 500 },
    { label: `${who}, ceiling`, typed: pan.ceiling, least: 50, greatest: 240 },
  ];
  if (pan.shape === 'round') checks.push({ ...size, label: `${who}, width across`, typed: pan.diameter });
  if (pan.shape === 'rectangular') {
    checks.push(
      { ...size, label: `${who}, length`, typed: pan.length },
      { ...size, label: `${who}, width`, typed: pan.width },
    );
  }
  if (pan.finish === 'brix')
    checks.push({ label: `${who}, finish`, typed: pan.finishAt, least: 10, greatest: 90, needed: true });
  if (pan.finish === 'rise')
    checks.push({ label: `${who}, finish`, typed: pan.finishAt, least: 0.5, greatest: 40, needed: true });
  return checks;
}

/** What is wrong with the draft, in a sentence that names the pan and the field; null when it can be used. */
export function problemInDraft(draft: BoilDraft, settings: Settings): string | null {
  if (draft.pans.length === 0) return 'A boil needs at least one pan.';
  const height = {
    label: `Height over the sea (${unitSymbols(settings).height})`,
    typed: draft.altitude,
    least: -1500,
    greatest: 25_000,
  };
  const checks = [height, ...draft.pans.flatMap((pan) => panChecks(pan, settings))];
  return checks.map(problemWith).find((problem) => problem !== null) ?? null;
}

function number(typed: string): number | undefined {
  return typedNumber(typed) ?? undefined;
}

function mm(typed: string, settings: Settings): number {
  return mmOf(number(typed) ?? 0, settings);
}

function vesselOf(pan: PanDraft, settings: Settings): Pan['vessel'] {
  if (pan.shape === 'round') return { shape: 'round', diameter_mm: mm(pan.diameter, settings) };
  if (pan.shape === '') return undefined;
  return { shape: 'rectangular', length_mm: mm(pan.length, settings), width_mm: mm(pan.width, settings) };
}

/** The usual strength of each sap, as recording.md has it, for a pan whose only wish is a ceiling. */
const USUAL_BRIX = { maple: 66.9, birch: 67, mix: 67 } as const;

function wantedFinish(pan: PanDraft, settings: Settings): Pan['finish'] {
  const ceiling = number(pan.ceiling);
  const guard = ceiling === undefined ? {} : { ceiling_c: celsiusFromTemperature(ceiling, settings.temperature) };
  const at = number(pan.finishAt) ?? 0;
  if (pan.finish === 'brix') return { brix: at, ...guard };
  if (pan.finish === 'rise') return { rise_c: celsiusFromDifference(at, settings.temperature), ...guard };
  return ceiling === undefined ? undefined : { brix: USUAL_BRIX[pan.sap], ...guard };
}

/** A field that was emptied leaves the pan; what the form does not show stays. */
function panOf(pan: PanDraft, settings: Settings): Pan {
  const kilowatts = number(pan.power);
  const power = kilowatts === undefined ? {} : { power_w: kilowatts * 1000 };
  const next: Pan = {
    ...pan.before,
    name: pan.name.trim() || undefined,
    sap: pan.sap === 'mix' ? pan.before.sap : pan.sap,
    vessel: vesselOf(pan, settings),
    heat: pan.heat === '' ? undefined : { ...pan.before.heat, kind: pan.heat, power_w: undefined, ...power },
    finish: wantedFinish(pan, settings),
    min_depth_mm: pan.leastDepth.trim() === '' ? undefined : mm(pan.leastDepth, settings),
    probe: pan.probe === 'many' ? pan.before.probe : pan.probe || undefined,
  };
  return JSON.parse(JSON.stringify(next)) as Pan;
}

/** The set-up of a checked draft; also the merge patch for a running boil, as its lists are whole. */
export function setupOf(draft: BoilDraft, settings: Settings): Setup {
  const altitude = number(draft.altitude);
  return {
    ...(draft.name.trim() === '' ? {} : { name: draft.name.trim() }),
    ...(altitude === undefined ? {} : { site: { altitude_m: metresOf(altitude, settings) } }),
    ports: draft.ports,
    probes: draft.probes,
    pans: draft.pans.map((pan) => panOf(pan, settings)),
  };
}
