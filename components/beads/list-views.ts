export const listViews = ["cards", "table"] as const;
/** How the list lies: pictures with what is said of them, or rows to be sorted. */
export type ListView = (typeof listViews)[number];
