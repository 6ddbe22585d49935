import type { Metadata } from "next";
import { ArchiveCheck } from "@/components/log";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Verify an archive" };

/** For anybody, signed in or not: it shows nothing but what the file itself holds. */
export default function CheckPage() {
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Verify an archive</h1>
        <p>
          Choose an archive with signed records: this page says which key signed what, and when. The file is
          looked at and forgotten; nothing of it is kept, and nobody asks who you are.
        </p>
        <ArchiveCheck />
        <p className={page.note}>
          A signature that fits shows that the text is the one that was signed by that key. It does not show
          whose key it is: compare the fingerprint with its holder, over another way than the file came by.
        </p>
      </main>
    </>
  );
}
