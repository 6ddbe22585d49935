import type { Metadata } from "next";
import Link from "next/link";
import { Header } from "@/components/shell";
import { LocalTime, page, Panel } from "@/components/ui";
import { currentUnits } from "@/app/_door/current-units";
import { setupLine } from "@/lib/report";
import { listCards } from "@/lib/series";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Procedure cards" };

/** The shop's cards, for everybody at the bench. */
export default async function CardsPage() {
  const now = await pageFor("bead.read");
  const [cards, { preferences }] = await Promise.all([listCards(now.db), currentUnits()]);
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Procedure cards</h1>
        <p>How this shop runs a weld that it found good: ranges, heat, preheat. No qualified procedure.</p>
        {cards.length === 0 && (
          <p className={page.note}>None yet. Make one from a bead that came out well, or from a trial.</p>
        )}
        {cards.map(({ id, number, content, createdAt, retiredAt, beadIds }) => (
          <Panel
            key={id}
            tone={retiredAt === null ? "blue" : "plain"}
            title={<Link href={`/cards/${id}`}>{`Card ${number}: ${content.title}`}</Link>}
          >
            <p className={page.note}>
              {setupLine(content.setup, preferences)} · <LocalTime iso={createdAt} only="day" /> ·{" "}
              {beadIds.length === 1 ? "1 bead" : `${beadIds.length} beads`} run by it
              {retiredAt !== null && " · out of use"}
            </p>
          </Panel>
        ))}
      </main>
    </>
  );
}
