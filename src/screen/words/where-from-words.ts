// What a number was worked out from, and how old each part of that is, in the person's units.
import { lengthOfTime } from '../../core/quantities/time.ts';
import { isEmptyAt } from '../../protocol/first-pour.ts';
import { counts } from '../../protocol/mark-flow.ts';
import { say } from '../language/say.ts';
import type { Explained, Explanation, Now, PanFacts, SapKind, Settings } from '../client/types.ts';
import { degrees, depth, exactStrength, roundTemperature, strength, temperature, volume } from './amounts.ts';
import { ago } from './clock.ts';
import { kindWords } from './mark-words.ts';
import { altitudeBeside, isPowerTold, originWords } from './origin-words.ts';
import { panNamed, probeName } from './pan-words.ts';
import { sapCalled } from './sap-words.ts';

/** What the words are made for: the moment gives names and times of day. */
export interface Telling {
  now: Now;
  settings: Settings;
  saps: readonly SapKind[];
}

/** What the number was worked out from, each part with its age. */
export function whereFrom(told: Explanation, telling: Telling): string {
  const { facts } = told;
  if (facts === null) return told.waterFrom === null ? '' : say('from.water', { origins: waterOrigins(told, telling) });
  const words: Record<Explained, (told: Explanation, facts: PanFacts, telling: Telling) => string> = {
    water: () => '',
    temperature: fromProbe,
    rise: fromRise,
    rate: (_, one) => say('from.rate', { thermometer: thermometer(one, telling) }),
    strength: fromStrength,
    litres: fromVolume,
    depth: fromDepth,
    'top-up': fromTopUp,
    finish: fromFinish,
    'finish-point': fromFinishPoint,
    'scorch-point': fromScorchPoint,
  };
  return words[told.what](told, facts, telling);
}

const sentences = (...all: string[]): string => all.filter((one) => one !== '').join(' ');

/** What the water point rests on, each once, the weightiest first; the weather is no source. */
function waterOrigins({ parts, t }: Explanation, { now, settings }: Telling): string {
  const sources = parts.filter(({ kind }) => kind !== 'weather' && kind !== 'altitude');
  const altitude = parts.filter(({ kind }) => kind === 'altitude');
  if (sources.length === 0) return altitude.map((part) => originWords(part, now.header, settings, t)).join('');
  return [
    ...sources.map((part) => originWords(part, now.header, settings, t)),
    ...altitude.map(() => altitudeBeside(now.header, settings)),
  ].reduce((some, more) => say('from.and', { some, more }));
}

function thermometer({ probe }: PanFacts, { now }: Telling): string {
  return probe === null ? say('from.thermometer') : say('from.probe_named', { probe: probeName(now.header, probe) });
}

/** "the probe T1 on board A (2 s ago)". */
function heard(facts: PanFacts, t: number, telling: Telling): string {
  const age = facts.heardAt === null ? say('from.not_heard') : ago((t - facts.heardAt) / 1000);
  return say('from.heard', { thermometer: thermometer(facts, telling), age });
}

/** A correction that the screen would print as 0.0 is none, °C. */
const LEAST_CORRECTION_C = 0.05;

function correctionOf(celsius: number, settings: Settings): string {
  const amount = degrees(Math.abs(celsius), settings);
  if (Math.abs(celsius) < LEAST_CORRECTION_C) return say(celsius > 0 ? 'from.nothing_added' : 'from.nothing_off');
  return celsius > 0 ? say('from.added', { amount }) : say('from.taken_off', { amount });
}

function fromProbe(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { now, settings } = telling;
  const error = told.parts.find(({ kind }) => kind !== 'probe' && kind !== 'hand-reading');
  const said = { heard: heard(facts, told.t, telling), correction: correctionOf(facts.correctionC, settings) };
  return error === undefined || error.kind === 'assumed'
    ? say('from.probe', { ...said })
    : say('from.probe_by', { ...said, origin: originWords(error, now.header, settings, told.t) });
}

function waterSentence({ waterC, waterFrom, t }: Explanation, { now, settings }: Telling): string {
  if (waterC === null || waterFrom === null) return '';
  const origin = originWords(waterFrom, now.header, settings, t);
  return say('from.water_boils', { at: temperature(waterC, settings), origin });
}

function fromRise(told: Explanation, facts: PanFacts, telling: Telling): string {
  const reading =
    facts.temperatureC === null ? say('from.what_it_reads') : temperature(facts.temperatureC, telling.settings);
  const said = { reading, heard: heard(facts, told.t, telling) };
  const isBare = Math.abs(facts.correctionC) < LEAST_CORRECTION_C;
  const words = isBare
    ? say('from.rise', said)
    : say('from.rise_corrected', { ...said, correction: correctionOf(facts.correctionC, telling.settings) });
  return sentences(words, waterSentence(told, telling));
}

/** "with the usual sugars of birch", or by what taught this sap. */
function sapWords(told: Explanation, facts: PanFacts, { now, settings, saps }: Telling): string {
  const sap = sapCalled(panNamed(now.header, told.pan)?.sap, saps);
  const { sapFrom } = facts;
  return sapFrom === null
    ? say('from.sugars', { sap })
    : say('from.sugars_corrected', { sap, origin: originWords(sapFrom, now.header, settings, told.t) });
}

