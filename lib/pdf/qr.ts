import QRCode from "qrcode";

/** Clear modules around the code, as ISO/IEC 18004 asks. */
const QUIET = 4;

/**
 * The code of an address as vector squares, `side` points wide with its quiet zone, top left at x, y. Rows of dark
 * modules are drawn as one bar each, so that no hairline shows between neighbours.
 */
export function drawQr(doc: PDFKit.PDFDocument, address: string, x: number, y: number, side: number): void {
  const { size, data } = QRCode.create(address, { errorCorrectionLevel: "M" }).modules;
  const module = side / (size + 2 * QUIET);
  const dark = (row: number, column: number): boolean => column < size && Boolean(data[row * size + column]);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < size; column += 1) {
      if (!dark(row, column)) continue;
      const first = column;
      while (dark(row, column + 1)) column += 1;
      const bar = (column - first + 1) * module;
      doc.rect(x + (QUIET + first) * module, y + (QUIET + row) * module, bar, module);
    }
  }
  doc.fill("#000000");
}
