import type { MainPlace, MenuPlace } from "@/components/shell";
import { reach, type Actor, type Deed, type Role } from "@/lib/people";

interface Place extends MenuPlace {
  /** The deed that opens it. */
  readonly deed: Deed;
  /** Only for those whom the deed reaches no further than themselves. */
  readonly own?: true;
  /** How it is shown where it is always in sight. */
  readonly sight?: Pick<MainPlace, "short" | "icon">;
}

/** Every page that the menu leads to. */
const places: readonly Place[] = [
  { href: "/", name: "Beads", deed: "bead.read", sight: { short: "Beads", icon: "beads" } },
  { href: "/plan", name: "Plan a run", deed: "bead.read", sight: { short: "Plan", icon: "plan" } },
  {
    href: "/groups",
    name: "Groups and exercises",
    deed: "course.read",
    sight: { short: "Classes", icon: "course" },
  },
  {
    href: "/feedback",
    name: "Handed in",
    deed: "feedback.write",
    sight: { short: "Handed in", icon: "feedback" },
  },
  { href: "/students", name: "Students", deed: "course.read" },
  {
    href: "/students",
    name: "Your exercises",
    deed: "exercise.hand-in",
    own: true,
    sight: { short: "Exercises", icon: "course" },
  },
  { href: "/jobs", name: "Jobs and inspections", deed: "job.read", sight: { short: "Jobs", icon: "jobs" } },
  { href: "/criteria", name: "Criteria", deed: "bead.read", sight: { short: "Criteria", icon: "criteria" } },
  { href: "/instruments", name: "Instruments", deed: "job.read" },
  { href: "/trends", name: "Trends", deed: "trends.read", sight: { short: "Trends", icon: "trends" } },
  {
    href: "/atlas",
    name: "Atlas of imperfections",
    deed: "bead.read",
    sight: { short: "Atlas", icon: "atlas" },
  },
  { href: "/eye", name: "Training of the eye", deed: "bead.create" },
  { href: "/trials", name: "Trials", deed: "bead.read" },
  { href: "/cards", name: "Procedure cards", deed: "bead.read" },
  { href: "/strip", name: "Scale strip to print", deed: "bead.read" },
  { href: "/exports", name: "Export", deed: "data.export" },
  { href: "/imports", name: "Import", deed: "data.import" },
  { href: "/people", name: "People", deed: "people.read" },
  { href: "/tokens", name: "Tokens", deed: "token.manage" },
  { href: "/log", name: "Log", deed: "log.read" },
  { href: "/keys", name: "Keys", deed: "log.read" },
  { href: "/backups", name: "Backups", deed: "data.keep" },
];

/** What each role comes back to every day, in the order of use: at most four. */
const inSight: Readonly<Record<Role, readonly string[]>> = {
  owner: ["/", "/plan", "/groups", "/trends"],
  instructor: ["/", "/feedback", "/groups", "/trends"],
  inspector: ["/", "/jobs", "/trends", "/criteria"],
  welder: ["/", "/students", "/plan", "/atlas"],
};

export interface MenuPlaces {
  readonly main: readonly MainPlace[];
  readonly more: readonly MenuPlace[];
  readonly mayStart: boolean;
}

/** What this actor is offered: the places of every day, and the others. Nothing that is not theirs to open. */
export function menuFor(actor: Actor): MenuPlaces {
  const open = places.filter(({ deed, own }) => {
    const far = reach(actor, deed);
    return far !== null && (!own || far === "own");
  });
  const daily = inSight[actor.kind === "person" ? actor.role : "owner"];
  const main = daily.flatMap((href) => {
    const found = open.find((place) => place.href === href);
    return found?.sight ? [{ href, name: found.name, ...found.sight }] : [];
  });
  const more = open.filter(({ href }) => !main.some((place) => place.href === href));
  return {
    main,
    more: more.map(({ href, name }) => ({ href, name })),
    mayStart: actor.kind !== "hand-in" && reach(actor, "bead.create") !== null,
  };
}
