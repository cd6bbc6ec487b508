// What the open surface of a hot pan loses to the air: water that evaporates, heat that the air takes, and radiation.
import { latentHeatKjPerKg } from './heat.ts';
import { saturationPressureHpa } from './water-point.ts';

/** The air over a pan. */
export interface AirOver {
  celsius: number;
  /** Vapour pressure of its own moisture. */
  vapourHpa: number;
  /** At the surface: below a rim it is out of most of the wind. */
  windMetresPerSecond: number;
  pressureHpa: number;
}

/** For each square metre. */
interface SurfaceLoss {
  evaporatedKgPerS: number;
  evaporationWatts: number;
  convectionWatts: number;
  radiationWatts: number;
}

/** Degrees that air warms for each hPa of vapour it takes up, over its pressure: the psychrometer's 6.6e-4/K, from memory. */
const psychrometerPerKelvin = 6.6e-4;

const stefanBoltzmann = 5.670374e-8;
/** Water in the infrared, from memory. */
const emissivity = 0.95;

/** The latent heat's equation begins here; colder water loses little, and its latent heat is 4 % more at most. */
const leastLatentCelsius = 40;
const greatestLatentCelsius = 120;

/**
 * Water that leaves a still surface, kg/(m² s); 0 where the air is moister. `riseC` is how far the liquid boils over
 * water, which keeps as much vapour back. Surface 0.1 to 120 °C over its rise, else null.
 * Source: Carrier 1918 as given for pools in the ASHRAE handbook, W = (p - p_air)(0.089 + 0.0782 v)/Y with kPa, m/s
 * and kJ/kg. Used far above its range: of two published tables for open tanks it is 0 to 20 and 0 to 40 % under.
 */
export function surfaceEvaporationKgPerM2S(celsius: number, riseC: number, air: AirOver): number | null {
  const liquidHpa = saturationPressureHpa(Math.max(0.1, celsius - riseC));
  const latent = latentHeatKjPerKg(Math.max(leastLatentCelsius, Math.min(greatestLatentCelsius, celsius)));
  if (liquidHpa === null || latent === null || !(celsius <= greatestLatentCelsius)) return null;
  const kilopascal = Math.max(0, liquidHpa - air.vapourHpa) / 10;
  return (kilopascal * (0.089 + 0.0782 * air.windMetresPerSecond)) / latent;
}

/**
 * All that a still surface below a boil loses. Convection goes with evaporation, for the same air carries both away
 * (Bowen's ratio, psychrometer coefficient from memory); the sky or shed is taken as warm as the air.
 * At a boil the steam keeps the air off: then only the radiation comes on top of what boils away.
 * Range as surfaceEvaporationKgPerM2S, and an air no warmer than the liquid; outside it null.
 */
export function openSurfaceLoss(celsius: number, riseC: number, air: AirOver): SurfaceLoss | null {
  const evaporatedKgPerS = surfaceEvaporationKgPerM2S(celsius, riseC, air);
  const liquidHpa = saturationPressureHpa(Math.max(0.1, celsius - riseC));
  if (evaporatedKgPerS === null || liquidHpa === null || !(air.celsius <= celsius)) return null;
  const latent = latentHeatKjPerKg(Math.max(leastLatentCelsius, celsius)) ?? 0;
  const evaporationWatts = 1000 * evaporatedKgPerS * latent;
  const wattsPerHpa = (0.089 + 0.0782 * air.windMetresPerSecond) * 100;
  return {
    evaporatedKgPerS,
    evaporationWatts,
    convectionWatts: wattsPerHpa * psychrometerPerKelvin * air.pressureHpa * (celsius - air.celsius),
    radiationWatts: emissivity * stefanBoltzmann * ((celsius + 273.15) ** 4 - (air.celsius + 273.15) ** 4),
  };
}
