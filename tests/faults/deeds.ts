/** What the victim does, and what it tells of it. */
export const allDeeds = ["make", "save", "photo", "sign", "import", "backup"] as const;
export type Deed = (typeof allDeeds)[number];

/** What the victim is told to do next, so that every deed is met and not only the long ones. */
export interface Wish {
  readonly next: Deed;
}

/** What is done once to a folder that nobody serves. */
export type OneDeed = "migrate" | "restore";

export type Told =
  | { readonly what: "ready" }
  | { readonly what: "began"; readonly deed: Deed | OneDeed }
  | { readonly what: "done"; readonly deed: Deed; readonly proof: string };

/** An archive to import whole, the ids of its beads, and the same in two halves for the fault that does so. */
export interface PreparedArchive {
  readonly file: string;
  readonly halves: readonly string[];
  readonly beadIds: readonly string[];
}

/** What lies ready in the folder of a victim. */
export interface Prepared {
  readonly beadId: string;
  readonly revision: number;
  readonly jobId: string;
  readonly inspectorId: string;
  readonly passphrase: string;
  readonly archives: readonly PreparedArchive[];
}
