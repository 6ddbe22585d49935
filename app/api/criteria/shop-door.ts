import { revalidatePath } from "next/cache";
import type { Here } from "@/app/_door/here";
import { statusOf } from "@/app/_door/save-refused";
import { authorOf } from "@/app/criteria/author-of";
import { linesOf } from "@/lib/base";
import { saveShopSet } from "@/lib/shop";
import { recordSentence } from "@/lib/store";

/**
 * Makes a version of the shop's own limits, as the editor does. The answer says which, and whether it is new: where nothing
 * differs from the version before, none is made. `key` null: a set of its own, answered with 201.
 */
export async function saveByProgram(
  { pen, db, actor }: Here,
  key: string | null,
  basedOn: number,
  draft: unknown,
): Promise<Response> {
  const saved = await saveShopSet(pen, key, basedOn, draft, await authorOf(db, actor));
  if (!saved.ok)
    return Response.json(
      { issues: linesOf(saved.issues, recordSentence) },
      { status: statusOf(saved.issues) },
    );
  revalidatePath("/criteria", "layout");
  const location = `/api/criteria/${saved.value.key}`;
  return Response.json(saved.value, { status: key === null ? 201 : 200, headers: { location } });
}
