import { routeFor } from "@/app/_door/route-for";
import { listCards } from "@/lib/series";

export const dynamic = "force-dynamic";

/** Every card with the beads run by it, newest first. */
export const GET = routeFor("bead.read", async (now) => Response.json({ cards: await listCards(now.db) }));
