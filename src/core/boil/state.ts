// What is known of a boil after the entries so far: plain data, so that it can be cloned, kept and compared.
import type { AlarmTransition } from '../alarms/alarm.ts';
import { type HistoryKept, rememberTransitions, startHistory } from './alarm-history.ts';
import { byName } from './by-name.ts';
import type { Correction } from './corrections.ts';
import { channelName, type ColdJunction, coldJunctionsOf } from './cold-junction.ts';
import { type AlarmBook, startAlarms } from '../alarms/engine.ts';
import { finishIsOver } from '../pan/finish.ts';
import type { Added } from '../pan/course.ts';
import { settingOf } from './settings.ts';
import { isOtherBurner, steamBefore } from '../pan/filter/start.ts';
import { panBurnerChanged, panProbeMoved } from '../pan/pan-model.ts';
import { type PanModel, startPan, type Surroundings } from '../pan/pan-state.ts';
import { finishBeyondScale, type PanDesign, panDesign } from '../pan/setup.ts';
import type { Header, Mark } from './entries.ts';
import { type ProbeTrack, startProbe } from './probe-track.ts';
import type { Evidence } from '../pan/baseline.ts';
import { type StandingMarks, standingMarks } from './standing-marks.ts';
import { type PanTips, startBeside, startTips } from './tip-levels.ts';
import { lookAround } from './surroundings.ts';
import { priorsOf, type Water, waterFrom } from './water.ts';
import { type RefusedLines, startRefusedLines } from './refused-lines.ts';

export interface KeptMark {
  t: number;
  /** When it happened, ms. */
  at: number;
  mark: Mark;
  withdrawn: boolean;
  /** What it did to the pans' contents, so that it can be taken back. */
  changes: ({ pan: string } & Added)[];
  /** The pour that was seen and that this mark says was none, ms; null where it says nothing of that kind. */
  refused: number | null;
  /** What it says of water point, probe and sap; null where it says nothing of them. */
  evidence: Evidence | null;
  /** It can hardly be meant, and acts on nothing unless somebody says the same again. */
  questioned: boolean;
  /** What is known of its pan contradicts it; and what is known of its probe, of the water point or the sap. */
  doubted: boolean;
  wild: boolean;
  /** What there is to ask about it, in a sentence; said where it is questioned. Null for nothing. */
  doubt: string | null;
  /** What was said beside it though it counts, and is said no more once it is taken back or measured anew. Null for nothing. */
  remark: string | null;
  /**
   * An amount that was held against what its pan's thermometer showed; while it is asked about, litres that this told and
   * that count. Of a depth that counts, litres at 20 °C that were counted just before and that are believed since.
   */
  weighed: boolean;
  seenAs: number | null;
  countsAs: number | null;
  /** Of a depth: volume as it stood over volume at 20 °C; null for any other. */
  swell: number | null;
  /** A reminder that has been called. */
  reminded: boolean;
  /** What it, or its being taken back, changed in what is believed. */
  corrections: Correction[];
  /** A temperature read by hand, less what its thermometer was then known to show too much, °C; null for any other. */
  takenC: number | null;
}

export interface PortTrack {
  state: 'open' | 'lost' | 'waiting';
  why: string | null;
  lines: number;
  unreadable: number;
  refused: RefusedLines;
}

function startPort(): PortTrack {
  return { state: 'waiting', why: null, lines: 0, unreadable: 0, refused: startRefusedLines() };
}

/** The port of that name, which begins when it is first heard of. */
export function portNamed(state: BoilState, id: string): PortTrack {
  const known = state.ports[id];
  if (known !== undefined) return known;
  const port = startPort();
  state.ports[id] = port;
  state.names.ports = Object.keys(state.ports);
  return port;
}

/** Who calls over a boil: the lead times of a header, a book of alarms, and what that book did. */
export interface Caller {
  header: Header;
  book: AlarmBook;
  history: HistoryKept;
  /** Transitions that were made: the boil's own by the last call of applyEntry or advance, those of others since the start. */
  fresh: AlarmTransition[];
}

