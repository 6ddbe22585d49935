import { pathRouteFor } from "@/app/_door/route-for";
import { dear } from "@/app/_door/dear-work";
import { pdfAnswer } from "@/app/_door/pdf-answer";
import { palette } from "@/components/picture";
import { canonicalJson } from "@/lib/base";
import { drawPaper } from "@/lib/aside";
import { getExercise } from "@/lib/classroom";
import { sha256Text } from "@/lib/store";
import { wallContent } from "../../wall-content";

export const dynamic = "force-dynamic";

export const GET = pathRouteFor<{ exerciseId: string }>(
  "course.read",
  dear(async (now, request, { exerciseId }) => {
    const exercise = await getExercise(now.db, exerciseId);
    if (!exercise) return new Response("No such exercise.", { status: 404 });
    const content = await wallContent(now.db, exercise);
    const host = request.headers.get("host") ?? "localhost";
    const bytes = await drawPaper(
      "class",
      {
        content,
        digest: sha256Text(canonicalJson(content)),
        recordUrl: `http://${host}/exercises/${exerciseId}`,
        ink: palette.text,
        createdAt: new Date().toISOString(),
      },
      request.signal,
    );
    return pdfAnswer(bytes, `toeline-class-${exercise.code}.pdf`);
  }),
);
