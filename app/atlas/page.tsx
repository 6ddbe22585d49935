import type { Metadata } from "next";
import { AtlasTiles } from "@/components/atlas";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Atlas of imperfections" };

export default async function AtlasPage() {
  await pageFor("bead.read");
  return (
    <>
      <Header />
      <main className={page.wide}>
        <h1>Atlas of imperfections</h1>
        <p>What can be seen on a chipped bead: how to tell it, where it comes from, what the codes allow.</p>
        <AtlasTiles />
        <p className={page.note}>All pictures are rendered, not photographed.</p>
      </main>
    </>
  );
}
