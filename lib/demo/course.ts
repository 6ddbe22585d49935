import { emptyExercise, emptyFeedback, type FeedbackContent, type LayerItem } from "@/lib/course";
import type { Drawing } from "@/lib/marks";
import { getBead } from "@/lib/beads";
import {
  createExercise,
  getExercise,
  handInBead,
  replyToFeedback,
  returnFeedback,
  saveFeedback,
} from "@/lib/classroom";
import { addStudent, createGroup } from "@/lib/roster";
import type { Pen } from "@/lib/store";
import { daysAgo, made } from "./made";
import { demoGroup, demoPeople, type DemoPerson } from "./people";

/** Ids of the students by name, and of their group. */
export interface DemoClass {
  readonly groupId: string;
  readonly personIds: ReadonlyMap<DemoPerson, string>;
}

export async function addDemoClass(pen: Pen): Promise<DemoClass> {
  const groupId = made(await createGroup(pen, demoGroup)).id;
  const personIds = new Map<DemoPerson, string>();
  for (const person of demoPeople)
    personIds.set(person.name, made(await addStudent(pen, groupId, person)).id);
  return { groupId, personIds };
}

const exercise = {
  title: "T-joint, 6 mm leg",
  content: {
    ...emptyExercise,
    aim: "Horizontal, one run, 6 mm on both legs. Toes without undercut or roll-over. Chip and brush before the photo.",
    joint: "tee" as const,
    position: "horizontal" as const,
    criteriaId: "iso-5817-c",
  },
  open: true,
  withoutAccount: true,
  dueAt: daysAgo(-7).toISOString(),
};

/** Two beads handed in: one answered, replied to and closed, one still on the instructor's desk. */
export async function addDemoExercise(
  pen: Pen,
  groupId: string,
  { answered, waiting }: { readonly answered: string; readonly waiting: string },
): Promise<void> {
  const { id } = made(await createExercise(pen, groupId, exercise));
  const code = (await getExercise(pen.db, id))!.code;
  const first = made(await handInBead(pen, code, answered, "Legs are even now, but the upper toe."));
  made(await handInBead(pen, code, waiting, "Same machine as last week, somebody had other wire on."));
  await answer(pen, first.handInId, answered);
}

async function answer(pen: Pen, handInId: string, beadId: string): Promise<void> {
  const bead = (await getBead(pen.db, beadId))!;
  const [photo] = bead.content.photos;
  if (!photo) throw new Error("a bead handed in has a photo");
  const feedback: FeedbackContent = {
    ...emptyFeedback,
    layers: [{ photoId: photo.id, items: layerOver(photo.drawing) }],
    marks: { profile: 3, toes: 1, even: 3, ends: 4, clean: 2 },
    quick: ["Read the undercut with the gauge before you call it deep or shallow."],
    remark: "Volts first, one step down, all else as it was. Keep the gun where it is: both legs are fine.",
  };
  const { revision } = made(await saveFeedback(pen, handInId, 0, feedback, null));
  made(await returnFeedback(pen, handInId, revision, null, daysAgo(0)));
  const student: Pen = { ...pen, by: `hand-in:${handInId}` };
  made(
    await replyToFeedback(
      student,
      handInId,
      "Volts were still up from the bead before. Next try tomorrow.",
      daysAgo(0),
    ),
  );
}

/** An arrow to the first mark and words over the weld's start, drawn as a hand would, in photo pixels. */
function layerOver({ marks, weldLine }: Drawing): LayerItem[] {
  const shape = marks[0]?.shape;
  const points = shape === undefined ? [] : shape.kind === "point" ? [shape.at] : shape.points;
  const to = points[Math.floor(points.length / 2)];
  const start = weldLine?.[0];
  return [
    ...(to
      ? [
          {
            id: "arrow",
            kind: "arrow" as const,
            from: { x: to.x + 320, y: Math.max(120, to.y - 420) },
            to: { x: to.x, y: to.y },
            words: "This edge all along",
          },
        ]
      : []),
    ...(start
      ? [{ id: "start", kind: "text" as const, at: { x: start.x, y: start.y + 330 }, words: "Good start" }]
      : []),
  ];
}
