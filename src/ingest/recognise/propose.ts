// Makes a proposal of a candidate: the sensor of each channel, what is unsure, the other ways it could be, and each line in pieces.
import type { Sensor } from '../../core/boil/entries.ts';
import type {
  Alternative,
  LineSpan,
  Proposal,
  ProposedChannel,
  ProposedLine,
  ProposedUnit,
} from '../../core/boil/line-proposal.ts';
import { readLine } from '../read-line.ts';
import type { Candidate, CandidateChannel } from './candidate.ts';
import { middle, unitNames, unitOfWords } from './kind-of-number.ts';
import { whyNothing, leftOutSpans } from './left-out.ts';
import { readingPlaces } from './reading-places.ts';

/** More lines than this share without a reading make a proposal unsure. */
const mostUnread = 0.4;

/**
 * The proposal that a candidate leads to, or the reasons why none of its channels can be written in a header.
 * @param data those of the lines that are more than headers and words from a start
 */
export function propose(lines: readonly string[], data: readonly string[], candidate: Candidate): Proposal | string[] {
  const { format } = candidate;
  candidate.channels = withUnitSaid(candidate, lines);
  const cold = coldJunctionOf(candidate.channels);
  const unitInLine = unitsInLines(lines, candidate);
  const refused: string[] = [];
  const channels = candidate.channels.flatMap((one): ProposedChannel[] => {
    const made = proposedChannel(one, cold, unitInLine.has(one.channel), lines);
    if (typeof made !== 'string') return [made];
    refused.push(`${one.channel} is not read: ${made}.`);
    return [];
  });
  const leftOut = candidate.leftOut.map(({ what, why }) => `Left out: ${what}, ${why}.`);
  if (channels.every(({ coldJunction }) => coldJunction)) return [...refused, ...leftOut];
  const unread = unreadDoubt(data, candidate);
  if (data.length >= FEW_LINES && countRead(data, candidate) < LEAST_READ) return [...unread, ...leftOut];
  const shown = lines.map((text) => proposedLine(text, candidate, channels));
  const doubts = [
    ...candidate.doubts,
    ...refused,
    ...unread,
    ...candidate.channels.filter(jumps).map(({ channel }) => `${channel}: ${JUMPS}`),
    ...channels.filter(({ sure }) => !sure).map(({ channel, why }) => `${channel}: ${why}`),
  ];
  return {
    verdict: doubts.length > 0 ? 'unsure' : 'sure',
    format,
    channels,
    reasons: [
      candidate.because,
      ...doubts,
      ...channels.filter(({ sure }) => sure).map(({ channel, why }) => `${channel}: ${why}`),
      ...leftOut,
    ],
    lines: shown,
    alternatives: alternatives(candidate, channels),
  };
}

