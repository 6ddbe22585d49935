"use client";

import { Menu } from "lucide-react";
import { lazy, Suspense, useEffect, useState } from "react";
import { useMenu } from "./menu-context";

const load = () => import("./more-sheet");
/** What opens over a page places itself by a library as large as a page of its own: it comes once the page stands. */
const MoreSheet = lazy(load);
/** After the page stands, so that it is there also when the network has gone, ms. */
const CALM_MS = 3_000;

/** Places of every day that a bar shows; ways.module.css leaves out those behind them. */
const IN_BAR = 3;

/** All the places that are not in sight, light or dark, and the way out. */
export function MoreMenu({ className, all = false }: { className: string; all?: boolean }) {
  const { main, more, signedIn } = useMenu();
  const [isWanted, setWanted] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => void load().catch(() => undefined), CALM_MS);
    return () => clearTimeout(timer);
  }, []);
  // A bar has room for so many of them: the others stand here, where no rail shows them.
  const beyond = main.slice(IN_BAR).map((place) => ({ ...place, inRail: true }));
  const places = all ? [...main, ...more] : [...beyond, ...more];
  if (places.length === 0 && signedIn === null) return null;
  const button = (
    <>
      <Menu aria-hidden="true" size={24} />
      <span>More</span>
    </>
  );
  const closed = (
    <button
      type="button"
      className={className}
      aria-haspopup="dialog"
      aria-expanded={false}
      onClick={() => setWanted(true)}
    >
      {button}
    </button>
  );
  if (!isWanted) return closed;
  return (
    <Suspense fallback={closed}>
      <MoreSheet {...{ className, places, button }} />
    </Suspense>
  );
}
