import { cookies } from "next/headers";
import { listViews, type ListView } from "@/components/beads";

export const LIST_VIEW = "list-view";

/** How the list lies for whoever looks; cards until they choose. */
export async function currentListView(): Promise<ListView> {
  const kept = (await cookies()).get(LIST_VIEW)?.value;
  return listViews.find((view) => view === kept) ?? "cards";
}
