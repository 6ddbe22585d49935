import { revalidatePath } from "next/cache";
import { here } from "@/app/_door/here";
import { refuseForeign } from "@/app/_door/same-site";
import { dataDir } from "@/lib/db";
import { photoIssueStatus, photoSentence, receivePhoto } from "@/lib/photo";
import {
  handInPhoto,
  HandInFormSchema,
  recordSentence,
  takingExercise,
  type RecordIssue,
} from "@/lib/record";
import { signedInStudent } from "@/app/hand-in/signed-in";

export const dynamic = "force-dynamic";

const statuses: Partial<Record<RecordIssue["code"], number>> = {
  "hand-in-code-unknown": 404,
  "exercise-closed": 409,
  "hand-in-needs-account": 401,
  "hand-in-photo-twice": 409,
  "store-full": 507,
  "store-unusable": 503,
};

function refused(issues: readonly RecordIssue[]): Response {
  const status = statuses[issues[0]?.code ?? "store-unusable"] ?? 422;
  return Response.json(
    { issues: issues.map((one) => ({ code: one.code, message: recordSentence(one) })) },
    { status },
  );
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
  const { code } = await context.params;
  const now = await here();
  const who = signedInStudent(now);
  const taking = await takingExercise(now.db, code, who.by !== null);
  if (!taking.ok) return refused(taking.issues);
  const form = HandInFormSchema.safeParse(readForm(request.headers.get("hand-in-form")));
  if (!form.success)
    return refused([
      { code: "hand-in-not-understood", path: form.error.issues[0]?.path.map(String) ?? [], data: {} },
    ]);
  const { personId, givenName } = form.data;
  if (who.signedInAs === null && personId === null && givenName === null)
    return refused([{ code: "hand-in-nameless", path: [], data: {} }]);
  const declared = Number(request.headers.get("content-length"));
  const stored = await receivePhoto(dataDir(), request.body ?? emptyBody(), {
    declaredBytes: Number.isFinite(declared) && declared > 0 ? declared : null,
  });
  if (!stored.ok) {
    const issues = stored.issues.map((one) => ({ code: one.code, message: photoSentence(one) }));
    return Response.json({ issues }, { status: photoIssueStatus(stored.issues[0]?.code ?? "photo-damaged") });
  }
  const { sha256, format, bytes, widthPx, heightPx } = stored.value;
  const made = await handInPhoto(now.db, code, form.data, { sha256, format, bytes, widthPx, heightPx }, who);
  if (!made.ok) return refused(made.issues);
  revalidatePath("/");
  return Response.json({ address: `/hand-in/${made.value.code}/${made.value.secret}` }, { status: 201 });
}

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
