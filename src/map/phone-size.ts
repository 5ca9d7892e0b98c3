/** A map narrower than this is a phone's, pixels: keys at the thumb, the flag in more lines. */
export const PHONE_BELOW_PX = 600;
