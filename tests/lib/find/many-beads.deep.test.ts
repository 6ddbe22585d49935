import { expect, it } from "vitest";
import { useFreshDb } from "../../setup/fresh-db";
import { expectAnswers, grow } from "./many-beads";

const fresh = useFreshDb();

it("10 000 beads: home page, filters, trends and exports answer", async () => {
  await grow(fresh().pen, 10_000);
  await expectAnswers(fresh().db, 10_000);
  expect(await fresh().db.logEntry.count()).toBe(10_000);
}, 900_000);
