import { routeFor } from "@/app/_door/route-for";
import { heldRoles, type Actor } from "@/lib/people";
import { getPerson } from "@/lib/roster";

export const dynamic = "force-dynamic";

/** Who asks: their person and roles, the leading one first, and how far a token reaches. */
export const GET = routeFor("bead.read", async ({ db, actor }) => {
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  const roles = rolesOf(actor);
  return Response.json({
    personId: person?.id ?? null,
    mark: person?.mark ?? null,
    role: roles[0],
    roles,
    scopes: actor.kind === "person" ? actor.scopes : null,
  });
});

/** Of whoever comes through this door without a person: the owner at their machine. */
const rolesOf = (actor: Actor) => (actor.kind === "person" ? heldRoles(actor) : ["owner" as const]);
