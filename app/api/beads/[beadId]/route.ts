import { revalidatePath } from "next/cache";
import { z } from "zod";
import { beadRouteFor } from "@/app/_door/route-for";
import { readJson } from "@/app/_door/read-json";
import { issue, linesOf } from "@/lib/base";
import { assessBead } from "@/lib/assess";
import { judgedCells } from "@/lib/exchange";
import { assessContext } from "@/lib/shop";
import { readBead, saveBead } from "@/lib/beads";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

const SaveSchema = z.object({ basedOn: z.number().int().min(1), content: z.unknown() });

/** The bead as it is now, with its revision, and the figures of the toes that somebody accepted on its first such photo. */
export const GET = beadRouteFor("bead.read", async (now, _request, { beadId }) => {
  const bead = await readBead(now.db, beadId);
  if (bead !== null && bead !== "unreadable") {
    const assessed = assessBead(bead, await assessContext(now.db));
    return Response.json({ ...bead, profile: judgedCells(assessed).profile });
  }
  const code = bead === null ? "bead-gone" : "bead-unreadable";
  const issues = linesOf([issue(code as "bead-gone" | "bead-unreadable")], recordSentence);
  return Response.json({ issues }, { status: bead === null ? 404 : 409 });
});

/** `{ basedOn, content }`: saves the whole bead if it is still at revision `basedOn`; 409 when it is not. */
export const PUT = beadRouteFor("bead.write", async (now, request, { beadId }) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const body = SaveSchema.safeParse(read.json);
  if (!body.success) {
    return Response.json(
      {
        issues: [
          {
            code: "save-not-understood",
            message: "The save did not arrive whole. It will be sent again at the next change.",
          },
        ],
      },
      { status: 400 },
    );
  }
  const saved = await saveBead(now.pen, beadId, body.data.basedOn, body.data.content);
  if (saved.ok) {
    revalidatePath("/");
    return Response.json(saved.value);
  }
  const issues = linesOf(saved.issues, recordSentence);
  const statuses: Record<string, number> = {
    "bead-gone": 404,
    "bead-changed-elsewhere": 409,
    "bead-not-understood": 422,
    "bead-too-many-points": 422,
    "bead-unreadable": 409,
  };
  return Response.json({ issues }, { status: statuses[issues[0]?.code ?? ""] ?? 503 });
});
