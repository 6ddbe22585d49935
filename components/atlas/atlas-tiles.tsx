"use client";

import { Search } from "lucide-react";
import Link from "next/link";
import { useState } from "react";
import { smallPicture } from "@/lib/atlas";
import { groupStyles, type MarkGroup } from "@/lib/marks";
import { findImperfections, imperfectionIds, imperfections, type ImperfectionId } from "@/lib/trade";
import styles from "./atlas-tiles.module.css";
import { CloseUp } from "./close-up";

const groups = Object.keys(groupStyles) as readonly MarkGroup[];

/** Every imperfection as a picture, in groups; while something is typed, what was found, the likeliest first. */
export function AtlasTiles() {
  const [typed, setTyped] = useState("");
  const found = findImperfections(typed);
  return (
    <>
      <label className={styles.search}>
        <Search aria-hidden="true" className={styles.icon} />
        <span className="visually-hidden">Search by name, shop word or look</span>
        <input
          type="search"
          value={typed}
          placeholder="Name, shop word or look"
          onChange={({ target }) => setTyped(target.value)}
        />
      </label>
      {typed.trim() === "" ? (
        groups.map((group, i) => (
          <section key={group} className={styles.group}>
            <h2>{groupStyles[group].name}</h2>
            <Tiles ids={imperfectionIds.filter((id) => imperfections[id].group === group)} eager={i === 0} />
          </section>
        ))
      ) : (
        <section className={styles.group} aria-label="Found">
          {found.length > 0 ? <Tiles ids={found} /> : <p>Nothing is called that. Try a shorter word.</p>}
        </section>
      )}
    </>
  );
}

function Tiles({ ids, eager = false }: { ids: readonly ImperfectionId[]; eager?: boolean }) {
  return (
    <ul className={styles.tiles}>
      {ids.map((id) => {
        const { name, alsoCalled, inspectorFirst } = imperfections[id];
        return (
          <li key={id}>
            <Link href={`/atlas/${id}`} className={styles.tile} prefetch={false}>
              <CloseUp picture={{ ...smallPicture(id), alt: "" }} eager={eager} />
              <span className={styles.words}>
                <strong>{name}</strong>
                {alsoCalled.length > 0 && <span className={styles.also}>{alsoCalled.join(", ")}</span>}
                {inspectorFirst && <span className={styles.inspector}>Inspector first</span>}
              </span>
            </Link>
          </li>
        );
      })}
    </ul>
  );
}
