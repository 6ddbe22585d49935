import type { Metadata } from "next";
import { ImportPanel } from "@/components/beads";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Import" };

export default async function ImportsPage() {
  await pageFor("data.import");
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Import</h1>
        <p>
          An archive holds beads with their original photos and checksums, or a whole job with its inspections
          and signed records. They keep their ids and, where it is free here, their number; people of the
          other shop stay there.
        </p>
        <ImportPanel />
      </main>
    </>
  );
}
