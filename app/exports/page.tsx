import { Download } from "lucide-react";
import type { Metadata } from "next";
import Link from "next/link";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel, type PanelTone } from "@/components/ui";
import { countBeads } from "@/lib/find";
import { reachedBeads } from "../api/export/_asked/asked-beads";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Export" };

const files: readonly { href: string; title: string; tone: PanelTone; text: string }[] = [
  {
    href: "/api/export/archive.zip",
    title: "Archive with photos",
    tone: "blue",
    text: "Everything about the beads with their original photos and checksums, as one ZIP. It imports again, identically, on another machine. Original photos carry whatever the camera wrote into them, place and time included.",
  },
  {
    href: "/api/export/beads.csv",
    title: "Beads as a table",
    tone: "straw",
    text: "CSV for a spreadsheet: one row per bead with its job and weld, set-up, readings, verdict and likeliest cause. Metric; text that would run as a formula is guarded by an apostrophe.",
  },
  {
    href: "/api/export/marks.csv",
    title: "Marks as a table",
    tone: "bronze",
    text: "CSV for a spreadsheet: one row per mark with place, size and its uncertainty.",
  },
  {
    href: "/api/export/beads.json",
    title: "Beads for programs",
    tone: "purple",
    text: "JSON by a published schema, without the photos’ bytes.",
  },
];

export default async function ExportsPage() {
  const now = await pageFor("data.export");
  const { all } = await countBeads(now.db, {}, reachedBeads(now.actor, "data.export"));
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Export</h1>
        <p>
          {all === 1 ? "These take the one bead you may see." : `These take all ${all} beads you may see.`}{" "}
          For some of them, <Link href="/">find or choose them in the list</Link>; the marks of one bead as
          W3C Web Annotations lie at /api/beads/ID/annotations.json.
        </p>
        <div className={page.columns}>
          {files.map(({ href, title, tone, text }) => (
            <Panel key={href} title={title} tone={tone}>
              <p>{text}</p>
              <div className={form.row}>
                <a className={buttonClass("main")} href={href} download>
                  <Download size={20} aria-hidden="true" /> {href.split("/").at(-1)}
                </a>
                {href.endsWith("beads.json") && (
                  <a className={buttonClass()} href="/api/export/beads.schema.json">
                    Its schema
                  </a>
                )}
              </div>
            </Panel>
          ))}
        </div>
        <Panel title="For machines">
          <p>
            The same over HTTP, with a token where accounts are kept:{" "}
            <a href="/api/openapi.json">the OpenAPI document</a> lists every address, what it takes and which
            scope it asks for.
          </p>
        </Panel>
      </main>
    </>
  );
}
