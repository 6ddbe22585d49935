/** Focal length of a phone's main camera over the long side: what lib/measure takes for granted, written out apart. */
export const phoneFocalShare = 26 / 36;
