"use client";

import Link from "next/link";
import { useEffect, useState, type ReactNode } from "react";
import { buttonClass, page } from "@/components/ui";
import { emptyBeadContent } from "@/lib/assess";
import { deviceStore } from "./device-store";
import { newId } from "./kept";
import type { PageBead } from "./take-up";
import { NEW_BEAD, useBeginAnew } from "./use-own-address";

/** A bead that begins on this device, or one that this device alone can show just now. */
export interface BegunBead extends PageBead {
  readonly id: string;
  readonly number: null;
  readonly previous: null;
}

/**
 * Says which bead this page is for, once the browser knows: the one its address names behind the hash, the one in its
 * path where the page stands in for that bead's own (without network), or a new one.
 */
export function NewBeadHere({ children }: { children: (bead: BegunBead) => ReactNode }) {
  const [bead, setBead] = useState<BegunBead | "not-here" | null>(null);
  useBeginAnew();
  useEffect(() => {
    let isGone = false;
    void beadOf(window.location).then((found) => {
      if (!isGone && found) setBead(found);
    });
    return () => {
      isGone = true;
    };
  }, []);
  if (bead === "not-here") return <NotHere />;
  return bead && children(bead);
}

/** null: this page gives way to the bead's own. */
async function beadOf({ pathname, hash }: Location): Promise<BegunBead | "not-here" | null> {
  const named = pathname === NEW_BEAD ? hash.slice(1) : (pathname.split("/").at(-1) ?? "");
  if (!/^[a-z0-9]{12}$/.test(named)) return begun(newId());
  if (await isKept(named)) return begun(named);
  // It may be stored by now; an id that is in use must never be begun anew.
  const answer = await fetch(`/api/beads/${named}`).catch(() => null);
  if (!answer?.ok) return pathname === NEW_BEAD ? begun(newId()) : "not-here";
  window.location.replace(`/beads/${named}`);
  return null;
}

async function isKept(beadId: string): Promise<boolean> {
  const store = await deviceStore();
  if (!store) return false;
  const [beads, photos] = await Promise.all([store.beadsOf(beadId), store.photosOf(beadId)]);
  return beads.length + photos.length > 0;
}

const begun = (id: string): BegunBead => ({
  ...{ id, number: null, revision: 0, previous: null },
  ...{ content: emptyBeadContent, photos: [] },
});

/** How often Toeline is asked whether it answers again, ms. */
const ASK_AGAIN_MS = 5000;

function NotHere() {
  useEffect(() => {
    const asking = setInterval(() => {
      void beadOf(window.location);
    }, ASK_AGAIN_MS);
    return () => clearInterval(asking);
  }, []);
  return (
    <main className={`${page.page} ${page.narrow}`}>
      <h1>This bead is not on this device</h1>
      <p>
        Without Toeline, a bead opens here once it was opened on this device before. It is safe in Toeline,
        and opens by itself as soon as that answers again.
      </p>
      <p>
        <Link className={buttonClass()} href="/">
          All beads
        </Link>
      </p>
    </main>
  );
}
