/** The largest photo that is taken in: said before it is sent, and held where it arrives. */
export const MAX_PHOTO_MB = 40;
export const MAX_PHOTO_BYTES = MAX_PHOTO_MB * 2 ** 20;
