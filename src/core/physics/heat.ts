// The heat that a pan takes to warm up and to boil water away, and the time and the water that a heat gives.

/**
 * Heat that turns one kilogram of water into steam, kJ/kg.
 * Range 40 to 120 °C; outside it null. Also for syrup at its own boiling point: the steam's extra warmth is under 0.5 %.
 * Source: fit to IAPWS-IF97, within 0.02 kJ/kg from 80 to 110 °C and about 0.1 % at the ends.
 */
export function latentHeatKjPerKg(celsius: number): number | null {
  if (!(celsius >= 40 && celsius <= 120)) return null;
  const d = celsius - 100;
  return 2256.465 - 2.64277 * d - 3.1775e-3 * d * d;
}

/**
 * Heat that warms one kilogram of solution by one degree, kJ/(kg K).
 * Range 0 to 80 °Bx and 0 to 120 °C; outside it null.
 * Source: Bubnik et al. 1995 as given by Llano 2005, for purity 100 %; published equations differ by up to 10 % at 66 °Bx.
 */
export function specificHeatKjPerKgK(brix: number, celsius: number): number | null {
  if (!(brix >= 0 && brix <= 80 && celsius >= 0 && celsius <= 120)) return null;
  const purity = 100;
  return 4.1868 - 0.0297 * brix + 4.6e-5 * brix * purity + 7.5e-5 * brix * celsius;
}

/** A body of liquid that warms from one temperature to another, °C. */
interface WarmingUp {
  kg: number;
  brix: number;
  fromCelsius: number;
  toCelsius: number;
}

/** Heat that warms it, kJ; 0 where it is warm enough. Range as specificHeatKjPerKgK; outside it null. */
export function warmingHeatKj({ kg, brix, fromCelsius, toCelsius }: WarmingUp): number | null {
  // Specific heat is straight in temperature, so that of the middle is exact.
  const perKgK = specificHeatKjPerKgK(brix, (fromCelsius + toCelsius) / 2);
  return perKgK === null || !(kg >= 0) ? null : kg * perKgK * Math.max(0, toCelsius - fromCelsius);
}

/**
 * Seconds until it is warm with so many watts that stay in it; null without heat or out of range.
 * The vessel itself is left out: 3 kg of steel take what 0.35 L of water take.
 */
export function heatingUpSeconds(warming: WarmingUp, watts: number): number | null {
  const kilojoule = warmingHeatKj(warming);
  return kilojoule === null || !(watts > 0) ? null : (1000 * kilojoule) / watts;
}

/** Water that boils away with so many watts that end as steam, kg/s; 0 or more watts, 40 to 120 °C, else null. */
export function boiledOffKgPerS(watts: number, celsius: number): number | null {
  const latent = latentHeatKjPerKg(celsius);
  return latent === null || !(watts >= 0) ? null : watts / 1000 / latent;
}

/**
 * Heat that boils sap down to syrup, kJ: all of it warmed to water's boiling point, then the water driven off.
 * Range 0 < brix ≤ syrupBrix ≤ 80 and 0 to 100 °C; outside it null. Losses are the efficiency's.
 */
export function boilingDownHeatKj(sap: Omit<WarmingUp, 'toCelsius'>, syrupBrix: number): number | null {
  const warming = warmingHeatKj({ ...sap, toCelsius: 100 });
  const latent = latentHeatKjPerKg(100);
  if (warming === null || latent === null || !(sap.brix > 0 && sap.brix <= syrupBrix && syrupBrix <= 80)) return null;
  return warming + sap.kg * (1 - sap.brix / syrupBrix) * latent;
}
