import { reach, type Actor, type Deed } from "@/lib/people";

/** Every page of the menu with the deed that opens it. */
const places: readonly { href: string; name: string; deed: Deed }[] = [
  { href: "/", name: "Beads", deed: "bead.read" },
  { href: "/plan", name: "Plan a run", deed: "bead.read" },
  { href: "/groups", name: "Groups and exercises", deed: "course.read" },
  { href: "/students", name: "Students", deed: "course.read" },
  { href: "/jobs", name: "Jobs and inspections", deed: "job.read" },
  { href: "/criteria", name: "Criteria", deed: "bead.read" },
  { href: "/instruments", name: "Instruments", deed: "job.read" },
  { href: "/trends", name: "Trends", deed: "trends.read" },
  { href: "/strip", name: "Scale strip to print", deed: "bead.read" },
  { href: "/exports", name: "Export", deed: "data.export" },
  { href: "/imports", name: "Import", deed: "data.import" },
  { href: "/people", name: "People", deed: "people.read" },
  { href: "/tokens", name: "Tokens", deed: "token.manage" },
  { href: "/log", name: "Log", deed: "log.read" },
];

/** What this actor's menu offers. */
export function menuFor(actor: Actor): readonly { href: string; name: string }[] {
  return places.filter(({ deed }) => reach(actor, deed) !== null).map(({ href, name }) => ({ href, name }));
}
