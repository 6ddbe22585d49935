import { canonicalJson, invariant } from "@/lib/base";

/** Everything one bead's rows hold, to the last column, so that they can be written again as they were. */
export interface WholeBead {
  readonly row: Omit<Row, "photos" | "next" | "welder" | "updatedAt">;
  readonly photos: readonly Omit<Row["photos"][number], "beadId">[];
  /** Of the beads that were run after it. */
  readonly nextIds: readonly string[];
}

interface Row {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly welder: string | null;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly revision: number;
  readonly setup: object;
  readonly judgement: object;
  readonly previousId: string | null;
  readonly welderId: string | null;
  readonly jobId: string | null;
  readonly weldId: string | null;
  readonly photos: readonly {
    readonly id: string;
    readonly beadId: string;
    readonly sha256: string;
    readonly role: string;
    readonly place: number;
    readonly format: string;
    readonly bytes: number;
    readonly widthPx: number;
    readonly heightPx: number;
    readonly addedAt: Date;
    readonly drawing: object;
  }[];
  readonly next: readonly { readonly id: string }[];
}

type Loose = { readonly [K in keyof Row]: unknown };

export const wholeBead = {
  /** Canonical JSON, dates as texts. The welder's name lies in a column of its own: it is removed with the person. */
  textOf(loose: Loose): string {
    const { photos, next, welder: _name, updatedAt: _moves, ...row } = loose as Row;
    const whole: WholeBead = {
      row,
      photos: photos.map(({ beadId: _of, ...photo }) => photo),
      nextIds: next.map(({ id }) => id),
    };
    return canonicalJson(JSON.parse(JSON.stringify(whole)));
  },

  /** What `textOf` wrote; throws on anything else. */
  fromText(text: string): WholeBead {
    const whole = JSON.parse(text) as WholeBead;
    invariant(Array.isArray(whole.photos) && Array.isArray(whole.nextIds), "a deleted bead is kept whole");
    return {
      ...whole,
      row: { ...whole.row, createdAt: new Date(whole.row.createdAt) },
      photos: whole.photos.map((photo) => ({ ...photo, addedAt: new Date(photo.addedAt) })),
    };
  },
};
