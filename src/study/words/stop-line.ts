/** What stands first on everything about a place planned as high. */
export const STOP_LINE =
  'Technical rope team needed. First crew: traffic, hazards, edge control, voice contact. Do not lower.';

/** The caution that every screen, sheet and text with a result carries once. */
export const CAUTION =
  'Planning estimate from elevation data. Verify on site. Follow your department’s procedures and the authority having jurisdiction; rope rescue needs trained, equipped people.';
