/** Said wherever a person is about to cut (general advice of art-teaching societies; common practice). */
export const BLADE_CAUTION =
  'Blades: cut on a firm table, hold the work behind the blade and out of its path, and change a dull blade.';

/** Said as well where something is cut out with a knife (common practice, no source). */
export const KNIFE_CAUTION =
  'Knife: cut on a mat along a metal ruler, keep the fingers behind its edge, draw the knife lightly several times, and cover the blade after use.';

/** Said with files for a cutting machine (common practice, no source). */
export const MACHINE_CAUTION =
  'Machine: keep fingers, hair and sleeves away while it moves, stay with it, and switch it off before you touch its blade.';
