import type { Db } from "@/lib/db";

/** Something that came for whoever asks. It names the exercise and no person: a notice is read over shoulders. */
export interface News {
  readonly kind: "handed-in" | "returned";
  readonly handInId: string;
  readonly exercise: string;
  /** ISO 8601, UTC. */
  readonly at: string;
}

/** More than so many at once are counted by nobody; the newest of them. */
const MOST = 20;

/**
 * What came after one moment and not after another, oldest first. `of`: the person whose feedback was returned to them; "all":
 * what was handed in by anybody, for those who answer.
 */
export async function newsBetween(
  db: Db,
  of: "all" | { readonly personId: string },
  { after, until }: { readonly after: Date; readonly until: Date },
): Promise<readonly News[]> {
  const span = { gt: after, lte: until };
  const title = { exercise: { select: { title: true } } };
  if (of === "all") {
    const rows = await db.handIn.findMany({
      where: { handedInAt: span, feedback: null },
      select: { id: true, handedInAt: true, ...title },
      orderBy: [{ handedInAt: "desc" }, { id: "desc" }],
      take: MOST,
    });
    return rows
      .map(({ id, handedInAt, exercise }) => newsOf("handed-in", id, exercise.title, handedInAt))
      .toReversed();
  }
  const rows = await db.feedback.findMany({
    where: { returnedAt: span, handIn: { personId: of.personId } },
    select: { handInId: true, returnedAt: true, handIn: { select: title } },
    orderBy: [{ returnedAt: "desc" }, { handInId: "desc" }],
    take: MOST,
  });
  return rows
    .map(({ handInId, returnedAt, handIn }) =>
      newsOf("returned", handInId, handIn.exercise.title, returnedAt ?? until),
    )
    .toReversed();
}

const newsOf = (kind: News["kind"], handInId: string, exercise: string, at: Date): News => ({
  kind,
  handInId,
  exercise,
  at: at.toISOString(),
});
