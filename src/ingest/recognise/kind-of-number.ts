// Tells what a series of numbers is, by its unit, its name and its size: degrees, millivolts, ohms, or nothing to be read.
import type { ProposedUnit } from '../../core/boil/line-proposal.ts';

export interface Series {
  name: string;
  /** The words behind the numbers or in the header. */
  unit: string;
  values: number[];
  texts: string[];
  /** One unit was told for several numbers, not behind this one. */
  isUnitShared?: boolean;
  /** Some numbers name another unit than others, or none; or the unit stands behind a neighbour alone. */
  mixed?: 'some name none' | 'differ' | 'the last names it';
}

export type NumberKind =
  | { is: 'read'; unit: ProposedUnit; sure: boolean; coldJunction: boolean; why: string }
  | { is: 'left-out'; why: string };

const unitWords: [RegExp, ProposedUnit][] = [
  [/^(?:c|cel|celsius|centigrade|\u2103|\u00e2\u0084\u0083|\u00a1\u00e6)$/i, 'C'],
  [/^(?:f|fahr|fahrenheit|\u2109|\u00e2\u0084\u0089)$/i, 'F'],
  [/^(?:k|kelvins?)$/i, 'K'],
  [/^(?:mv|millivolts?)$/i, 'mV'],
  [/^(?:ohms?|\u03a9|\u00ce\u00a9|\u2126|\u00e2\u0084\u00a6)$/i, 'ohm'],
];
/** Ohms by the thousand: a sensor's curve is told in ohms, and no format moves a decimal point. */
const THOUSANDS = /^k ?(?:ohms?|\u03a9|\u00ce\u00a9|\u2126|\u00e2\u0084\u00a6)$/i;
export const unitNames: Record<ProposedUnit, string> = {
  C: 'degrees Celsius',
  F: 'degrees Fahrenheit',
  K: 'kelvin',
  mV: 'millivolts',
  ohm: 'ohms',
};

/** 'C' for `C`, `°C`, `degC`, `deg C`, `degrees Celsius`; null for a word that is no unit of a probe. */
export function unitOfWords(words: string): ProposedUnit | null {
  const bare = words
    .replace(/^[^A-Za-z\u0080-\uffff]+/, '')
    .replace(/^(?:\u00c2?[\u00b0\u00ba]|deg(?:rees?|res)?|grad)[. _]?/i, '');
  return unitWords.find(([word]) => word.test(bare))?.[1] ?? null;
}

export const BOARD_WARMTH = 'the warmth of the board itself, in no pan';
const WORKED_OUT = 'a set or worked-out figure, not a measured one';
const OTHER_QUANTITY = 'another quantity, no temperature';

const notRead: [RegExp, string][] = [
  [
    /^(?:time|ts|stamp|timestamp|date|clock|epoch|up|uptime|millis|ms|sec|secs|seconds|elapsed|tick|ticks|heure|duree|zeit|uhrzeit)$/i,
    'a time stamp',
  ],
  [
    /^(?:n|no|nr|seq|cnt|count|counter|id|idx|index|frame|packet|pkt|msg|num|sample|row|probes|sensors|channels|build|retries|retry|lost|missed|dropped|drops|errs|compteur|trame|zaehler)$/i,
    'a counter',
  ],
  [
    /^(?:rate|roc|dt|delta|diff|difference|slope|trend|rise|above|spread|span|range|sd|std|sigma|dev|deviation|noise|drift|ecart|pente|vitesse|variation|derive|tendance|differenz|anstieg)$/i,
    'a rate or a difference, no temperature',
  ],
  [/^(?:node|addr|address|serial|sn|pin|gpio|adresse|serie|broche)$/i, 'a name of the device, no measured number'],
  [/^(?:cpu|mcu|soc|die|case|enclosure|housing|chassis|pcb|boitier|coffret|gehaeuse|platine)$/i, BOARD_WARMTH],
  [/^(?:crc|chk|cs|sum|checksum|xor|cks|lrc|somme|controle|pruefsumme)$/i, 'a checksum'],
  [
    /^(?:st|stat|status|state|err|error|errors|fault|faults|flag|flags|mode|relays?|relais|valve|ok|code|alarms?|alm|alert|warn|warning|etat|statut|defaut|alarmes?|zustand)$/i,
    'a status',
  ],
  [
    /^t?(?:set|setpoint|sp|sv|target|goal|limits?|lim|max|min|avg|mean|high|low|hi|lo|least|most|lowest|highest|peak|hys|hyst|hysteresis|band|deadband|cutoff|trip|thr|thresh|threshold|kp|ki|kd|cal|offset|ofs|consigne|cible|seuil|moyenne|moy|mini|maxi|soll|sollwert|ziel|grenze|mittel)$/i,
    WORKED_OUT,
  ],
  [
    /^(?:rssi|dbm|vref|lead|leads|wire|queue|bat|batt|battery|v(?:bat|batt|b|cc|dd|in|s|sup|usb)|volts?|hum|humidity|rh|press|pressure|baro|rpm|fan|duty|pwm|power|out|output|op|dew|dewpoint|heater|level|weight|flow|gain|ver|fw|version|heap|mem|speed|akku|batterie|spannung|uv|microvolts?|bits?|lux|co2|tds|snr|lqi|signal|wifi|charge|amps?|watts?|energy|kwh|gpm|lpm|psi|mbar|hpa|inhg|alt|altitude|lat|lon|servo|pos|position|brix|sg|density|interval|period|supply|took|noise|poll|loop|baud|every|ping|pong|pile|humidite|pression|chauffe|puissance|feuchte|luftfeuchte|druck|leistung|niveau|debit|poids|periode)$/i,
    OTHER_QUANTITY,
  ],
  [/^(?:adc|raw|counts)$/i, 'a bare converter count: which temperature it stands for the line does not say'],
];
/** Whether a name says by itself that its numbers are no temperatures. */
export const namesOther = (name: string): boolean => otherQuantity(partsOf(name), null, '') !== null;

