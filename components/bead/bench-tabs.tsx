"use client";

import { Camera, Gavel, ListTree, Scan, SlidersHorizontal } from "lucide-react";
import type { WorkPhoto } from "./work-state";
import styles from "./workbench.module.css";

const allParts = [
  { id: "photo", label: "Marks", icon: Camera },
  { id: "setup", label: "Set-up", icon: SlidersHorizontal },
  { id: "causes", label: "Causes", icon: ListTree },
  { id: "verdict", label: "Verdict", icon: Gavel },
  { id: "section", label: "Section", icon: Scan },
] as const;
export type PartId = (typeof allParts)[number]["id"];

export interface OfferedParts {
  readonly parts: readonly (typeof allParts)[number][];
  /** The chosen one: all there is on a phone. */
  readonly section: PartId;
  /** The one beside the photo on a wide screen. */
  readonly beside: PartId;
}

/** The parts of a bead with these photos; one that is gone with its photo gives way to the photo. */
export function partsOf(
  photos: readonly Pick<WorkPhoto, "id" | "role">[],
  chosen: PartId,
  shownId: string | null,
): OfferedParts {
  const isCut = photos.some(({ role }) => role === "section");
  const parts = allParts.filter(({ id }) => isCut || id !== "section");
  const section = parts.some(({ id }) => id === chosen) ? chosen : "photo";
  const shown = photos.find(({ id }) => id === shownId) ?? photos[0];
  const first = shown?.role === "section" ? "section" : "setup";
  return { parts, section, beside: section === "photo" ? first : section };
}

export function BenchTabs({
  parts,
  section,
  beside,
  stops,
  ready,
  onChoose,
}: OfferedParts & {
  /** How much of the set-up does not fit together. */
  stops: number;
  /** There is an answer that was not looked at yet. */
  ready: boolean;
  onChoose: (part: PartId) => void;
}) {
  return (
    <nav className={styles.tabs} aria-label="Parts of this bead" data-own-bar="">
      {parts.map(({ id, label, icon: Icon }) => (
        <button
          key={id}
          type="button"
          data-tab={id}
          aria-current={section === id ? "true" : beside === id ? "page" : undefined}
          onClick={() => onChoose(id)}
        >
          <Icon size={22} aria-hidden="true" />
          {label}
          {id === "causes" && ready && (
            <span className={styles.ready}>
              <span className="visually-hidden">an answer is </span>ready
            </span>
          )}
          {id === "setup" && stops > 0 && <span className={styles.count}>{stops}</span>}
        </button>
      ))}
    </nav>
  );
}