export interface BoilState extends Caller {
  /** Everything due at or before this has been done, ms. */
  now: number;
  /** When the program began to watch, ms: 0, or later where the fire was lit before. */
  watchedFrom: number;
  nextTick: number;
  ended: boolean;
  /** Something was noted or changed since the pans were last looked at. */
  stirred: boolean;
  /** When the pans are to be looked at before the next whole second, ms; null when they are not. */
  lookDue: number | null;
  /** When the pans were last looked at, ms. */
  lookedAt: number;
  /** The keys of the tables below in their order: a table without a prototype is slow to go through. */
  names: { ports: string[]; probes: string[]; pans: string[] };
  ports: Record<string, PortTrack>;
  probes: Record<string, ProbeTrack>;
  /** Channels that tell the cold junction of thermocouples: `port channel`. */
  coldJunctions: Record<string, ColdJunction>;
  /** Channels that no probe names: `port channel`. */
  strays: Record<string, ProbeTrack>;
  /** Which pan each probe hangs in now. */
  probePan: Record<string, string | null>;
  /** The same the other way round: the probes that hang in each pan. */
  panProbes: Record<string, string[]>;
  /** What is kept of the pans in which several hang. */
  tips: Record<string, PanTips>;
  designs: Record<string, PanDesign>;
  /** What each pan's model is told of the world around it now. */
  around: Record<string, Surroundings>;
  /** What is added to each probe's bare number to make it true, °C. */
  corrections: Record<string, number>;
  pans: Record<string, PanModel>;
  marks: KeptMark[];
  /** What they say that every look asks for. */
  standing: StandingMarks;
  water: Water;
  /** When the water point was last worked out, ms. */
  waterAt: number;
  /** What the pots of plain water showed. */
  pots: Evidence[];
  /** Others that call over the same pans under other lead times, which nothing of the model asks for; none in a live boil. */
  beside: Caller[];
  /** Sentences about entries that could not be used. */
  notices: { t: number; sentence: string }[];
  /** Nominal burner powers that were changed during the boil, W; null where it is not known any more. */
  powers: { t: number; pan: string; watts: number | null }[];
}

/**
 * The state before the first entry. The header must hold together (protocol checks that). `beside` are headers that differ
 * from it in lead times alone (`withoutLeads`): each has its own alarms over the one model.
 */
export function startBoil(header: Header, beside: readonly Header[] = []): BoilState {
  const state: BoilState = {
    header,
    now: -1,
    watchedFrom: 0,
    nextTick: 0,
    ended: false,
    stirred: true,
    lookDue: null,
    lookedAt: -1,
    names: { ports: [], probes: [], pans: [] },
    ports: byName(),
    probes: byName(),
    coldJunctions: byName(),
    strays: byName(),
    probePan: byName(),
    panProbes: byName(),
    tips: byName(),
    designs: byName(),
    around: byName(),
    corrections: byName(),
    pans: byName(),
    marks: [],
    standing: standingMarks([]),
    water: waterFrom([], priorsOf(header), 0).water,
    waterAt: 0,
    pots: [],
    book: startAlarms(),
    history: startHistory(),
    fresh: [],
    beside: beside.map((other) => ({ header: other, book: startAlarms(), history: startHistory(), fresh: [] })),
    notices: [],
    powers: [],
  };
  takeHeader(state, header, 0);
  return state;
}

/** Looks that cannot wait come so far apart at the least, ms: a bad contact may say "broken" a thousand times a second. */
const LEAST_BETWEEN_LOOKS_MS = 50;

/** What happened at t (ms) may call somebody: the pans are looked at then, and not at the next whole second. */
export function lookSoon(state: BoilState, t: number): void {
  state.lookDue ??= Math.max(t, state.lookedAt + LEAST_BETWEEN_LOOKS_MS);
}

/**
 * Makes the state fit a header: new pans, probes and ports begin, those that are gone end,
 * and what stays keeps all that is known of it. A probe changes pan only where the header changed that.
 */