/** The unit that a line names for all its numbers: `units: F`, `"unit":"C"`, `all temps in deg F`, `Temperatur [°C]`. */
const UNIT_NAMED = [
  /\bunits?["']?(?: *[:=]| +is| +now:?)? *["']?(?:deg(?:rees?)?[ ._]?|[^ -~]{0,2})(c|f|k|celsius|fahrenheit|kelvin|mv|millivolts?|ohms?)\b/gi,
  /\b(?:u|uom|scale)["']? ?[:=] ?["']?([CFK])\b/gi,
  // Behind a name, as in `cj(degC)`, it is that one's own.
  /(?<!\w[[(]?)(?:deg(?:rees?)?\.?[ _]?|[^ -~]+|[[(])(c|f|celsius|fahrenheit)\b/gi,
  /\b(celsius|fahrenheit|millivolts|(?<=in )ohms?)\b/gi,
];
const unitNamedIn = (line: string): ProposedUnit[] =>
  UNIT_NAMED.flatMap((named) => [...line.matchAll(named)].flatMap(([, word]) => unitOfWords(word!) ?? []));

/** What `lines` say of all numbers alike; null where nothing, or not one and the same. */
function unitOfAll(lines: readonly string[]): ProposedUnit | null {
  const [unit, ...others] = new Set(lines.flatMap(unitNamedIn));
  return unit !== undefined && others.length === 0 ? unit : null;
}

/**
 * Numbers without a unit take the one that each line names for all of them; where only a line without readings does,
 * such as `units: deg F`, the person is asked all the same.
 */
function withUnitSaid(candidate: Candidate, lines: readonly string[]): CandidateChannel[] {
  const read = lines.filter((line) => readLine(line, candidate.format).readings.length > 0);
  const isInEach = read.length > 0 && read.every((line) => unitNamedIn(line).length > 0);
  const unit = unitOfAll(isInEach ? read : lines.filter((line) => !read.includes(line)));
  if (unit === null) return candidate.channels;
  const why = isInEach ? `Each line says ${unitNames[unit]}.` : `A line without a reading says ${unitNames[unit]}.`;
  return candidate.channels.map((one) => {
    const isBare = !one.kind.sure && one.series.unit === '' && ['C', 'F', 'K'].includes(one.kind.unit);
    if (!isBare || one.kind.why.startsWith('The name')) return one;
    return { ...one, kind: { ...one.kind, unit, sure: isInEach, why } };
  });
}

/** Fewer numbers, or all within so many degrees, tell nothing of jumps. */
const FEW_NUMBERS = 8;
const LEAST_RANGE = 3;
/** One probe goes up, and down again where sap is poured in; two that are read as one go their way with each line. */
const MOST_WAYS = 4;
const JUMPS =
  'its numbers jump to and fro, as those of two probes in turn do. If they are two, this reads them as one.';

function jumps({ series, kind }: CandidateChannel): boolean {
  const { values } = series;
  if (values.length < FEW_NUMBERS || kind.unit === 'ohm' || kind.unit === 'mV') return false;
  const range = Math.max(...values) - Math.min(...values);
  const way = values.slice(1).reduce((sum, value, at) => sum + Math.abs(value - values[at]!), 0);
  return range > LEAST_RANGE && way > MOST_WAYS * range;
}

/** The channel that tells how warm the terminals are, where something needs it. */
function coldJunctionOf(channels: CandidateChannel[]): CandidateChannel | null {
  if (!channels.some(({ kind }) => kind.unit === 'mV')) return null;
  const degrees = channels.filter(({ kind }) => kind.unit === 'C' || kind.unit === 'F' || kind.unit === 'K');
  return degrees.find(({ kind }) => kind.coldJunction) ?? (degrees.length === 1 ? degrees[0]! : null);
}

function unitsInLines(lines: readonly string[], { format }: Candidate): Set<string> {
  const readings = lines.flatMap((line) => readLine(line, format).readings);
  const named = readings.filter(({ unit }) => unit !== null).map(({ channel }) => channel);
  // Where only some lines name the unit, the sensor has to say it for the others.
  return new Set(
    named.filter((channel) =>
      readings.every((one) => one.channel !== channel || one.value === null || one.unit !== null),
    ),
  );
}

/** Or why the channel cannot be read. */
function proposedChannel(
  one: CandidateChannel,
  cold: CandidateChannel | null,
  unitInLine: boolean,
  lines: readonly string[],
): ProposedChannel | string {
  const { channel, kind, series } = one;
  const { unit, why } = kind;
  const isCold = one === cold || (kind.coldJunction && unit !== 'mV' && unit !== 'ohm');
  if (one === cold && unit !== 'C' && !unitInLine)
    return 'a cold junction must be in degrees Celsius, or name its unit in the line';
  if (isCold)
    return {
      channel,
      sensor: null,
      unit,
      coldJunction: true,
      sure: kind.sure,
      why: `${why} By its name it measures the board or its terminals, not a pan.`,
    };
  const plain = { channel, unit, coldJunction: false };
  if (unit === 'mV') {
    if (cold === null)
      return 'millivolts of a thermocouple need a channel that says how warm the terminals are, and none was found';
    const type = /\btype[ _-]?([KJT])\b/i.exec(lines.join('\n'))?.[1]?.toUpperCase() as 'K' | 'J' | 'T' | undefined;
    const asked = type === undefined ? ' The type of the thermocouple is not in the lines: K is the commonest.' : '';
    const sensor: Sensor = { kind: 'thermocouple', type: type ?? 'K', cold_junction: cold.channel };
    return { ...plain, sensor, sure: kind.sure && type !== undefined, why: `${why}${asked}` };
  }
  if (unit === 'ohm') return { ...plain, ...ohmSensor(middle(series.values), kind.sure, why) };
  const sensor: Sensor | null = unit === 'C' || unitInLine ? null : { kind: 'temperature', unit };
  return { ...plain, sensor, sure: kind.sure, why };
}

const thermistor: Sensor = { kind: 'ntc', r25_ohm: 10_000, beta_k: 3950 };

function ohmSensor(ohms: number, sure: boolean, why: string): { sensor: Sensor; sure: boolean; why: string } {
  if (ohms >= 75 && ohms <= 270)
    return {
      sensor: { kind: 'rtd', r0_ohm: 100 },
      sure,
      why: `${why} The size is that of a platinum probe of 100 ohms.`,
    };
  if (ohms >= 900 && ohms <= 1500)
    return {
      sensor: { kind: 'rtd', r0_ohm: 1000 },
      sure: false,
      why: `${why} A platinum probe of 1000 ohms has this size, and a hot thermistor as well.`,
    };
  return {
    sensor: thermistor,
    sure: false,
    why: `${why} The size is that of a thermistor; which one the lines do not say: look up its ohms at 25 °C and its beta.`,
  };
}

/** Of so many lines so many must give something, or the format is one of a stray line. */
const FEW_LINES = 8;
const LEAST_READ = 3;

const countRead = (lines: readonly string[], { format }: Candidate): number =>
  lines.filter((line) => readLine(line, format).readings.length > 0).length;

function unreadDoubt(lines: readonly string[], candidate: Candidate): string[] {
  const unread = lines.length - countRead(lines, candidate);
  return unread > lines.length * mostUnread ? [`${unread} of ${lines.length} lines give nothing in this way.`] : [];
}

function proposedLine(text: string, candidate: Candidate, channels: ProposedChannel[]): ProposedLine {
  const places = readingPlaces(text, candidate.format);
  const unitOf = (channel: string, own: ProposedUnit | null): ProposedUnit =>
    own ?? channels.find((one) => one.channel === channel)?.unit ?? 'C';
  const values = places.map(({ channel, value, unit, start, end }): LineSpan => {
    if (!channels.some((one) => one.channel === channel))
      return { is: 'left-out', start, end, why: whyOf(channel, candidate) };
    return { is: 'value', start, end, channel, value, unit: unitOf(channel, unit) };
  });
  const spans = [...values, ...leftOutSpans(text, values, candidate)].sort((one, other) => one.start - other.start);
  return { text, spans, why: values.some(({ is }) => is === 'value') ? null : whyNothing(text, candidate) };
}

const whyOf = (channel: string, { leftOut }: Candidate): string =>
  leftOut.find(({ what }) => what === channel)?.why ?? 'not one of the probes';

/** The same lines with the units that an unsure channel may as well have. */
function alternatives({ format }: Candidate, channels: ProposedChannel[]): Alternative[] {
  const swaps: [ProposedUnit, Sensor | null, ProposedUnit, string][] = [
    ['C', { kind: 'temperature', unit: 'F' }, 'F', 'The numbers without a unit are degrees Fahrenheit.'],
    ['F', null, 'C', 'The numbers without a unit are degrees Celsius.'],
    ['K', { kind: 'temperature', unit: 'F' }, 'F', 'The numbers without a unit are degrees Fahrenheit.'],
    ['ohm', thermistor, 'ohm', 'The probes are thermistors.'],
  ];
  const found = swaps.flatMap(([from, sensor, unit, why]): Alternative[] => {
    const changes = (one: ProposedChannel): boolean =>
      !one.sure && one.unit === from && !one.coldJunction && JSON.stringify(one.sensor) !== JSON.stringify(sensor);
    if (!channels.some(changes)) return [];
    return [{ format, channels: channels.map((one) => (changes(one) ? { ...one, sensor, unit, why } : one)), why }];
  });
  const types = (['J', 'T'] as const).flatMap((type): Alternative[] => {
    const couples = channels.map((one) =>
      one.sensor?.kind === 'thermocouple' && !one.sure ? { ...one, sensor: { ...one.sensor, type } } : one,
    );
    const isOther = couples.some((one, at) => one !== channels[at]);
    return isOther ? [{ format, channels: couples, why: `The thermocouples are of type ${type}.` }] : [];
  });
  return [...found, ...types];
}
