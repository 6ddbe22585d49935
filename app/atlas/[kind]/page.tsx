import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { AtlasView } from "@/components/atlas";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { atlasEntry } from "@/lib/atlas";
import { imperfectionIds, imperfections, processes, type ImperfectionId } from "@/lib/trade";
import { pageFor } from "../../_door/here";

export const dynamic = "force-dynamic";

interface Props {
  params: Promise<{ kind: string }>;
  searchParams: Promise<{ process?: string }>;
}

const kindOf = (kind: string): ImperfectionId | null => imperfectionIds.find((id) => id === kind) ?? null;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const id = kindOf((await params).kind);
  return { title: id === null ? "Atlas of imperfections" : imperfections[id].name };
}

/** One imperfection; `?process=` tells its causes for one process. */
export default async function AtlasKindPage({ params, searchParams }: Props) {
  await pageFor("bead.read");
  const id = kindOf((await params).kind);
  if (id === null) notFound();
  const asked = (await searchParams).process;
  const process = processes.find((one) => one === asked) ?? null;
  return (
    <>
      <Header>
        <Link href="/atlas">Atlas</Link>
      </Header>
      <main className={page.page}>
        <AtlasView entry={atlasEntry(id, process)} process={process} />
      </main>
    </>
  );
}
