// Water's boiling point from pressure, and back: the saturation line of IAPWS-IF97, region 4.
import { celsiusFromKelvin, kelvinFromCelsius } from '../quantities/units.ts';

/** IAPWS R7-97(2012), Table 34. */
const n1 = 0.11670521452767e4;
const n2 = -0.72421316703206e6;
const n3 = -0.17073846940092e2;
const n4 = 0.1202082470247e5;
const n5 = -0.32325550322333e7;
const n6 = 0.1491510861353e2;
const n7 = -0.48232657361591e4;
const n8 = 0.40511340542057e6;
const n9 = -0.23855557567849;
const n10 = 0.65017534844798e3;

const hpaPerMpa = 10_000;

/** The ends of the saturation line: 273.15 K and the critical point. */
const leastPressureHpa = 6.11213;
const greatestPressureHpa = 220_640;
const leastCelsius = 0;
const greatestCelsius = celsiusFromKelvin(647.096);

/**
 * The temperature at which pure water boils under a pressure, °C (ITS-90).
 * Range 6.11213 to 220 640 hPa; outside it null.
 * Source: IAPWS R7-97(2012), equation 31. At 1013.25 hPa it gives 99.974 °C, not 100.
 */
export function saturationTemperatureCelsius(pressureHpa: number): number | null {
  if (!(pressureHpa >= leastPressureHpa && pressureHpa <= greatestPressureHpa)) return null;
  const beta = Math.sqrt(Math.sqrt(pressureHpa / hpaPerMpa));
  const e = beta * beta + n3 * beta + n6;
  const f = n1 * beta * beta + n4 * beta + n7;
  const g = n2 * beta * beta + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  const sum = n10 + d;
  const kelvin = (sum - Math.sqrt(sum * sum - 4 * (n9 + n10 * d))) / 2;
  return celsiusFromKelvin(kelvin);
}

/**
 * The pressure under which pure water boils at a temperature, hPa.
 * Range 0 to 373.946 °C; outside it null.
 * Source: IAPWS R7-97(2012), equation 30.
 */
export function saturationPressureHpa(celsius: number): number | null {
  if (!(celsius >= leastCelsius && celsius <= greatestCelsius)) return null;
  const kelvin = kelvinFromCelsius(celsius);
  const theta = kelvin + n9 / (kelvin - n10);
  const a = theta * theta + n1 * theta + n2;
  const b = n3 * theta * theta + n4 * theta + n5;
  const c = n6 * theta * theta + n7 * theta + n8;
  const root = (2 * c) / (-b + Math.sqrt(b * b - 4 * a * c));
  return root ** 4 * hpaPerMpa;
}
