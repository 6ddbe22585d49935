import type { Db } from "@/lib/db";
import { nobody, ownerHere, readRoles, type Actor, type Scope } from "@/lib/people";
import { addressOf } from "./address";
import { isLoopbackHost } from "./loopback";
import { noteRefusal } from "./note-refusal";
import { sessionOf } from "./sessions";
import { readToken } from "./tokens";

/** Whether this server asks who somebody is. Without accounts it listens on the loopback address only. */
export function accountsRequired(): boolean {
  return process.env["TOELINE_ACCOUNTS"] === "required";
}

/** Requests whose token is good and was used too often just now. */
const waiting = new WeakMap<Headers, number>();

/** Seconds after which a token that was used too often is good again; null: that is not why nobody was found. */
export const waitOfToken = (headers: Headers): number | null => waiting.get(headers) ?? null;

const bearer = /^Bearer (.+)$/i;

/** Who sent these headers: by token, else by session cookie; without accounts the owner at their machine. */
export async function readActor(db: Db, headers: Headers): Promise<Actor> {
  const token = bearer.exec(headers.get("authorization") ?? "")?.[1];
  if (token !== undefined) {
    const read = await readToken(db, token);
    if (read !== null && !("waitSeconds" in read)) return personActor(db, read.userId, read.scopes);
    if (read === null) noteRefusal("token-refused", addressOf(headers));
    else waiting.set(headers, read.waitSeconds);
    return nobody;
  }
  // However the server was started: without accounts only this machine itself is let in.
  if (!accountsRequired()) return isLoopbackHost(headers.get("host") ?? "") ? ownerHere : nobody;
  const session = await sessionOf(db, headers);
  return session ? personActor(db, session.userId, null) : nobody;
}

async function personActor(db: Db, userId: string, scopes: readonly Scope[] | null): Promise<Actor> {
  const person = await db.person.findUnique({ where: { userId } });
  const held = person && readRoles(person);
  return person && held && person.removedAt === null
    ? { kind: "person", personId: person.id, ...held, scopes }
    : nobody;
}
