import { Plus } from "lucide-react";
import { BeadCard } from "@/components/beads/bead-card";
import { UnitSwitch } from "@/components/shell/unit-switch";
import { Header } from "@/components/shell/header";
import { buttonClass } from "@/components/ui";
import { defaultAssessContext } from "@/lib/assess";
import { listBeads, shopCounts } from "@/lib/record";
import { summariseBead } from "@/lib/report";
import { chooseUnitsAction, startBead } from "./beads/actions";
import { currentUnits } from "./_door/current-units";
import { ownOnly, pageFor } from "./_door/here";
import styles from "./page.module.css";

export const dynamic = "force-dynamic";

export default async function BeadsPage() {
  const now = await pageFor("bead.read");
  const [beads, units, counts] = await Promise.all([
    listBeads(now.db, ownOnly(now.actor)),
    currentUnits(),
    shopCounts(now.db),
  ]);
  const context = { ...defaultAssessContext, shopCounts: counts };
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={styles.main}>
        <div className={styles.top}>
          <div>
            <h1>Beads</h1>
            <p>{beads.length === 0 ? "Nothing recorded yet." : `${beads.length} recorded, newest first.`}</p>
          </div>
          <form action={startBead}>
            <button className={buttonClass("main", "large")} type="submit">
              <Plus aria-hidden="true" size={26} /> New bead
            </button>
          </form>
        </div>
        {beads.length === 0 ? (
          <p className={styles.empty}>Run a bead, chip the slag, and press New bead to photograph it.</p>
        ) : (
          <ul className={styles.list}>
            {beads.map((bead) => (
              <BeadCard key={bead.id} bead={summariseBead(bead, units.preferences, context)} />
            ))}
          </ul>
        )}
      </main>
    </>
  );
}
