import { revalidatePath } from "next/cache";
import { here } from "@/app/_door/here";
import { refuseForeign } from "@/app/_door/same-site";
import {
  addressOf,
  makeThrottle,
  photosByCodeLimit,
  photosByHandLimit,
  takeAll,
  tooMany,
} from "@/lib/account";
import { linesOf } from "@/lib/base";
import { photoPlace } from "@/lib/db";
import { photoIssueStatus, photoSentence } from "@/lib/photo";
import { attachPhoto } from "@/lib/beads";
import { handInPhoto, HandInFormSchema } from "@/lib/classroom";
import { recordSentence, type RecordIssue } from "@/lib/store";
import { codeOf, exerciseAsked } from "@/app/hand-in/code-tries";
import { signedInStudent } from "@/app/hand-in/signed-in";

export const dynamic = "force-dynamic";

const photosByCode = makeThrottle("photos-code", photosByCodeLimit);
const photosByHand = makeThrottle("photos-hand", photosByHandLimit);

const statuses: Partial<Record<RecordIssue["code"], number>> = {
  "hand-in-code-unknown": 404,
  "hand-in-code-old": 410,
  "exercise-closed": 409,
  "hand-in-needs-account": 401,
  "hand-in-other-group": 403,
  "hand-in-photo-twice": 409,
  "store-full": 507,
  "store-unusable": 503,
};

function later(code: "too-many-photos" | "too-many-codes", seconds: number): Response {
  const issues = [tooMany(code, seconds)];
  return Response.json({ issues }, { status: 429, headers: { "retry-after": String(seconds) } });
}

function refused(issues: readonly RecordIssue[]): Response {
  const status = statuses[issues[0]?.code ?? "store-unusable"] ?? 422;
  return Response.json({ issues: linesOf(issues, recordSentence) }, { status });
}

/**
 * Hands in one photo: its bytes are the body, what goes with it stands in the header `hand-in-form` as
 * percent-encoded JSON, so that the photo streams to disk as it comes. Everything that can be refused without the
 * photo is refused before it is taken in.
 */
export async function POST(
  request: Request,
  context: { params: Promise<{ code: string }> },
): Promise<Response> {
  const foreign = refuseForeign(request);
  if (foreign) return foreign;
  const code = codeOf((await context.params).code);
  const now = await here();
  const who = signedInStudent(now);
  const taking = await exerciseAsked(now.db, request.headers, code, who.by !== null);
  if ("seconds" in taking) return later("too-many-codes", taking.seconds);
  if (!taking.ok) return refused(taking.issues);
  const form = HandInFormSchema.safeParse(readForm(request.headers.get("hand-in-form")));
  if (!form.success)
    return refused([
      { code: "hand-in-not-understood", path: form.error.issues[0]?.path.map(String) ?? [], data: {} },
    ]);
  const { personId, givenName } = form.data;
  if (who.signedInAs === null && personId === null && givenName === null)
    return refused([{ code: "hand-in-nameless", path: [], data: {} }]);
  const hand = `${taking.value.id}:${who.signedInAs ?? personId ?? givenName?.toLowerCase() ?? ""}`;
  const seconds = await takeAll(now.db, photoCounters(taking.value.id, hand), Date.now());
  if (seconds > 0) return later("too-many-photos", seconds);
  const arriving = {
    dataDir: photoPlace(),
    sender: who.by ?? addressOf(request.headers),
    source: request.body ?? emptyBody(),
    declaredBytes: declaredBytes(request),
  };
  const made = await attachPhoto(now.db, arriving, (photo) =>
    handInPhoto(now.db, code, form.data, photo, who),
  );
  if (!made.ok && made.from === "photo") {
    const issues = linesOf(made.issues, photoSentence);
    return Response.json({ issues }, { status: photoIssueStatus(made.issues[0]?.code ?? "photo-damaged") });
  }
  if (!made.ok) return refused(made.issues);
  revalidatePath("/");
  return Response.json({ address: `/hand-in/${made.value.code}/${made.value.secret}` }, { status: 201 });
}

function declaredBytes(request: Request): number | null {
  const declared = Number(request.headers.get("content-length"));
  return Number.isFinite(declared) && declared > 0 ? declared : null;
}

/** Counted before the bytes are taken in: that is what costs. */
const photoCounters = (exercise: string, hand: string) =>
  [
    [photosByCode, exercise],
    [photosByHand, hand],
  ] as const;

function readForm(text: string | null): unknown {
  try {
    return JSON.parse(decodeURIComponent(text ?? ""));
  } catch {
    return null;
  }
}

function emptyBody(): ReadableStream<Uint8Array> {
  return new ReadableStream({ start: (controller) => controller.close() });
}