function fromStrength(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { now, settings } = telling;
  if (facts.ceilingC !== null) {
    const [reading] = told.parts;
    const source =
      reading === undefined ? say('from.what_you_noted') : originWords(reading, now.header, settings, told.t);
    return say('from.strength_below_boil', { source });
  }
  if (told.parts.length > 0 && told.parts.every(({ kind }) => kind === 'volume'))
    return say('from.counted', { volumes: volumeWords(told, facts, telling) });
  const rise =
    facts.riseC === null ? say('from.how_hot') : say('from.over_water', { rise: degrees(facts.riseC, settings) });
  const said = { rise, heard: heard(facts, told.t, telling), sap: sapWords(told, facts, telling) };
  return sentences(say('from.strength', { ...said }), waterSentence(told, telling), densityWeighed(told, telling));
}

/** How long a density reading says something of a pan that boils on, ms (judgement). */
const WEIGHS_MS = 60 * 60_000;

/** That a density reading of late counts beside the thermometer, which is why the strength is not what it showed. */
function densityWeighed({ pan, t }: Explanation, { now, settings }: Telling): string {
  const last = now.marks.findLast(
    (each) =>
      counts(each) && each.mark.kind === 'density' && each.mark.pan === pan && each.at <= t && each.cameTo !== null,
  );
  if (last === undefined || t - last.at > WEIGHS_MS || last.cameTo === null) return '';
  return say('from.density_weighed', {
    age: ago((t - last.at) / 1000),
    strength: exactStrength(last.cameTo, settings),
  });
}

/** "the volumes noted, the last a Top-up 12 min ago, less what has boiled away since". */
function volumeWords({ pan, parts, t }: Explanation, { volume: last }: PanFacts, { now }: Telling): string {
  const isUnseen = parts.some(({ kind }) => kind === 'nominal-power');
  const counted = isUnseen ? (isPowerTold(now.header, pan) ? 'power' : 'usual') : 'otherwise';
  if (last === null) return say('from.volumes', { counted });
  return say('from.volumes_last', {
    counted,
    last: kindWords(last.kind, isEmptyAt(pan ?? '', { at: last.at, t: last.at }, now.marks)),
    age: ago((t - last.at) / 1000),
  });
}

function fromVolume(told: Explanation, facts: PanFacts, telling: Telling): string {
  return say('from.litres', { volumes: volumeWords(told, facts, telling), at: roundTemperature(20, telling.settings) });
}

function fromDepth(told: Explanation, facts: PanFacts, telling: Telling): string {
  const amount = facts.litres === null ? say('from.what_is_in') : volume(facts.litres, telling.settings);
  return say('from.depth', { amount, volumes: volumeWords(told, facts, telling) });
}

/** What boils away in an hour, for a message that leaves it out where it is "none". */
const goingAway = ({ evaporationLPerH: perHour }: PanFacts, settings: Settings): string =>
  perHour === null || perHour <= 0 ? 'none' : volume(perHour, settings);

function fromTopUp(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  return say('from.top_up', {
    least: depth(facts.leastDepthMm, settings),
    deep: facts.depthMm === null ? 'none' : depth(facts.depthMm, settings),
    going: goingAway(facts, settings),
    volumes: volumeWords(told, facts, telling),
  });
}

function fromFinish(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  const from =
    facts.brix === null
      ? volumeWords(told, facts, telling)
      : say('from.now', { strength: strength(facts.brix, null, null, settings) });
  const said = { finish: exactStrength(facts.finishBrix, settings), from, going: goingAway(facts, settings) };
  return sentences(say('from.finish', { ...said }), waterSentence(told, telling));
}

function fromFinishPoint(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  const over =
    told.value === null || told.waterC === null
      ? ''
      : say('from.over_water', { rise: degrees(told.value - told.waterC, settings) });
  const shows = handShows(told, facts, settings);
  if (facts.finishRiseC !== null)
    return sentences(say('from.finish_rise', { over }), shows, waterSentence(told, telling));
  const said = { strength: exactStrength(facts.finishBrix, settings), over, sap: sapWords(told, facts, telling) };
  return sentences(
    say('from.finish_boils', { ...said }),
    shows,
    waterSentence(told, telling),
    densityAside(told, facts),
  );
}

/** Less a thermometer in the hand does not tell, °C. */
const HAND_TELLS_C = 0.1;

/** What a thermometer in the hand that is known to be off shows at this temperature. */
function handShows({ value }: Explanation, { probe, correctionC }: PanFacts, settings: Settings): string {
  if (probe !== null || value === null || Math.abs(correctionC) < HAND_TELLS_C) return '';
  const said = { at: temperature(value - correctionC, settings), by: degrees(Math.abs(correctionC), settings) };
  return say(correctionC < 0 ? 'from.hand_shows_high' : 'from.hand_shows_low', said);
}

/** Why a density of late moved the strength, and not the temperature of the finish beside it. */
const densityAside = ({ t }: Explanation, { densityAlone: at }: PanFacts): string =>
  at === null || at > t || t - at > WEIGHS_MS ? '' : say('from.density_alone', { age: ago((t - at) / 1000) });

function fromScorchPoint(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  if (facts.ceilingC !== null) return say('from.ceiling');
  const said = { strength: exactStrength(facts.scorchBrix, settings), sap: sapWords(told, facts, telling) };
  const when = facts.scorchInS === null ? '' : say('from.scorch_in', { length: lengthOfTime(facts.scorchInS) });
  return sentences(say('from.scorch', { ...said }), waterSentence(told, telling), when);
}
