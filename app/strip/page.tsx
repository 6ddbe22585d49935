import type { Metadata } from "next";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel } from "@/components/ui";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Scale strip" };

export default async function StripPage() {
  await pageFor("bead.read");
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Scale strip to print</h1>
        <Panel title="Print and check" tone="straw">
          <ol>
            <li>Print at 100 %, without fitting to the page, on plain matt paper.</li>
            <li>
              Hold a steel rule against both bars: 100 mm and 4 in. If one is off by more than 0.3 mm the
              printer scales; do not use that print.
            </li>
            <li>Cut along the dashed line.</li>
          </ol>
          <div className={form.row}>
            <a className={buttonClass("main", "large")} href="/strip/strip.pdf?paper=a4">
              A4
            </a>
            <a className={buttonClass("plain", "large")} href="/strip/strip.pdf?paper=letter">
              Letter
            </a>
          </div>
        </Panel>
        <Panel title="Use" tone="blue">
          <p>
            Lay it flat on the plate beside the weld, on the surface the marks lie on, and photograph it
            whole, neither bent nor covered. The scale holds in that surface: what stands above it measures
            too large.
          </p>
          <p>Paper burns. Wait until the metal is cool to the touch.</p>
        </Panel>
      </main>
    </>
  );
}
