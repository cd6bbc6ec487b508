// Looks that a person takes at a simulated pan: barometer, plain boiling water, hydrometer, refractometer, dip stick.
import type { Mark } from '../boil/entries.ts';
import { brixFromDensity, densityKgPerM3 } from '../physics/density.ts';
import { depthMillimetres, strengthBrix } from './liquid.ts';
import { nextNormal } from './random.ts';
import type { PanState, ProbeState, SimulationState } from './state.ts';

/** Standard errors of a home barometer, an averaged probe, a read-off instrument, a dip stick and a kitchen thermometer. */
const spread = { hpa: 0.2, celsius: 0.03, brix: 0.2, mm: 1, handCelsius: 0.4 };

const hydrometerReferenceCelsius = 15.56;
/** Cubic expansion of soda-lime glass, 1/K (physics.md 5.2). */
const glassPerKelvin = 25e-6;
/** A hot sample cools a little on its way into the cup. */
const sampleCoolsCelsius = 5;

const toStep = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(3));

/** What a barometer beside the pans shows, hPa to a tenth, with its error. */
export function pressureNoted(state: SimulationState): Mark {
  const hpa = toStep(state.air.pressureHpa + spread.hpa * nextNormal(state.random.hands), 0.1);
  return { kind: 'pressure', hpa, at: 'station' };
}

/** The tip has been held in plain boiling water long enough; the header's offset is in the figure. */
export function waterCheckNoted(state: SimulationState, probe: ProbeState, errorCelsius?: number): Mark {
  const error = errorCelsius ?? spread.celsius * nextNormal(state.random.hands);
  const shown = state.air.waterCelsius + probe.setup.biasCelsius + probe.offsetCelsius + error;
  return { kind: 'water-check', probe: probe.setup.id, celsius: toStep(shown, 0.05) };
}

/** What a dip stick shows, whole mm with its error; null of a pan that is off. */
export function depthNoted(state: SimulationState, pan: PanState): Mark | null {
  if (pan.off) return null;
  const mm = depthMillimetres(pan.liquid, pan.hearth.areaM2) + spread.mm * nextNormal(state.random.hands);
  return { kind: 'depth', pan: pan.id, mm: Math.max(0, Math.round(mm)) };
}

/** A thermometer held in for a moment. */
export function readingNoted(state: SimulationState, pan: PanState): Mark | null {
  if (pan.off) return null;
  const celsius = pan.liquid.celsius + spread.handCelsius * nextNormal(state.random.hands);
  return { kind: 'reading', pan: pan.id, celsius: toStep(celsius, 0.5) };
}

/** What an instrument shows, with its error; null of a pan that is off. */
export function densityNoted(
  state: SimulationState,
  pan: PanState,
  instrument: 'hydrometer' | 'refractometer',
): Mark | null {
  if (pan.off) return null;
  const error = spread.brix * nextNormal(state.random.hands);
  const brix = strengthBrix(pan.liquid);
  if (instrument === 'refractometer') {
    const reading = Math.max(0, toStep(brix + error, 0.1));
    return { kind: 'density', pan: pan.id, brix: reading, celsius: 20, instrument, compensated: true };
  }
  const celsius = toStep(Math.min(100, pan.liquid.celsius) - sampleCoolsCelsius, 0.5);
  const floats = hydrometerReading(brix, celsius);
  return floats === null
    ? null
    : { kind: 'density', pan: pan.id, brix: toStep(floats + error, 0.1), celsius, instrument };
}

/** What a hydrometer for 15.56 °C shows in a sample of another temperature, °Bx; null outside the density equation. */
function hydrometerReading(brix: number, celsius: number): number | null {
  const density = densityKgPerM3(brix, celsius);
  if (density === null) return null;
  const grown = density * (1 + glassPerKelvin * (celsius - hydrometerReferenceCelsius));
  return brixFromDensity(grown, hydrometerReferenceCelsius);
}
