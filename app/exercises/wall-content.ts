import { classCounts, wallPage, type WallContent } from "@/lib/course";
import type { Db } from "@/lib/db";
import { listHandIns, type ExerciseRecord } from "@/lib/classroom";
import { getGroup } from "@/lib/roster";
import { shopDay } from "../_door/shop-day";
import { classBeads } from "./class-beads";

/** The page for the wall of one exercise, as it stands now; no name is in it. */
export async function wallContent(db: Db, exercise: ExerciseRecord): Promise<WallContent> {
  const [group, handIns] = await Promise.all([
    getGroup(db, exercise.group.id),
    listHandIns(db, { exerciseId: exercise.id }),
  ]);
  const counts = classCounts((await classBeads(db, handIns, Infinity)).beads);
  const members = group?.members ?? [];
  return wallPage(counts, {
    title: exercise.title,
    group: exercise.group.name,
    aim: exercise.content.aim,
    day: shopDay(new Date().toISOString()),
    handedIn: members.filter(({ id }) => handIns.some(({ personId }) => personId === id)).length,
    members: members.length,
  });
}
