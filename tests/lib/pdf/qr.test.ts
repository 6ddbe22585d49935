import QRCode from "qrcode";
import { describe, expect, it } from "vitest";
import { drawQr } from "@/lib/pdf/qr";

interface Bar {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function barsOf(address: string, x: number, y: number, side: number): readonly Bar[] {
  const bars: Bar[] = [];
  const doc = {
    rect: (left: number, top: number, width: number, height: number) =>
      void bars.push({ x: left, y: top, width, height }),
    fill: () => undefined,
  };
  drawQr(doc as unknown as PDFKit.PDFDocument, address, x, y, side);
  return bars;
}

describe("drawQr", () => {
  const address = "http://127.0.0.1:3000/beads/2n5k4bycbby9";
  const { modules } = QRCode.create(address, { errorCorrectionLevel: "M" });
  const side = 53;
  const module = side / (modules.size + 8);
  const bars = barsOf(address, 11, 17, side);

  it("paints each dark module and no light one", () => {
    const painted = new Set(
      bars.flatMap((bar) => {
        const row = Math.round((bar.y - 17) / module) - 4;
        const first = Math.round((bar.x - 11) / module) - 4;
        const count = Math.round(bar.width / module);
        return Array.from({ length: count }, (_, i) => row * modules.size + first + i);
      }),
    );
    const dark = [...modules.data].flatMap((bit, i) => (bit ? [i] : []));
    expect(dark.length).toBeGreaterThan(200);
    expect([...painted].sort((a, b) => a - b)).toEqual(dark);
  });

  it("keeps four clear modules on every side", () => {
    expect(Math.min(...bars.map((bar) => bar.x))).toBeCloseTo(11 + 4 * module, 9);
    expect(Math.min(...bars.map((bar) => bar.y))).toBeCloseTo(17 + 4 * module, 9);
    expect(Math.max(...bars.map((bar) => bar.x + bar.width))).toBeCloseTo(11 + side - 4 * module, 9);
    expect(Math.max(...bars.map((bar) => bar.y + bar.height))).toBeCloseTo(17 + side - 4 * module, 9);
  });
});
