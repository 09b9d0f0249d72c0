/** Grams in an avoirdupois ounce, exactly: a sixteenth of a pound of 453.59237 g. */
export const GRAMS_PER_OUNCE = 28.349523125;

/** Grams in an avoirdupois pound, exactly (international yard and pound agreement, 1959). */
export const GRAMS_PER_POUND = 453.59237;
