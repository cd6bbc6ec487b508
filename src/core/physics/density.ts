// The density of a sugar solution from its strength and temperature, and its strength from its density.

/** ICUMSA SPS-4; Bubnik et al., Sugar Technologists Manual, 8th ed. 1995, p. 164. */
const atTwenty = [385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289];
const firstOrder = [-46.272, -7.172, 1.1597, 5.1126, 17.5254];
const secondOrder = [59.7712, 7.2491, 12.363, -35.4791];
const thirdOrder = [-47.2207, -21.6977, 27.6301];
const fourthOrder = [18.3184, 12.3081];

const greatestBrix = 85;
const leastCelsius = 0;
/** The polynomial was made for up to 100 °C; syrup is read right off the boil, and its water part holds there. */
const greatestCelsius = 105;

/**
 * Density, kg/m³.
 * Range 0 to 85 °Bx and 0 to 105 °C; outside it null.
 * Source: ICUMSA polynomial (0 to 100 °C) with Kell's water; within 0.3 kg/m³ of the CRC table at 20 °C to 72 °Bx.
 */
export function densityKgPerM3(brix: number, celsius: number): number | null {
  if (!(brix >= 0 && brix <= greatestBrix && celsius >= leastCelsius && celsius <= greatestCelsius)) return null;
  const w = brix / 100;
  const u = (celsius - 20) / 100;
  const cold = waterDensity(celsius) + powerSum(atTwenty, w);
  // Litres are litres at 20 °C, so nearly all that is asked is asked there.
  if (u === 0) return cold;
  return (
    cold +
    u *
      (powerSum(firstOrder, w) +
        u * (powerSum(secondOrder, w) + u * (powerSum(thirdOrder, w) + u * powerSum(fourthOrder, w))))
  );
}

/**
 * The strength that has a density at a temperature, °Bx, exact to 1e-9.
 * Range as densityKgPerM3; what would be less than water by up to 0.5 °Bx is 0; outside it null.
 */
export function brixFromDensity(kgPerM3: number, celsius: number): number | null {
  const thinnest = densityKgPerM3(0, celsius);
  const thickest = densityKgPerM3(greatestBrix, celsius);
  const justAbove = densityKgPerM3(0.5, celsius);
  if (thinnest === null || thickest === null || justAbove === null) return null;
  const slack = justAbove - thinnest;
  if (!(kgPerM3 >= thinnest - slack && kgPerM3 <= thickest)) return null;
  let low = 0;
  let high = greatestBrix;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if ((densityKgPerM3(middle, celsius) ?? 0) < kgPerM3) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Kell's equation for water, kg/m³, 0 to 150 °C. */
function waterDensity(t: number): number {
  const above =
    999.83952 + t * (16.952577 + t * (-7.9905127e-3 + t * (-46.241757e-6 + t * (105.84601e-9 - t * 281.03006e-12))));
  return above / (1 + 16.887236e-3 * t);
}

/** c1 w + c2 w² + ... */
function powerSum(coefficients: readonly number[], w: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * w + coefficients[i]!;
  return w * sum;
}
