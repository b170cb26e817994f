/** g salt per mg sodium: Regulation (EU) 1169/2011, Annex I. */
export const SALT_PER_MG_SODIUM = 2.5 / 1000;

/** g potassium chloride per mg potassium: molar masses 74.551 and 39.098 g/mol. */
export const POTASSIUM_CHLORIDE_PER_MG = 74.551 / 39.098 / 1000;

/** g tripotassium citrate, which stands for all plant salts, per mg potassium: 306.395 over three times 39.098 g/mol. */
export const POTASSIUM_CITRATE_PER_MG = 306.395 / (3 * 39.098) / 1000;
