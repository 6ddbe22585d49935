import { fail, issue, ok, type Result } from "@/lib/base";
import { keepFacts } from "@/lib/beads";
import { sha256Text, writing, type Pen, type RecordIssue } from "@/lib/store";
import { freshSecret } from "./hand-ins";

/**
 * Says whose a hand-in is that came under a typed name: somebody of its group. Everything else that was handed in to this
 * group under the same name goes along. The words the student typed are gone then: their name is the person's.
 */
export async function linkHandIns(
  pen: Pen,
  handInId: string,
  personId: string,
): Promise<Result<{ readonly linked: number }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const one = await tx.handIn.findUnique({ where: { id: handInId }, include: { exercise: true } });
    if (!one) return fail(issue("hand-in-gone"));
    if (one.personId !== null) return fail(issue("hand-in-linked"));
    const { groupId } = one.exercise;
    const person = await tx.person.findFirst({
      where: { id: personId, removedAt: null, groups: { some: { groupId } } },
    });
    if (!person) return fail(issue("hand-in-other-group"));
    const unlinked = await tx.handIn.findMany({ where: { personId: null, exercise: { groupId } } });
    const called = (name: string | null): string => name?.trim().toLowerCase() ?? "";
    const same = unlinked.filter(
      ({ id, givenName }) =>
        id === handInId || (givenName !== null && called(givenName) === called(one.givenName)),
    );
    for (const { id, beadId } of same) {
      await tx.handIn.update({ where: { id }, data: { personId, givenName: null } });
      await tx.bead.update({ where: { id: beadId }, data: { welderId: personId, welder: person.name } });
      await keepFacts(tx, beadId);
      await log(`hand-in:${id}`, "hand-in.linked", { person: personId });
      await log(`bead:${beadId}`, "bead.welder-linked", { person: personId });
    }
    return ok({ linked: same.length });
  });
}

/**
 * A new secret address for a hand-in whose old one was lost. The old one opens nothing from now on: whoever found it is
 * out. Told once and stored nowhere.
 */
export async function reissueAddress(
  pen: Pen,
  handInId: string,
): Promise<Result<{ readonly code: string; readonly secret: string }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const one = await tx.handIn.findUnique({ where: { id: handInId }, include: { exercise: true } });
    if (!one) return fail(issue("hand-in-gone"));
    const secret = freshSecret();
    await tx.handIn.update({ where: { id: handInId }, data: { secretHash: sha256Text(secret) } });
    await log(`hand-in:${handInId}`, "hand-in.address-renewed");
    return ok({ code: one.exercise.code, secret });
  });
}
