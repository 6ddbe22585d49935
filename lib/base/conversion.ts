/**
 * Exact conversion factors, by definition: 1 in = 25.4 mm, 1 ft = 12 in (international yard and pound, 1959;
 * NIST SP 811 Appendix B.8 prints both as exact; cited from memory). One place for all rooms.
 */
export const MM_PER_INCH = 25.4;
/** 1 in/min in m/min. */
export const M_PER_MIN_PER_IPM = MM_PER_INCH / 1000;
/** 1 ft³ in litres: (3.048 dm)³, exact. */
export const L_PER_CUBIC_FOOT = 28.316846592;
/** 1 ft³/h in L/min. */
export const L_PER_MIN_PER_CFH = L_PER_CUBIC_FOOT / 60;
