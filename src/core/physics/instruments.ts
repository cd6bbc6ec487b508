// What somebody read off a hydrometer or refractometer, as the strength that it means and how sure that is.
import type { Mark, SugarShares } from '../boil/entries.ts';
import type { Measured } from '../quantities/measured.ts';
import { combined, measured, plus } from '../quantities/propagation.ts';
import { type StrengthScale, trueBrixFromHydrometer } from './hydrometer.ts';
import { invertCorrectionBrix, trueBrixFromRefractometer } from './refractometer.ts';

/**
 * What a density mark says of an instrument: one of brix, baume and sg; the sample's temperature, taken as the reference
 * temperature where it is not said; the reference, 15.56 °C for a hydrometer and 20 °C for a refractometer unless said.
 */
export type NotedReading = Pick<
  Extract<Mark, { kind: 'density' }>,
  'brix' | 'baume' | 'sg' | 'celsius' | 'instrument' | 'reference_celsius' | 'compensated'
>;

/** A NotedReading with what was left out filled in. */
interface Instrument {
  kind: 'hydrometer' | 'refractometer';
  reading: number;
  scale: StrengthScale;
  sampleCelsius: number;
  /** Nobody said how warm the sample was. */
  sampleUnsaid: boolean;
  referenceCelsius: number;
  compensated: boolean;
}

/**
 * The strength that a reading means and its standard uncertainty, °Bx; null where it is out of the instrument's range
 * or says nothing. Hydrometer: 0 to 85 °Bx, sample 0 to 105 °C. Refractometer: 0 to 80 °Bx, sample 10 to 30 °C.
 * In the uncertainty: stem and maker, the sample's temperature, how well the instrument or its chart makes up for that,
 * and what glucose and fructose may hide from a refractometer. That is unverified, so it never shifts the value.
 * That they are lighter than sucrose is left out for a hydrometer: °Bx is what a float says.
 */
export function readInstrument(noted: NotedReading, shares: SugarShares): { brix: number; sigma: number } | null {
  const instrument = instrumentOf(noted);
  const read = instrument === null ? null : strengthRead(instrument);
  if (instrument === null || read === null) return null;
  const invertShare = (1 - shares.sucrose) * (1 - (shares.others ?? 0));
  const hidden = instrument.kind === 'refractometer' ? invertCorrectionBrix(read.value, invertShare) : 0;
  const whole = [ownCorrectionSigmaBrix(instrument), hidden]
    .map((sigma) => measured(0, sigma, { kind: 'assumed', at: null }))
    .reduce(plus, read);
  return { brix: whole.value, sigma: whole.sigma };
}

function instrumentOf(noted: NotedReading): Instrument | null {
  const kind = noted.instrument ?? 'hydrometer';
  const scale = noted.brix !== undefined ? 'brix' : noted.baume !== undefined ? 'baume' : 'sg';
  const reading = noted[scale];
  if (reading === undefined) return null;
  const referenceCelsius = noted.reference_celsius ?? (kind === 'hydrometer' ? 15.56 : 20);
  return {
    kind,
    reading,
    scale,
    sampleCelsius: noted.celsius ?? referenceCelsius,
    sampleUnsaid: noted.celsius === undefined,
    referenceCelsius,
    compensated: noted.compensated ?? false,
  };
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

/** The strength with what stem and thermometer make uncertain. */
function strengthRead(instrument: Instrument): Measured | null {
  const { kind, scale, reading, sampleCelsius, sampleUnsaid } = instrument;
  const fineness = kind === 'refractometer' && scale === 'brix' ? refractometerDivision(reading) : division[scale];
  const warmth = sampleUnsaid ? unsaidCelsius : thermometerCelsius + coolsByShare * Math.max(0, sampleCelsius - 20);
  return combined(
    [
      measured(reading, divisionSigma * fineness, { kind: 'density-reading', at: null }),
      measured(sampleCelsius, warmth, { kind: 'hand-reading', at: null }),
    ],
    ([shown, celsius]) => strength(instrument, shown ?? NaN, celsius ?? NaN),
  );
}

function strength(instrument: Instrument, reading: number, sampleCelsius: number): number | null {
  const { kind, scale, referenceCelsius, compensated } = instrument;
  if (kind === 'hydrometer') return trueBrixFromHydrometer({ reading, scale, sampleCelsius, referenceCelsius });
  // A refractometer has no stem: a scale of its own in °Bé or SG is the °Bx one in other words, at its reference.
  const readingBrix = trueBrixFromHydrometer({ reading, scale, sampleCelsius: referenceCelsius, referenceCelsius });
  return readingBrix === null
    ? null
    : trueBrixFromRefractometer({ readingBrix, sampleCelsius, referenceCelsius, compensated });
}

/** The hot chart of the trade and the float's equation part by up to 0.33 °Bx, from 25 K over the reference on. */
const hotChartBrix = 0.33 / Math.sqrt(3);
const hotChartFromKelvin = 25;

/** Hand instruments that compensate are left with 0.2 to 0.3 °Bx at 10 K from 20 °C (makers' sheets, common practice). */
const compensationBrixPerKelvin = 0.025;

/** How far the instrument's own answer to a sample that is not at its reference temperature may be off, °Bx. */
function ownCorrectionSigmaBrix(instrument: Instrument): number {
  const { kind, compensated, sampleCelsius, sampleUnsaid, referenceCelsius } = instrument;
  const away = sampleUnsaid ? unsaidCelsius : Math.abs(sampleCelsius - referenceCelsius);
  if (kind === 'hydrometer') return hotChartBrix * Math.min(1, away / hotChartFromKelvin);
  return compensated ? compensationBrixPerKelvin * away : 0;
}
