// From which temperature on what is in a pan is no syrup any more.

/**
 * °C. The thickest syrup boils near 115 °C, and sugar with hardly any water left at about 130; what is hotter stands
 * dry on its metal and burns (common practice).
 */
const BURNT_C = 130;

/** Whether a pan that reads so, °C, holds burnt sugar rather than syrup; false where the temperature is not known. */
export const isBurnt = (celsius: number | null): boolean => celsius !== null && celsius >= BURNT_C;
