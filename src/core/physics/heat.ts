// The heat that a pan takes to warm up and to boil water away.

/**
 * Heat that turns one kilogram of water into steam, kJ/kg.
 * Range 40 to 120 °C; outside it null.
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
