import QRCode from "qrcode";

/** Clear modules around the code, as ISO/IEC 18004 asks. */
const QUIET = 4;

/** The code of an address as one path: sharp at any size, on screen and on paper. */
export function QrCode({ address, side, label }: { address: string; side: number; label: string }) {
  const { size, data } = QRCode.create(address, { errorCorrectionLevel: "M" }).modules;
  const whole = size + 2 * QUIET;
  const squares = Array.from({ length: size * size }, (_, i) =>
    data[i] ? `M${QUIET + (i % size)} ${QUIET + Math.floor(i / size)}h1v1h-1z` : "",
  ).join("");
  return (
    <svg
      viewBox={`0 0 ${whole} ${whole}`}
      width={side}
      height={side}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
      style={{ background: "var(--scan-light)", flex: "none", maxWidth: "100%" }}
    >
      <path d={squares} fill="var(--scan-dark)" />
    </svg>
  );
}
