import { dear } from "@/app/_door/dear-work";
import { download } from "@/app/_door/download";
import { routeFor } from "@/app/_door/route-for";
import { archiveSentence } from "@/lib/archive";
import { doAside } from "@/lib/aside";
import { linesOf } from "@/lib/base";
import { askedBeads, beadsAsked, exported } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

const statuses = { "archive-empty": 404, "archive-too-many": 413, "archive-photo": 409 } as const;

/**
 * One bead (`?id=`), a job whole (`?job=`), a trial or card with its beads (`?trial=`, `?card=`) or whatever fits the filter,
 * with original photos and checksums. The trials and cards of its beads go along; where nothing is asked for, all of them.
 */
export const GET = routeFor(
  "data.export",
  dear(async (now, request) => {
    const asked = askedBeads(now, request, "data.export");
    if (asked instanceof Response) return asked;
    const input = { ...beadsAsked(asked), seesJobs: now.may("job.read") };
    return exported(
      now,
      () => doAside("archive", input, request.signal),
      ({ head, parts }, ended) => {
        if (head.ok)
          return download(parts, { type: "application/zip", name: head.name, bytes: head.bytes, ended });
        ended();
        const issues = linesOf(head.issues, archiveSentence);
        return Response.json({ issues }, { status: statuses[head.issues[0]?.code ?? "archive-empty"] });
      },
    );
  }),
);
