// Conversions between the units that the program keeps (SI, °C, hPa, litres, mm) and those that a person may choose.

export type TemperatureUnit = 'C' | 'F';
export type VolumeUnit = 'litre' | 'us-gallon' | 'imperial-gallon';
export type LengthUnit = 'mm' | 'inch';
export type PressureUnit = 'hpa' | 'kpa' | 'inhg';
export type MassUnit = 'kg' | 'pound';
export type PowerUnit = 'watt' | 'btu-per-hour';

/** Conventional inch of mercury, NIST SP 811. */
const hpaPerInHg = 33.86389;
const hpaPer: Record<PressureUnit, number> = { hpa: 1, kpa: 10, inhg: hpaPerInHg };

/** International table Btu, exact: 1055.05585262 J; so many watts are one Btu/h. */
const wattsPerBtuPerHour = 1055.05585262 / 3600;

/** Exact by definition. */
const mmPerInch = 25.4;
const kgPerPound = 0.45359237;
const zeroCelsiusKelvin = 273.15;
const litresPer: Record<VolumeUnit, number> = {
  litre: 1,
  'us-gallon': 3.785411784,
  'imperial-gallon': 4.54609,
};

/** °F of °C (exact). */
export const fahrenheitFromCelsius = (celsius: number): number => (celsius * 9) / 5 + 32;
/** °C of °F (exact). */
export const celsiusFromFahrenheit = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/** K of °C (exact). */
export const kelvinFromCelsius = (celsius: number): number => celsius + zeroCelsiusKelvin;
/** °C of K (exact). */
export const celsiusFromKelvin = (kelvin: number): number => kelvin - zeroCelsiusKelvin;

/** A temperature in the chosen unit. */
export const temperatureFromCelsius = (celsius: number, unit: TemperatureUnit): number =>
  unit === 'F' ? fahrenheitFromCelsius(celsius) : celsius;
/** °C of a temperature in a unit. */
export const celsiusFromTemperature = (value: number, unit: TemperatureUnit): number =>
  unit === 'F' ? celsiusFromFahrenheit(value) : value;

/** A difference of temperatures, such as a rise, in the chosen unit: 4 °C of rise are 7.2 °F. */
export const differenceFromCelsius = (celsius: number, unit: TemperatureUnit): number =>
  unit === 'F' ? (celsius * 9) / 5 : celsius;
/** °C of a difference of temperatures in a unit. */
export const celsiusFromDifference = (value: number, unit: TemperatureUnit): number =>
  unit === 'F' ? (value * 5) / 9 : value;

/** hPa in a unit. */
export const pressureFromHpa = (hpa: number, unit: PressureUnit): number => hpa / hpaPer[unit];
/** hPa of a pressure in a unit. */
export const hpaFromPressure = (value: number, unit: PressureUnit): number => value * hpaPer[unit];

/** What is taken for the air's pressure, hPa: more than any place and weather has (common practice). */
export const AIR_HPA = { least: 300, greatest: 1200 } as const;
/** The same in each unit, as it is typed; no two overlap, so a figure itself tells its unit. */
export const AIR_TYPED: Readonly<Record<PressureUnit, { least: number; greatest: number }>> = {
  inhg: { least: 9, greatest: 35 },
  kpa: { least: 36, greatest: 120 },
  hpa: AIR_HPA,
};
const PRESSURE_UNITS = ['hpa', 'kpa', 'inhg'] as const;

/** hPa of an air pressure as it was typed, in whichever unit such a figure is in; null for what is none in any. */
export function hpaFromFigure(typed: number): number | null {
  const unit = PRESSURE_UNITS.find((each) => typed >= AIR_TYPED[each].least && typed <= AIR_TYPED[each].greatest);
  return unit === undefined ? null : hpaFromPressure(typed, unit);
}

/** Also for flows: litres per hour become gallons per hour. */
export const volumeFromLitres = (litres: number, unit: VolumeUnit): number => litres / litresPer[unit];
/** Litres of a volume in a unit. */
export const litresFromVolume = (value: number, unit: VolumeUnit): number => value * litresPer[unit];

/** mm in a unit. */
export const lengthFromMm = (mm: number, unit: LengthUnit): number => (unit === 'inch' ? mm / mmPerInch : mm);
/** mm of a length in a unit. */
export const mmFromLength = (value: number, unit: LengthUnit): number => (unit === 'inch' ? value * mmPerInch : value);

/** kg in a unit. */
export const massFromKg = (kg: number, unit: MassUnit): number => (unit === 'pound' ? kg / kgPerPound : kg);
/** kg of a mass in a unit. */
export const kgFromMass = (value: number, unit: MassUnit): number => (unit === 'pound' ? value * kgPerPound : value);

/** W in a unit. */
export const powerFromWatts = (watts: number, unit: PowerUnit): number =>
  unit === 'btu-per-hour' ? watts / wattsPerBtuPerHour : watts;
/** W of a power in a unit. */
export const wattsFromPower = (value: number, unit: PowerUnit): number =>
  unit === 'btu-per-hour' ? value * wattsPerBtuPerHour : value;