export function takeHeader(state: BoilState, header: Header, t: number): void {
  const placed = state.probePan;
  const before = headerPlaces(state.header);
  state.header = header;
  state.ports = keepNamed(
    state.ports,
    (header.ports ?? []).map((port) => port.id),
    startPort,
  );
  state.probes = keepNamed(
    state.probes,
    (header.probes ?? []).map((probe) => probe.id),
    (id) => startProbe(header.probes!.find((probe) => probe.id === id)!.port, t),
  );
  state.coldJunctions = coldJunctionsOf(header, state.coldJunctions, t);
  for (const { port, channel } of header.probes ?? []) delete state.strays[channelName(port, channel)];
  for (const name in state.coldJunctions) delete state.strays[name];
  // Under another setup a number that does not fit is worth saying again.
  for (const probe of Object.values(state.probes)) probe.said = [];
  const pans = header.pans ?? [];
  state.pans = keepNamed(
    state.pans,
    pans.map((pan) => pan.id),
    () => startPan(t),
  );
  state.names = {
    ports: Object.keys(state.ports),
    probes: Object.keys(state.probes),
    pans: Object.keys(state.pans),
  };
  const said = state.notices.map(({ sentence }) => sentence);
  for (const sentence of pans.map(finishBeyondScale))
    if (sentence !== null && !said.includes(sentence)) state.notices.push({ t, sentence });
  const designsBefore = state.designs;
  state.designs = byName(pans.map((pan): [string, PanDesign] => [pan.id, panDesign(pan, header.learnt)]));
  for (const id in state.pans) {
    // Against a moved finish the strength is judged anew.
    const before = designsBefore[id];
    const after = state.designs[id]!;
    const moved = before?.finishBrix !== after.finishBrix || before?.finishRiseC !== after.finishRiseC;
    if (moved) finishIsOver(state.pans[id]!.course);
    if (before !== undefined && isOtherBurner(before, after))
      panBurnerChanged(state.pans[id]!, settingOf(state, id), steamBefore(after));
  }
  const after = headerPlaces(header);
  const fresh = Object.keys(state.probePan).length === 0;
  state.probePan = byName(
    Object.keys(state.probes).map((probe) => {
      const changed = fresh || before[probe] !== after[probe] || !(probe in state.probePan);
      const place = changed ? (after[probe] ?? null) : (state.probePan[probe] ?? null);
      return [probe, place !== null && place in state.pans ? place : null];
    }),
  );
  placeProbes(state);
  const moved = Object.keys(placed).filter((probe) => placed[probe] !== state.probePan[probe]);
  for (const id of new Set(moved.flatMap((probe) => [placed[probe], state.probePan[probe]]))) {
    const pan = id === null || id === undefined ? undefined : state.pans[id];
    if (pan !== undefined) panProbeMoved(pan, settingOf(state, id!), t);
  }
}

function keepNamed<T>(kept: Record<string, T>, names: string[], make: (name: string) => T): Record<string, T> {
  return byName(names.map((name) => [name, kept[name] ?? make(name)]));
}

/** Which pan each probe belongs to by the header. */
function headerPlaces(header: Header): Record<string, string> {
  const places = byName<string>();
  for (const pan of header.pans ?? []) {
    for (const probe of pan.probe === undefined ? [] : [pan.probe].flat()) places[probe] = pan.id;
  }
  return places;
}

/** All who call over the boil, its own alarms first. */
export const callersOf = (state: BoilState): readonly Caller[] =>
  state.beside.length === 0 ? [state] : [state, ...state.beside];

/** Transitions that were just made: they are handed out, and remembered. */
export function tell({ fresh, history, book }: Caller, made: readonly AlarmTransition[]): void {
  if (made.length === 0) return;
  fresh.push(...made);
  rememberTransitions(history, book, made);
}

/** Call after every change of probePan or of the pans. */
export function placeProbes(state: BoilState): void {
  const { panProbes: before, tips } = state;
  state.panProbes = byName(
    Object.keys(state.pans).map((pan) => [
      pan,
      Object.keys(state.probePan).filter((probe) => state.probePan[probe] === pan),
    ]),
  );
  const isSame = (pan: string, probes: string[]): boolean => probes.join('\n') === before[pan]?.join('\n');
  const pans = Object.entries(state.panProbes);
  state.tips = byName(
    pans
      .filter(([, probes]) => probes.length > 1)
      .map(([pan, probes]): [string, PanTips] => [pan, isSame(pan, probes) ? tips[pan]! : startTips()]),
  );
  for (const [pan, probes] of pans) {
    if (!isSame(pan, probes)) for (const probe of probes) state.probes[probe]!.beside = startBeside();
  }
  lookAround(state);
}
