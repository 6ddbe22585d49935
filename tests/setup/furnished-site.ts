import { makeToken } from "@/lib/account";
import { auth } from "@/lib/account/auth";
import { getBead } from "@/lib/beads";
import { reissueAddress } from "@/lib/classroom";
import { db } from "@/lib/db";
import { scopes } from "@/lib/people";
import { addPerson } from "@/lib/roster";
import type { Site } from "@/lib/sites";
import { openAccountOf } from "./account";
import { fillWholeRecord } from "./whole-record";

const passphrase = "slag-then-bead";

export interface Owner {
  readonly userId: string;
  readonly token: string;
  readonly cookie: string;
  /** As the server set them. */
  readonly cookies: readonly string[];
}

/** An owner with an account, a token that reaches everything, and a browser that has just signed in. */
export async function ownerOf(signInName: string): Promise<Owner> {
  const pen = { db: db(), by: "test" };
  const person = await addPerson(pen, { name: `Owner ${signInName}`, mark: null, role: "owner" });
  if (!person.ok) throw new Error("nobody");
  const userId = await openAccountOf(pen, person.value.id, signInName, passphrase);
  const token = await makeToken(pen.db, userId, { name: "test", scopes, days: 1 });
  if (!token.ok) throw new Error("no token");
  const body = { username: signInName, password: passphrase };
  const { headers } = await auth(pen.db).api.signInUsername({ body, returnHeaders: true });
  const cookies = headers.getSetCookie();
  return { userId, token: token.value, cookie: cookies.map((one) => one.split(";")[0]).join("; "), cookies };
}

/** What stands in the places of an address: everything that one site has of it. */
export async function placesOf({ photos }: Site): Promise<Record<string, string>> {
  const pen = { db: db(), by: "test" };
  const made = await fillWholeRecord({ pen, folder: photos, db: pen.db, url: "" });
  const address = await reissueAddress(pen, made.handInId);
  if (!address.ok) throw new Error("no address");
  const first = async (table: { findFirst(): Promise<unknown> }) =>
    (await table.findFirst()) as { id?: string; key?: string };
  const [trial, card, study, instrument, limits, round] = await Promise.all(
    [db().trial, db().procedureCard, db().gaugeStudy, db().instrument, db().shopCriteria, db().eyeRound].map(
      (table) => first(table as never),
    ),
  );
  return {
    ...made,
    ...address.value,
    photoId: (await getBead(db(), made.beadId))?.photos[0]?.id ?? "",
    ...{ trialId: trial?.id ?? "", cardId: card?.id ?? "", studyId: study?.id ?? "" },
    ...{ instrumentId: instrument?.id ?? "", key: limits?.key ?? "", roundId: round?.id ?? "" },
    ...{ personId: made.studentId, size: "small", file: "none", name: "none" },
  };
}
