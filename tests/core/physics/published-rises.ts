// Published equations for the rise of sugar solutions, written out as their sources have them, to compare ours with.
import { saturationTemperatureCelsius } from '../../../src/core/physics/water-point.ts';

const ZERO_CELSIUS_KELVIN = 273.15;
const PURITY_PERCENT = 100;

/** c0 + c1 q + c2 q², q in %. */
const ofPurity = ([c0, c1, c2]: readonly [number, number, number]): number =>
  c0 + c1 * PURITY_PERCENT + c2 * PURITY_PERCENT ** 2;

/**
 * Bubnik & Kadlec, Sugar Technologists Manual, 8th ed. 1995, for pure sucrose; constants read in a public copy.
 * Brix, water's boiling point in °C; °C. It jumps by 0.08 °C at 60 °Bx.
 */
export function bubnikKadlec1995RiseC(brix: number, waterCelsius: number): number {
  const thin = brix < 60;
  const k = thin ? 40 : 60;
  const a = ofPurity(thin ? [1.59515e-4, -2.00092e-6, 8.01933e-9] : [1.67525e-4, -1.85299e-6, 7.92284e-9]);
  const b = ofPurity(thin ? [1.8444e-6, -3.0438e-8, 1.72958e-10] : [2.87764e-6, -2.77263e-8, 1.44306e-10]);
  const c = ofPurity(thin ? [1.08062e-3, 2.89645e-6, -3.01416e-8] : [1.06668e-3, 2.10304e-6, -4.28274e-8]);
  const kelvin = waterCelsius + ZERO_CELSIUS_KELVIN;
  return ((a * brix ** 2 * kelvin ** 2) / (374.3 - waterCelsius) ** 0.38) * (b * (brix - k) ** 2 + c);
}

/** Heat of evaporation in the form of Kadlec et al. 1978, J/mol. */
const kadlecHeat = (kelvin: number): number =>
  60347.4 - 169.558 * kelvin + 0.858193 * kelvin ** 2 - 2.11784e-3 * kelvin ** 3 + 1.76e-6 * kelvin ** 4;

/**
 * Kadlec, Bretschneider & Dandar 1978, La Sucrerie Belge 97, pure sucrose; constants read in a public copy.
 * Brix, water's boiling point in °C; °C. Its polynomial is in the mole fraction of sucrose.
 */
export function kadlec1978RiseC(brix: number, waterCelsius: number): number {
  const sucrose = brix / 342.2965;
  const x = sucrose / (sucrose + (100 - brix) / 18.01528);
  const atSeaLevel = 33.003 * x + 170.517 * x ** 2 - 324.177 * x ** 3 + 172.554 * x ** 4;
  const kelvin = waterCelsius + ZERO_CELSIUS_KELVIN;
  return ((atSeaLevel * kadlecHeat(373.15)) / kadlecHeat(kelvin)) * (kelvin / 373.15) ** 2;
}

/** Crapiste & Lozano 1988, J Food Sci 53:865: form and constants from memory. */
const crapisteLozano = {
  sucrose: [3.0612e-2, 0.0942, 5.329e-2, 0.1356],
  reducing: [2.2271e-2, 0.5878, 3.593e-2, 0.1186],
} as const;

/** Brix, hPa; °C. Measured from 17 to 72 °Bx and 72 to 700 hPa. */
export function crapisteLozano1988RiseC(sugars: 'sucrose' | 'reducing', brix: number, pressureHpa: number): number {
  const [alpha, beta, gamma, delta] = crapisteLozano[sugars];
  return alpha * brix ** beta * Math.exp(gamma * brix) * pressureHpa ** delta;
}

/** Claassen and Hugot's handbook table for pure sucrose at sea level, to a tenth of a degree: from memory. */
export const claassenHugotRises: readonly (readonly [brix: number, riseC: number])[] = [
  [10, 0.1],
  [20, 0.3],
  [30, 0.6],
  [40, 1.05],
  [50, 1.8],
  [60, 3.0],
  [70, 5.1],
  [80, 9.4],
];

/**
 * Rise of boiling glucose by the modified UNIQUAC of Peres & Macedo 1996, Fluid Phase Equilib. 123:71; parameters
 * from memory. Brix, hPa; °C.
 */
export function uniquacGlucoseRiseC(brix: number, pressureHpa: number): number {
  const water = saturationTemperatureCelsius(pressureHpa) ?? NaN;
  let celsius = water;
  for (let round = 0; round < 20; round += 1)
    celsius = saturationTemperatureCelsius(pressureHpa / Math.exp(uniquacLogActivity(brix, celsius))) ?? NaN;
  return celsius - water;
}

const uniquacWater = { r: 0.92, q: 1.4 };
const uniquacGlucose = { r: 8.1528, q: 7.92 };

/** exp(-a/T) of an interaction energy a + b (T - 298.15), K. */
const boltzmann = (a: number, b: number, kelvin: number): number => Math.exp(-(a + b * (kelvin - 298.15)) / kelvin);

/** ln a_w of glucose in water; the combinatorial part has r^(2/3) and no Staverman-Guggenheim term. */
function uniquacLogActivity(brix: number, celsius: number): number {
  const kelvin = celsius + ZERO_CELSIUS_KELVIN;
  const [glucose, water] = [brix / 180.156, (100 - brix) / 18.01528];
  const x = water / (water + glucose);
  const [bulkWater, bulkGlucose] = [uniquacWater.r ** (2 / 3), uniquacGlucose.r ** (2 / 3)];
  const bulk = bulkWater / (x * bulkWater + (1 - x) * bulkGlucose);
  const surface = (x * uniquacWater.q) / (x * uniquacWater.q + (1 - x) * uniquacGlucose.q);
  const glucoseWater = boltzmann(-68.6157, -0.069, kelvin);
  const waterGlucose = boltzmann(96.5267, 0.277, kelvin);
  const aroundWater = surface + (1 - surface) * glucoseWater;
  const aroundGlucose = surface * waterGlucose + (1 - surface);
  const residual =
    uniquacWater.q *
    (1 - Math.log(aroundWater) - surface / aroundWater - ((1 - surface) * waterGlucose) / aroundGlucose);
  return Math.log(x) + Math.log(bulk) + 1 - bulk + residual;
}
