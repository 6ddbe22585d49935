"use server";

import { revalidatePath } from "next/cache";
import type { Said } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { confirmKey } from "@/lib/keys";
import { actionFor, anything, form, id } from "../_door/action-for";
import { recordSaid } from "../_door/answer";
import { textOf } from "../_door/form-text";

export const confirmKeyAction = actionFor(
  "people.manage",
  [id, anything, form],
  async ({ pen }, id, _, form): Promise<Answer<Said>> => {
    const said = { told: textOf(form, "told"), whose: textOf(form, "whose") };
    const confirmed = await confirmKey(pen, id, said, new Date());
    revalidatePath("/keys");
    return recordSaid(confirmed, "Confirmed: records by this key say so from now on.");
  },
);
