import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { currentUnits } from "@/app/_door/current-units";
import { beadRouteFor } from "@/app/_door/here";
import { palette } from "@/components/canvas/palette";
import { dataDir } from "@/lib/db";
import { canonicalJson } from "@/lib/base";
import { sheetPdf } from "@/lib/pdf";
import { viewPath } from "@/lib/photo";
import { assessContext, getBead } from "@/lib/record";
import { sheetDocument, type SheetDocument } from "@/lib/report";

export const dynamic = "force-dynamic";

/** The sheet of a bead as a PDF, in the units of this installation; the same revision gives the same file. */
export async function GET(
  request: Request,
  context: { params: Promise<{ beadId: string }> },
): Promise<Response> {
  const { beadId } = await context.params;
  const now = await beadRouteFor(request, "bead.read", beadId);
  if (now instanceof Response) return now;
  const [bead, units, known] = await Promise.all([
    getBead(now.db, beadId),
    currentUnits(),
    assessContext(now.db),
  ]);
  if (!bead) return Response.json({ issues: [{ code: "bead-gone" }] }, { status: 404 });
  const sheet = sheetDocument(bead, units.preferences, known);
  const bytes = await sheetPdf({
    sheet,
    photos: await pictures(sheet),
    digest: createHash("sha256").update(canonicalJson(sheet)).digest("hex"),
    recordUrl: `http://${request.headers.get("host") ?? "localhost"}/beads/${bead.id}`,
    palette,
    createdAt: bead.updatedAt,
  });
  return new Response(Buffer.from(bytes), {
    headers: {
      "content-type": "application/pdf",
      "content-disposition": `inline; filename="toeline-bead-${sheet.number}-r${sheet.revision}.pdf"`,
      "cache-control": "private, no-store",
      "x-content-type-options": "nosniff",
    },
  });
}

/** The pictures that can be read; the sheet says of the others that they are missing. */
async function pictures(sheet: SheetDocument): Promise<ReadonlyMap<string, Uint8Array>> {
  const found = new Map<string, Uint8Array>();
  for (const { sha256 } of sheet.photos) {
    const file = viewPath(dataDir(), sha256, "small");
    const bytes = file === null ? null : await readFile(file).catch(() => null);
    if (bytes) found.set(sha256, bytes);
  }
  return found;
}
