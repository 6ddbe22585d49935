"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import type { Said } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { photoPlace } from "@/lib/db";
import { clearDemoShop } from "@/lib/demo";
import { actionFor, anything, form } from "../_door/action-for";
import { recordAnswer } from "../_door/answer";

export const clearDemoAction = actionFor(
  "people.manage",
  [anything, form],
  async ({ pen }): Promise<Answer<Said>> => {
    const done = await clearDemoShop(pen, photoPlace());
    if (!done.ok) return recordAnswer(done);
    revalidatePath("/", "layout");
    redirect("/");
  },
);
