// How wide a range is for what is meant by it.

/** Standard deviations either side of the mean that hold the middle 80 % of a normal distribution. */
export const Z80 = 1.2816;
