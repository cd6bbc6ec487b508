// What somebody read off a hydrometer or refractometer, as the strength that it means and how sure that is.
import type { SugarShares } from '../boil/entries.ts';
import { type StrengthScale, trueBrixFromHydrometer } from './hydrometer.ts';
import { invertCorrectionBrix, trueBrixFromRefractometer } from './refractometer.ts';

/** The fields of a density mark; one of brix, baume and sg is given. */
export interface NotedReading {
  brix?: number | undefined;
  baume?: number | undefined;
  sg?: number | undefined;
  /** Temperature of the sample, °C; taken as the reference temperature where it is not said. */
  celsius?: number | undefined;
  instrument?: 'hydrometer' | 'refractometer' | undefined;
  /** 15.56 °C for a hydrometer and 20 °C for a refractometer unless said. */
  reference_celsius?: number | undefined;
  compensated?: boolean | undefined;
}

/** A NotedReading with what was left out filled in; the sample's temperature is null where nobody said it. */
interface Instrument {
  kind: 'hydrometer' | 'refractometer';
  reading: number;
  scale: StrengthScale;
  sampleCelsius: number | null;
  referenceCelsius: number;
  compensated: boolean;
}

/**
 * The strength that a reading means and its standard uncertainty, °Bx; null where it is out of the instrument's range
 * or says nothing. Hydrometer: 0 to 85 °Bx, sample 0 to 105 °C. Refractometer: 0 to 80 °Bx, sample 10 to 30 °C.
 * A refractometer's value is never shifted for glucose and fructose, which is unverified: they widen the uncertainty.
 */
export function readInstrument(noted: NotedReading, shares: SugarShares): { brix: number; sigma: number } | null {
  const instrument = instrumentOf(noted);
  const brix = instrument === null ? null : strength(instrument);
  if (instrument === null || brix === null) return null;
  return { brix, sigma: instrumentSigmaBrix(instrument, brix, (1 - shares.sucrose) * (1 - (shares.others ?? 0))) };
}

function instrumentOf(noted: NotedReading): Instrument | null {
  const kind = noted.instrument ?? 'hydrometer';
  const scale = noted.brix !== undefined ? 'brix' : noted.baume !== undefined ? 'baume' : 'sg';
  const reading = noted[scale];
  if (reading === undefined) return null;
  return {
    kind,
    reading,
    scale,
    sampleCelsius: noted.celsius ?? null,
    referenceCelsius: noted.reference_celsius ?? (kind === 'hydrometer' ? 15.56 : 20),
    compensated: noted.compensated ?? false,
  };
}

/** Away from its own values, to see how far each of them moves the answer. */
interface Nudge {
  reading?: number;
  celsius?: number;
}

function strength(instrument: Instrument, { reading = 0, celsius = 0 }: Nudge = {}): number | null {
  const { kind, scale, referenceCelsius, compensated } = instrument;
  const sampleCelsius = (instrument.sampleCelsius ?? referenceCelsius) + celsius;
  const shown = { reading: instrument.reading + reading, scale };
  if (kind === 'hydrometer') return trueBrixFromHydrometer({ ...shown, sampleCelsius, referenceCelsius });
  // A refractometer has no stem: a scale of its own in °Bé or SG is the °Bx one in other words, at its reference.
  const readingBrix = trueBrixFromHydrometer({ ...shown, sampleCelsius: referenceCelsius, referenceCelsius });
  return readingBrix === null
    ? null
    : trueBrixFromRefractometer({ readingBrix, sampleCelsius, referenceCelsius, compensated });
}

/** Fineness of common stems and of hand refractometers (common practice; those for syrup are coarser). */
const division: Record<StrengthScale, number> = { brix: 0.5, baume: 0.25, sg: 0.002 };
const refractometerDivision = (brix: number): number => (brix < 32 ? 0.2 : 0.5);

/** Read to half a division either way, and true to one by its maker, both equally likely throughout (JCGM 100, 4.3.7). */
const divisionSigma = Math.hypot(0.5, 1) / Math.sqrt(3);

/** Samples called cold stand in a shed or a kitchen: so far from the reference, K (judgement). */
const unsaidCelsius = 5;
/** A thermometer in the sample, and what a hot one cools between the two looks, share of what it is over 20 °C (judgement). */
const thermometerCelsius = 0.5;
const coolsByShare = 0.02;

/** The hot chart of the trade and the float's equation part by up to 0.33 °Bx, from 25 K over the reference on. */
const hotChartBrix = 0.33 / Math.sqrt(3);
const hotChartFromKelvin = 25;

/** Hand instruments that compensate are left with 0.2 to 0.3 °Bx at 10 K from 20 °C (makers' sheets, common practice). */
const compensationBrixPerKelvin = 0.025;

/**
 * Standard uncertainty of a strength read off an instrument, °Bx: stem and maker, the sample's temperature, the
 * instrument's own correction for it, and what glucose and fructose may hide from a refractometer. `invertShare` is
 * their share of everything dissolved. That they are lighter than sucrose is left out: °Bx is what a float says.
 */
function instrumentSigmaBrix(instrument: Instrument, brix: number, invertShare: number): number {
  const { kind, scale, compensated, referenceCelsius } = instrument;
  const float = kind === 'hydrometer';
  const away = instrument.sampleCelsius === null ? unsaidCelsius : instrument.sampleCelsius - referenceCelsius;
  const fineness =
    !float && scale === 'brix' ? refractometerDivision(brix) : division[scale] * slope(instrument, 'reading', brix);
  const ownCorrection = float
    ? hotChartBrix * Math.min(1, Math.abs(away) / hotChartFromKelvin)
    : compensated
      ? compensationBrixPerKelvin * Math.abs(away)
      : 0;
  return Math.hypot(
    divisionSigma * fineness,
    slope(instrument, 'celsius', brix) * sampleSigmaCelsius(instrument.sampleCelsius),
    ownCorrection,
    float ? 0 : invertCorrectionBrix(brix, invertShare),
  );
}

function sampleSigmaCelsius(sampleCelsius: number | null): number {
  if (sampleCelsius === null) return unsaidCelsius;
  return thermometerCelsius + coolsByShare * Math.max(0, sampleCelsius - 20);
}

const step = { reading: 1e-3, celsius: 0.1 };

/** How far the strength moves with the reading or the sample's temperature, °Bx per unit; sought downwards at a range's end. */
function slope(instrument: Instrument, by: 'reading' | 'celsius', brix: number): number {
  for (const h of [step[by], -step[by]]) {
    const there = strength(instrument, { [by]: h });
    if (there !== null) return Math.abs((there - brix) / h);
  }
  return 0;
}