/** Even where the name says degrees, too. */
const NEVER_GIVE_WAY = /^(?:a set|a checksum|a rate|a name|the warmth)/;
const coldNames =
  /^t?(?:cj|cjc|cold|coldjunction|junction|ambient|amb|ref|internal|terminals?|board|brd|chip|froide|soudure|jonction|ambiante?|kaltstelle|klemmen?|borniers?)$/i;
/** A `v` so small is the voltage of a pin or a battery. */
const LIKELY_VOLTS = 13;
const converterPin = /^(?:A|AIN|AN)\d{1,2}$/;
const resistanceNames = /^(?:r|res|resistance|ohms?|rtd|pt|ntc|thermistor)$/i;

const FIXED = /^(?:ref|reference|fixed|shunt|series|leads?|wires?|bridge|pullup)$/i;

/** The parts of a name: `pan2_tempF` is pan, temp, F. */
export const partsOf = (name: string): string[] =>
  isCode(name)
    ? []
    : name
        .replace(/([a-z])([A-Z])/g, '$1 $2')
        .split(/[^A-Za-z]+/)
        .filter((part) => part !== '');

/** The address of a sensor says nothing by its letters. */
const isCode = (name: string): boolean =>
  /\d/.test(name) &&
  (/^(?:0x)?[0-9A-F]{4,}$/i.test(name) || /^[0-9A-F]{1,12}(?:[.:-][0-9A-F]{1,12}){2,9}$/i.test(name));

/** The board's own box; a `float box` is a part of an evaporator. */
const box = /^(?:(?:in|inside)(?: of)?(?: the)? )?box(?:[ _]?(?:temp|t|c|f))?$/i;

