import { randomBytes } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";

/** The key that signs session cookies: made once, kept beside the database, readable by the server's user only. */
export function accountSecret(folder: string): string {
  const file = path.join(folder, "session-key");
  if (!existsSync(file)) {
    try {
      writeFileSync(file, randomBytes(32).toString("base64url"), { mode: 0o600, flag: "wx" });
    } catch (error) {
      // Another process was faster; its key is the one.
      if ((error as NodeJS.ErrnoException).code !== "EEXIST") throw error;
    }
  }
  return readFileSync(file, "utf8");
}
