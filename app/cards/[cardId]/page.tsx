import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { CardView } from "@/components/cards";
import { PrintButton } from "@/components/report";
import { Header, UnitSwitch } from "@/components/shell";
import { Button, buttonClass } from "@/components/ui";
import { chooseUnitsAction } from "@/app/beads/actions";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { cardSheet } from "@/lib/report";
import { getCard } from "@/lib/series";
import { beginByCardAction, retireCardAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Procedure card" };

interface Props {
  params: Promise<{ cardId: string }>;
}

export default async function CardPage({ params }: Props) {
  const now = await pageFor("bead.read");
  const { cardId } = await params;
  const card = await getCard(now.db, cardId);
  if (card === null) notFound();
  const units = await currentUnits();
  const inUse = card.retiredAt === null;
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
        <PrintButton />
      </Header>
      <CardView
        sheet={cardSheet(card.content, card.number, units.preferences)}
        pdf={`/api/cards/${cardId}/pdf`}
        onBegin={inUse && now.may("bead.create") ? beginByCardAction.bind(null, cardId) : null}
      >
        {now.may("data.export") && (
          <a className={buttonClass()} href={`/api/export/archive.zip?card=${cardId}`} download>
            Archive
          </a>
        )}
        {now.may("settings.write") && (
          <form action={retireCardAction.bind(null, cardId, inUse)}>
            <Button type="submit">{inUse ? "Take it out of use" : "Back into use"}</Button>
          </form>
        )}
      </CardView>
    </>
  );
}
