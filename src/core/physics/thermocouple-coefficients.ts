// Coefficients of the thermocouples K, J and T: millivolts from °C, and rough °C from millivolts to start a solve from.

export type ThermocoupleType = 'K' | 'J' | 'T';

/** Powers 0, 1, 2 … of one stretch of the curve. */
type Polynomial = readonly number[];

export interface ThermocoupleCurve {
  /** Where both directions are known, °C; the polynomials below 0 °C go on to -270, but hardly rise any more there. */
  lowestCelsius: number;
  highestCelsius: number;
  /** Millivolts from °C below and from 0 °C up, with the cold junction at 0 °C. */
  below: Polynomial;
  above: Polynomial;
  /** Added from 0 °C up: millivolts times exp(perSquareCelsius (t - centreCelsius)²). */
  bell: { millivolts: number; perSquareCelsius: number; centreCelsius: number } | null;
  /** °C from millivolts, within 0.05 °C, below and from 0 mV up. */
  roughBelow: Polynomial;
  roughAbove: Polynomial;
  /** Up to where `roughAbove` holds, mV. */
  roughHighestMillivolts: number;
}

/**
 * NIST ITS-90 thermocouple database (Standard Reference Database 60, Monograph 175), read in a public copy of
 * its table of all coefficients; the printed reference functions agree to the digits that they give.
 */
export const THERMOCOUPLE_CURVES: Readonly<Record<ThermocoupleType, ThermocoupleCurve>> = {
  K: {
    lowestCelsius: -200,
    highestCelsius: 1372,
    below: [
      0, 0.039450128025, 2.3622373598e-5, -3.2858906784e-7, -4.9904828777e-9, -6.7509059173e-11, -5.7410327428e-13,
      -3.1088872894e-15, -1.0451609365e-17, -1.9889266878e-20, -1.6322697486e-23,
    ],
    above: [
      -0.017600413686, 0.038921204975, 1.8558770032e-5, -9.9457592874e-8, 3.1840945719e-10, -5.6072844889e-13,
      5.6075059059e-16, -3.2020720003e-19, 9.7151147152e-23, -1.2104721275e-26,
    ],
    bell: { millivolts: 0.1185976, perSquareCelsius: -0.0001183432, centreCelsius: 126.9686 },
    roughBelow: [
      0, 25.173462, -1.1662878, -1.0833638, -0.8977354, -0.37342377, -0.086632643, -0.010450598, -0.00051920577,
    ],
    roughAbove: [
      0, 25.08355, 0.07860106, -0.2503131, 0.0831527, -0.01228034, 0.0009804036, -4.41303e-5, 1.057734e-6, -1.052755e-8,
    ],
    roughHighestMillivolts: 20.644,
  },
  J: {
    lowestCelsius: -210,
    highestCelsius: 760,
    below: [
      0, 0.050381187815, 3.047583693e-5, -8.568106572e-8, 1.3228195295e-10, -1.7052958337e-13, 2.0948090697e-16,
      -1.2538395336e-19, 1.5631725697e-23,
    ],
    above: [
      0, 0.050381187815, 3.047583693e-5, -8.568106572e-8, 1.3228195295e-10, -1.7052958337e-13, 2.0948090697e-16,
      -1.2538395336e-19, 1.5631725697e-23,
    ],
    bell: null,
    roughBelow: [
      0, 19.528268, -1.2286185, -1.0752178, -0.59086933, -0.17256713, -0.028131513, -0.002396337, -8.3823321e-5,
    ],
    roughAbove: [0, 19.78425, -0.2001204, 0.01036969, -0.0002549687, 3.585153e-6, -5.344285e-8, 5.09989e-10],
    roughHighestMillivolts: 42.919,
  },
  T: {
    lowestCelsius: -200,
    highestCelsius: 400,
    below: [
      0, 0.038748106364, 4.4194434347e-5, 1.1844323105e-7, 2.0032973554e-8, 9.0138019559e-10, 2.2651156593e-11,
      3.6071154205e-13, 3.8493939883e-15, 2.8213521925e-17, 1.4251594779e-19, 4.8768662286e-22, 1.079553927e-24,
      1.3945027062e-27, 7.9795153927e-31,
    ],
    above: [
      0, 0.038748106364, 3.329222788e-5, 2.0618243404e-7, -2.1882256846e-9, 1.0996880928e-11, -3.0815758772e-14,
      4.547913529e-17, -2.7512901673e-20,
    ],
    bell: null,
    roughBelow: [0, 25.949192, -0.21316967, 0.79018692, 0.42527777, 0.13304473, 0.020241446, 0.0012668171],
    roughAbove: [0, 25.928, -0.7602961, 0.04637791, -0.002165394, 6.048144e-5, -7.293422e-7],
    roughHighestMillivolts: 20.872,
  },
};
