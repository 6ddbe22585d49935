/** Published tables of this trade are printed in inches; rows keep the printed numbers and convert here, once. */
export const MM_PER_INCH = 25.4;
/** 1 in/min in m/min. Exact. */
export const M_PER_MIN_PER_IPM = 0.0254;
/** 1 ft³/h in L/min: 28.316846592 L per ft³, 60 min per h. */
export const L_PER_MIN_PER_CFH = 28.316846592 / 60;
