/** Temper colours, straw to blue, as in app/theme.css. */
const temper = ["#e8b83a", "#96541a", "#6b2f74", "#1f5aa6"] as const;
/** Part of the square that a device may cut away all round. */
const SAFE = 0.1;

/**
 * The house's sign as SVG: the section of a bead on its plate with both toes, over the band of temper colours.
 *
 * @param px Side of the square.
 * @param masked Drawn within the part that a device does not cut away.
 */
export function houseSign(px: number, masked: boolean): string {
  const scale = masked ? 1 - 2 * SAFE : 1;
  const inset = masked ? SAFE * 120 : 0;
  const band = temper.map((ink, i) => `<rect x="${i * 30}" y="104" width="30.5" height="16" fill="${ink}"/>`);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${px}" height="${px}" viewBox="0 0 120 120">`,
    `<rect width="120" height="120" fill="#14171c"/>`,
    ...(masked ? [] : band),
    `<g transform="translate(${inset} ${inset}) scale(${scale})">`,
    `<path d="M12 82 H108" stroke="#fff" stroke-width="8"/>`,
    `<path d="M30 82 C 40 34, 80 34, 90 82" fill="none" stroke="${temper[0]}" stroke-width="9"/>`,
    `<circle cx="30" cy="82" r="9" fill="#fff"/><circle cx="90" cy="82" r="9" fill="#fff"/>`,
    ...(masked ? [`<rect x="30" y="98" width="60" height="8" fill="${temper[3]}"/>`] : []),
    `</g></svg>`,
  ].join("");
}
