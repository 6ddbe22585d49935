import type { Metadata } from "next";
import Link from "next/link";
import { pageFor } from "@/app/_door/here";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel, SaidForm } from "@/components/ui";
import { demoShop, demoToClear } from "@/lib/demo";
import { clearDemoAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Clear the demo shop" };

export default async function ClearDemoPage() {
  const { db } = await pageFor("people.manage");
  const plan = await demoToClear(db);
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Clear the demo shop</h1>
        {plan === null ? (
          <p>Nothing of the demo is left that could be cleared.</p>
        ) : (
          <Panel title="What goes, and what stays" tone="straw">
            <p>
              {demoShop} is invented. Clearing it takes its {plan.beadsGone} beads with their photos, its
              class with exercise and feedback, its job, its limits and its set-ups. Nothing that you made
              goes.
            </p>
            <p>
              {plan.staying === 0
                ? "Nobody has worked on any of it, so nothing of it stays."
                : `${plan.staying} of its entries stay: somebody worked on them since, or a signed record or something of yours needs them. What is signed cannot be cleared.`}
            </p>
            <p>
              It cannot be brought back. The log goes on from where it is and says of each entry that it was
              cleared, so the records still verify.
            </p>
            <SaidForm action={clearDemoAction} submit="Clear the demo and begin empty" tone="danger" />
          </Panel>
        )}
        <p>
          <Link className={buttonClass()} href="/">
            Keep it
          </Link>
        </p>
      </main>
    </>
  );
}