/** `n1`, `ch 2`, `probe 3`: the number of a probe, no count. */
const NUMBERED = /^(?:n|no|nr|num|id|node|probe|sensor|channel)[ _#-]?\d{1,2}(?![\dA-Za-z])/i;

/** Today's boiling point of water, worked out from the pressure: it hangs in no pan. */
const boilingPoint = /\bwater[ _]?boils?\b|\bboils? ?(?:at|point)\b|\bboiling[ _]?(?:point|water)\b/i;

/** `pan A`, `pan B`, `pan C`: where a letter tells them apart, it is no unit. `names` are those of all numbers. */
function hasLetter(name: string, names: readonly string[]): boolean {
  const stem = LETTER.exec(name)?.[1];
  if (stem === undefined) return false;
  const letters = names.flatMap((other) => {
    const [, otherStem, letter] = LETTER.exec(other) ?? [];
    return otherStem === stem ? [letter!.toUpperCase()] : [];
  });
  return letters.length > 1 && letters.some((letter) => !['C', 'F', 'K'].includes(letter));
}
const LETTER = /^(.*[A-Za-z][ _.-]?)(?:(?<=[a-z])(?=[A-Z])|(?<=[ _.-]))([A-Za-z])$/;

/** Left and right, where an `R` alone would be a resistance. */
const isRight = ({ name }: Series, names: readonly string[]): boolean =>
  /(?:^|[ _])r$/i.test(name) && names.some((other) => /(?:^|[ _])l$/i.test(other));

/** What the numbers of one series are; `names` are those of all numbers beside it. */
export function kindOfNumber(series: Series, names: readonly string[] = []): NumberKind {
  const all = partsOf(series.name);
  const whole = NUMBERED.test(series.name) ? all.slice(1) : all;
  const parts = hasLetter(series.name, names) || isRight(series, names) ? whole.slice(0, -1) : whole;
  if ([series.unit, whole.at(-1) ?? ''].some((word) => THOUSANDS.test(word)))
    return { is: 'left-out', why: 'thousands of ohms, which no format can read: let the board write ohms' };
  if (unitOfWords(series.unit) === 'ohm' && parts.some((part) => FIXED.test(part)))
    return { is: 'left-out', why: 'a resistor or a wire of the board, no probe' };
  if (box.test(series.name)) return { is: 'left-out', why: BOARD_WARMTH };
  if (isTime(series.name, names)) return { is: 'left-out', why: 'a time stamp' };
  if (isOfAnother(series.name, names)) return { is: 'left-out', why: WORKED_OUT };
  if (boilingPoint.test(series.name)) return { is: 'left-out', why: WORKED_OUT };
  const named = series.unit === '' ? unitInName(series.name, whole, parts) : unitOfWords(series.unit);
  const other = isPlace(series.name, names) ? null : otherQuantity(parts, named, series.unit);
  if (other !== null) return { is: 'left-out', why: other };
  if (series.mixed === 'differ') return { is: 'left-out', why: 'its unit changes from line to line' };
  const cold = parts.some((part) => coldNames.test(part));
  if (named !== null) return checkedSize(series, named, cold);
  if (/^v\d?$/i.test(series.name) && middle(series.values) < LIKELY_VOLTS)
    return { is: 'left-out', why: OTHER_QUANTITY };
  if (converterPin.test(series.name) && !series.texts.some((text) => text.includes('.')))
    return { is: 'left-out', why: notRead.at(-1)![1] };
  const isResistance = parts.some((part) => resistanceNames.test(part)) && middle(series.values) > 50;
  const pointless = isResistance ? null : withoutPoint(series);
  if (pointless !== null) return { is: 'left-out', why: pointless };
  const running = runsOn(series);
  if (running !== null) return { is: 'left-out', why: running };
  if (isResistance)
    return {
      is: 'read',
      unit: 'ohm',
      sure: false,
      coldJunction: false,
      why: `The name says a resistance, so the numbers are taken as ohms.`,
    };
  return bySize(series, cold);
}

const CALLS = /^(?:alarms?|alm|alert|warn|warning)$/i;

/** `IN` and `OUT` beside each other are places, and no output. */
const isPlace = (name: string, names: readonly string[]): boolean =>
  /^out$/i.test(name) && names.some((other) => /^in$/i.test(other));

/** `t` beside `val` is the time of the value. */
const isTime = (name: string, names: readonly string[]): boolean =>
  name === 't' && names.some((other) => /^(?:val|value|temp|temperature|reading)$/i.test(other));

/** `dipmax` beside `dip`. */
const isOfAnother = (name: string, names: readonly string[]): boolean => {
  const stem = /^(.+?)[ _.-]?(?:max|min|avg|mean|high|low|lim|limit|set|sp|target)$/i.exec(name)?.[1];
  return stem !== undefined && names.includes(stem);
};

/** A name that is just `crc` or `n` always says so, even before `5F`; as a part of a name it gives way to degrees. */
function otherQuantity(parts: string[], unit: ProposedUnit | null, words: string): string | null {
  // Degrees at which it calls.
  if (unit !== null && parts.some((part) => CALLS.test(part))) return WORKED_OUT;
  const whole = parts.join('');
  for (const [name, why] of notRead) {
    if (!name.test(whole) && !parts.some((part) => name.test(part))) continue;
    const givesWay = unit !== null && parts.length > 1 && !NEVER_GIVE_WAY.test(why);
    if (!givesWay) return why;
  }
  if (unit === null && parts.length > 1 && /^(?:V|[hk]?Pa|mA|A|W)$/.test(parts.at(-1)!)) return OTHER_QUANTITY;
  return unit === null && words !== '' ? `“${words}” is no unit of a probe` : null;
}

/** A unit in a name is its last part: `tempF`, `pan_c`, `mv`, `t1 (F)`; a lone letter is a name, not a unit. */
function unitInName(name: string, whole: string[], parts: string[]): ProposedUnit | null {
  const last = parts.at(-1);
  if (last === undefined || whole.length > parts.length) return null;
  const unit = unitOfWords(last);
  return last.length === 1 && (parts.length === 1 || /^[A-Za-z]\d*$/.test(name)) ? null : unit;
}

const sizes: Record<ProposedUnit, [number, number]> = {
  C: [-60, 450],
  F: [-76, 842],
  K: [213, 723],
  mV: [-8, 30],
  ohm: [10, 2_000_000],
};

const PARTLY = {
  'some name none': ' Some of its numbers stand without a unit and are taken for the same.',
  'the last names it': ' The unit stands behind the last of the numbers alone, and is taken for this one, too.',
  differ: '',
};

function checkedSize({ values, unit, name, mixed }: Series, named: ProposedUnit, coldJunction: boolean): NumberKind {
  const [low, high] = sizes[named];
  const said = unit === '' ? `The name “${name}”` : `The line`;
  const inRange = values.filter((value) => value >= low && value <= high).length;
  if (values.length > 0 && inRange < values.length / 2)
    return { is: 'left-out', why: `said to be ${unitNames[named]}, but the numbers are none that a probe can give` };
  const partly = mixed === undefined ? '' : PARTLY[mixed];
  const sure = partly === '';
  return { is: 'read', unit: named, sure, coldJunction, why: `${said} says ${unitNames[named]}.${partly}` };
}

/** `+0961` for 96.1: whole numbers of one width, some filled up with zeros, or too great for whole degrees by ten. */
function withoutPoint({ values, texts }: Series): string | null {
  const bare = texts.map((text) => text.replace(/^[-+]/, ''));
  const isWhole = bare.length > 0 && bare.every((text) => /^\d{3,5}$/.test(text));
  const isFilled = bare.some((text) => /^0\d/.test(text));
  const isTenth = values.every((value) => Math.abs(value) > 450 && Math.abs(value) <= 45_000);
  if (!isWhole || !(isFilled || isTenth)) return null;
  return POINTLESS;
}

export const POINTLESS =
  'whole numbers of the size of tenths or hundredths of a degree: where the decimal point belongs no format can say; let the board write 96.1 for +0961';

export const SETTING: NumberKind = {
  is: 'left-out',
  why: 'a small whole number that never changes: the number of a channel, or a setting',
};

/** A small whole number that is always the same says how something is set, or which channel it is. */
export function isSetting({ values, texts, unit }: Series): boolean {
  const isSame = texts.length > 1 && texts.every((text) => text === texts[0]);
  return isSame && unit === '' && /^\d{1,2}$/.test(texts[0]!) && values[0]! <= 32;
}

/** Where some lines are of another kind or lost, a count makes greater steps now and then. */
const USUAL_STEP = 0.6;
const FEW_STEPS = 6;

/** `LID:1`: beside numbers with decimals, what is 0 or 1 alone is on or off. */
export const isSwitch = ({ texts, unit }: Series): boolean =>
  texts.length > 0 && unit === '' && texts.every((text) => /^[01]$/.test(text));

export const SWITCH: NumberKind = { is: 'left-out', why: 'a status' };

/** Numbers that grow from line to line by the same step, or without end, are counted or timed. */
export function runsOn({ values, texts }: Series): string | null {
  if (values.length < 3) return null;
  const steps = values.slice(1).map((value, at) => value - values[at]!);
  const whole = texts.every((text) => /^\d+$/.test(text));
  const even = steps.every((step) => Math.abs(step - steps[0]!) < 1e-9) && steps[0]! > 0;
  const isUsual = steps.filter((step) => step === middle(steps)).length >= USUAL_STEP * steps.length;
  const counts = whole && steps.length >= FEW_STEPS && steps.every((step) => step > 0) && isUsual;
  if (counts || (even && (whole || steps[0]! >= 0.5)))
    return 'it grows by the same step from line to line: a counter or a time';
  if (whole && steps.every((step) => step > 0) && values.at(-1)! > 450) return 'it grows from line to line: a time';
  return null;
}

function bySize({ values }: Series, coldJunction: boolean): NumberKind {
  const v = middle(values);
  const unsure = (unit: ProposedUnit, why: string): NumberKind => ({
    is: 'read',
    unit,
    sure: false,
    coldJunction,
    why,
  });
  if (values.length === 0 || v < -60 || v > 450)
    return { is: 'left-out', why: 'no unit is named, and as degrees the numbers are none that a probe can give' };
  if (v <= 125)
    return unsure('C', 'No unit is named; the numbers are taken as degrees Celsius. They would fit Fahrenheit, too.');
  if (v < 265) return unsure('F', 'No unit is named; for a pan of syrup the numbers fit degrees Fahrenheit best.');
  return unsure('K', 'No unit is named; for a pan of syrup the numbers fit kelvin best.');
}

/** The middle one of the numbers; NaN for none. */
export function middle(values: number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1] ?? NaN;
}
