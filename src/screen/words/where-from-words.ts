// What a number was worked out from, and how old each part of that is, in the person's units.
import type { Explained, Explanation, Now, PanFacts, SapKind, Settings } from '../client/types.ts';
import { degrees, depth, exactStrength, roundTemperature, strength, temperature, volume } from './amounts.ts';
import { ago, lengthOfTime } from './clock.ts';
import { kindWords } from './mark-words.ts';
import { originWords } from './origin-words.ts';
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
  if (facts === null) return told.waterFrom === null ? '' : `From ${waterOrigins(told, telling)}.`;
  const say: Record<Explained, (told: Explanation, facts: PanFacts, telling: Telling) => string> = {
    water: () => '',
    temperature: fromProbe,
    rise: fromRise,
    rate: (_, one) => `From how the numbers of ${thermometer(one, telling)} moved over the last minutes.`,
    strength: fromStrength,
    litres: fromVolume,
    depth: fromDepth,
    'top-up': fromTopUp,
    finish: fromFinish,
    'finish-point': fromFinishPoint,
    'scorch-point': fromScorchPoint,
  };
  return say[told.what](told, facts, telling);
}

/** What the water point rests on, each once, the weightiest first; the weather is no source. */
function waterOrigins({ parts, t }: Explanation, { now, settings }: Telling): string {
  const sources = parts.filter(({ kind }) => kind !== 'weather' && kind !== 'altitude');
  const altitude = parts.filter(({ kind }) => kind === 'altitude');
  const words = [...sources, ...altitude].map((part) => originWords(part, now.header, settings, t));
  return sources.length === 0 ? words.join('') : words.join(', and ').replace('the altitude alone', 'the altitude');
}

function thermometer({ probe }: PanFacts, { now }: Telling): string {
  return probe === null ? 'the thermometer in your hand' : `the probe ${probeName(now.header, probe)}`;
}

/** "the probe T1 on board A (2 s ago)". */
function heard(facts: PanFacts, t: number, telling: Telling): string {
  const age = facts.heardAt === null ? 'not heard yet' : ago((t - facts.heardAt) / 1000);
  return `${thermometer(facts, telling)} (${age})`;
}

/** A correction that the screen would print as 0.0 is none, °C. */
const LEAST_CORRECTION_C = 0.05;

function fromProbe(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { correctionC } = facts;
  const { now, settings } = telling;
  const error = told.parts.find(({ kind }) => kind !== 'probe' && kind !== 'hand-reading');
  const by =
    Math.abs(correctionC) < LEAST_CORRECTION_C ? 'with nothing' : `with ${degrees(Math.abs(correctionC), settings)}`;
  const way = correctionC > 0 ? 'added' : 'taken off';
  const source =
    error === undefined || error.kind === 'assumed' ? '' : `, by ${originWords(error, now.header, settings, told.t)}`;
  return `From ${heard(facts, told.t, telling)}, ${by} ${way}${source}.`;
}

function waterSentence({ waterC, waterFrom, t }: Explanation, { now, settings }: Telling): string {
  if (waterC === null || waterFrom === null) return '';
  return `Water boils at ${temperature(waterC, settings)} here, from ${originWords(waterFrom, now.header, settings, t)}.`;
}

function fromRise(told: Explanation, facts: PanFacts, telling: Telling): string {
  const celsius =
    facts.temperatureC === null ? 'What the pan reads' : temperature(facts.temperatureC, telling.settings);
  return `${celsius} by ${heard(facts, told.t, telling)}. ${waterSentence(told, telling)}`;
}

/** "with the usual sugars of birch", or by what taught this sap. */
function sapWords(told: Explanation, facts: PanFacts, { now, settings, saps }: Telling): string {
  const sugars = `the usual sugars of ${sapCalled(panNamed(now.header, told.pan)?.sap, saps)}`;
  const { sapFrom } = facts;
  return sapFrom === null
    ? `with ${sugars}`
    : `with ${sugars}, corrected by ${originWords(sapFrom, now.header, settings, told.t)}`;
}

function fromStrength(told: Explanation, facts: PanFacts, telling: Telling): string {
  if (facts.ceilingC !== null) {
    const [reading] = told.parts;
    const source =
      reading === undefined ? 'what you noted' : originWords(reading, telling.now.header, telling.settings, told.t);
    return `From ${source} and what boiled away since; below a boil the heat does not tell it.`;
  }
  const rise =
    facts.riseC === null ? 'how hot it boils' : `${degrees(facts.riseC, telling.settings)} over boiling water`;
  return `From ${rise} by ${heard(facts, told.t, telling)}, ${sapWords(told, facts, telling)}. ${waterSentence(told, telling)}`;
}

/** "the volumes noted, the last a Top-up 12 min ago, less what has boiled away since". */
function volumeWords({ parts, t }: Explanation, { volume: last }: PanFacts): string {
  const noted = last === null ? '' : ` (the last: ${kindWords(last.kind)}, ${ago((t - last.at) / 1000)})`;
  const counted = parts.some(({ kind }) => kind === 'nominal-power') ? " by the burner's nominal power" : '';
  return `the volumes noted${noted}, less what has boiled away since${counted}`;
}

function fromVolume(told: Explanation, facts: PanFacts, { settings }: Telling): string {
  return `From ${volumeWords(told, facts)}. Counted as if at ${roundTemperature(20, settings)}.`;
}

function fromDepth(told: Explanation, facts: PanFacts, { settings }: Telling): string {
  const amount = facts.litres === null ? 'what is in it' : volume(facts.litres, settings);
  return `From ${amount} in this vessel, hot. That comes from ${volumeWords(told, facts)}.`;
}

const goingAway = ({ evaporationLPerH: perHour }: PanFacts, settings: Settings): string =>
  perHour === null || perHour <= 0 ? '' : ` while ${volume(perHour, settings)} an hour boil away`;

function fromTopUp(told: Explanation, facts: PanFacts, { settings }: Telling): string {
  const least = depth(facts.leastDepthMm, settings);
  const deep = facts.depthMm === null ? '' : `, from ${depth(facts.depthMm, settings)} now`;
  return `Then it is ${least} deep${deep}${goingAway(facts, settings)}. From ${volumeWords(told, facts)}.`;
}

function fromFinish(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  const from = facts.brix === null ? volumeWords(told, facts) : `${strength(facts.brix, null, null, settings)} now`;
  const holds = `Then it holds ${exactStrength(facts.finishBrix, settings)}, from ${from}${goingAway(facts, settings)}`;
  return `${holds}, if the fire stays and nothing is poured in. ${waterSentence(told, telling)}`;
}

function fromFinishPoint(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  const over =
    told.value === null || told.waterC === null
      ? ''
      : `${degrees(told.value - told.waterC, settings)} over boiling water`;
  if (facts.finishRiseC !== null) return `The finish you chose is ${over}. ${waterSentence(told, telling)}`;
  const boils = `${exactStrength(facts.finishBrix, settings)} boils there, ${over}, ${sapWords(told, facts, telling)}`;
  return `${boils}. ${waterSentence(told, telling)}`;
}

function fromScorchPoint(told: Explanation, facts: PanFacts, telling: Telling): string {
  const { settings } = telling;
  if (facts.ceilingC !== null) return 'The ceiling that you set for this pan.';
  const boils = `${exactStrength(facts.scorchBrix, settings)} boils there, ${sapWords(told, facts, telling)}`;
  const when = facts.scorchInS === null ? '' : ` At this fire it gets there in about ${lengthOfTime(facts.scorchInS)}.`;
  return `${boils}; so thick, syrup burns over live heat. ${waterSentence(told, telling)}${when}`;
}
