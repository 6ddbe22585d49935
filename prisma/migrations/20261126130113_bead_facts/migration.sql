-- CreateTable
CREATE TABLE "BeadFacts" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "beadId" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "day" TEXT NOT NULL,
    "stamp" TEXT NOT NULL DEFAULT '',
    "weighedBy" TEXT NOT NULL DEFAULT '',
    "titleKey" TEXT NOT NULL,
    "welder" TEXT,
    "welderKey" TEXT NOT NULL,
    "welderId" TEXT,
    "jobId" TEXT,
    "previousId" TEXT,
    "process" TEXT,
    "transfer" TEXT,
    "electrodeClass" TEXT,
    "polarity" TEXT,
    "gas" TEXT,
    "joint" TEXT,
    "position" TEXT,
    "progression" TEXT,
    "baseMetal" TEXT,
    "surface" TEXT,
    "inputPower" TEXT,
    "thicknessMm" REAL,
    "criteriaId" TEXT,
    "verdict" TEXT,
    "triedCause" TEXT,
    "outcome" TEXT,
    "confirmedCause" TEXT,
    "firstCause" TEXT,
    "photos" INTEGER NOT NULL DEFAULT 0,
    "marks" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "BeadFacts_beadId_fkey" FOREIGN KEY ("beadId") REFERENCES "Bead" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BeadFound" (
    "number" INTEGER NOT NULL,
    "imperfection" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "rank" INTEGER NOT NULL,

    PRIMARY KEY ("number", "imperfection"),
    CONSTRAINT "BeadFound_number_fkey" FOREIGN KEY ("number") REFERENCES "BeadFacts" ("number") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BeadCard" (
    "number" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "card" JSONB NOT NULL,
    CONSTRAINT "BeadCard_number_fkey" FOREIGN KEY ("number") REFERENCES "BeadFacts" ("number") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "BeadFacts_beadId_key" ON "BeadFacts"("beadId");

-- CreateIndex
CREATE UNIQUE INDEX "BeadFacts_place_key" ON "BeadFacts"("place");

-- CreateIndex
CREATE INDEX "BeadFacts_stamp_idx" ON "BeadFacts"("stamp");

-- CreateIndex
CREATE INDEX "BeadFacts_weighedBy_idx" ON "BeadFacts"("weighedBy");

-- CreateIndex
CREATE INDEX "BeadFacts_titleKey_place_idx" ON "BeadFacts"("titleKey", "place" DESC);

-- CreateIndex
CREATE INDEX "BeadFacts_welderKey_place_idx" ON "BeadFacts"("welderKey", "place" DESC);

-- CreateIndex
CREATE INDEX "BeadFacts_welder_place_idx" ON "BeadFacts"("welder", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_welderId_place_idx" ON "BeadFacts"("welderId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_jobId_place_idx" ON "BeadFacts"("jobId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_previousId_place_idx" ON "BeadFacts"("previousId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_process_place_idx" ON "BeadFacts"("process", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_transfer_place_idx" ON "BeadFacts"("transfer", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_electrodeClass_place_idx" ON "BeadFacts"("electrodeClass", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_polarity_place_idx" ON "BeadFacts"("polarity", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_gas_place_idx" ON "BeadFacts"("gas", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_joint_place_idx" ON "BeadFacts"("joint", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_position_place_idx" ON "BeadFacts"("position", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_progression_place_idx" ON "BeadFacts"("progression", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_baseMetal_place_idx" ON "BeadFacts"("baseMetal", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_surface_place_idx" ON "BeadFacts"("surface", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_inputPower_place_idx" ON "BeadFacts"("inputPower", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_criteriaId_place_idx" ON "BeadFacts"("criteriaId", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_verdict_place_idx" ON "BeadFacts"("verdict", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_outcome_place_idx" ON "BeadFacts"("outcome", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_confirmedCause_place_idx" ON "BeadFacts"("confirmedCause", "place");

-- CreateIndex
CREATE INDEX "BeadFacts_outcome_triedCause_previousId_stamp_idx" ON "BeadFacts"("outcome", "triedCause", "previousId", "stamp");

-- CreateIndex
CREATE INDEX "BeadFound_imperfection_number_idx" ON "BeadFound"("imperfection", "number");

-- Words of the beads, for searching; the row's own id is the number of the bead. It keeps no text, only what finds it.
CREATE VIRTUAL TABLE "BeadWords" USING fts5("words", content='', contentless_delete=1, tokenize='unicode61 remove_diacritics 2');

-- Whatever writes a bead, knowingly or not, leaves its row either worked out anew or marked as not being so.
CREATE TRIGGER "Bead_facts_insert" AFTER INSERT ON "Bead"
BEGIN
  INSERT INTO "BeadFacts" ("number", "beadId", "place", "day", "titleKey", "welder", "welderKey", "welderId", "jobId", "previousId")
  VALUES (
    NEW."number", NEW."id",
    printf('%013x%08x', 62135596800000 + CAST(round(unixepoch(NEW."createdAt", 'subsec') * 1000) AS INTEGER), NEW."number"),
    substr(NEW."createdAt", 1, 10), lower(NEW."title"), NEW."welder", lower(coalesce(NEW."welder", '')),
    NEW."welderId", NEW."jobId", NEW."previousId"
  );
END;
CREATE TRIGGER "Bead_facts_update" AFTER UPDATE OF "title", "createdAt", "revision", "setup", "judgement" ON "Bead"
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = NEW."id" AND "stamp" <> '';
END;
CREATE TRIGGER "Bead_facts_owner" AFTER UPDATE OF "welderId", "previousId" ON "Bead"
WHEN OLD."welderId" IS NOT NEW."welderId" OR OLD."previousId" IS NOT NEW."previousId"
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '', "welderId" = NEW."welderId", "previousId" = NEW."previousId" WHERE "beadId" = NEW."id";
END;
CREATE TRIGGER "Bead_facts_job" AFTER UPDATE OF "jobId" ON "Bead"
BEGIN
  UPDATE "BeadFacts" SET "jobId" = NEW."jobId" WHERE "beadId" = NEW."id";
END;
-- A name that was taken off a bead or a person is gone from here at once, words included, not when somebody comes by.
CREATE TRIGGER "Bead_facts_welder" AFTER UPDATE OF "welder" ON "Bead" WHEN OLD."welder" IS NOT NEW."welder"
BEGIN
  DELETE FROM "BeadWords" WHERE rowid = NEW."number";
  DELETE FROM "BeadCard" WHERE "number" = NEW."number";
  UPDATE "BeadFacts" SET "stamp" = '', "welderKey" = '',
    "welder" = coalesce((SELECT coalesce("mark", "name") FROM "Person" WHERE "id" = NEW."welderId"), NEW."welder")
  WHERE "beadId" = NEW."id";
END;
CREATE TRIGGER "Person_facts_update" AFTER UPDATE OF "name", "mark" ON "Person" WHEN OLD."name" IS NOT NEW."name" OR OLD."mark" IS NOT NEW."mark"
BEGIN
  DELETE FROM "BeadWords" WHERE rowid IN (SELECT "number" FROM "BeadFacts" WHERE "welderId" = NEW."id");
  DELETE FROM "BeadCard" WHERE "number" IN (SELECT "number" FROM "BeadFacts" WHERE "welderId" = NEW."id");
  UPDATE "BeadFacts" SET "stamp" = '', "welderKey" = '',
    "welder" = coalesce(NEW."mark", NEW."name", (SELECT "welder" FROM "Bead" WHERE "id" = "BeadFacts"."beadId"))
  WHERE "welderId" = NEW."id";
END;
CREATE TRIGGER "Photo_facts_insert" AFTER INSERT ON "Photo"
BEGIN UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = NEW."beadId" AND "stamp" <> ''; END;
CREATE TRIGGER "Photo_facts_update" AFTER UPDATE ON "Photo"
BEGIN UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" IN (OLD."beadId", NEW."beadId") AND "stamp" <> ''; END;
CREATE TRIGGER "Photo_facts_delete" AFTER DELETE ON "Photo"
BEGIN UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = OLD."beadId" AND "stamp" <> ''; END;
-- Limits that a bead named before they were here.
CREATE TRIGGER "ShopCriteria_facts_insert" AFTER INSERT ON "ShopCriteria"
BEGIN UPDATE "BeadFacts" SET "stamp" = '' WHERE "criteriaId" = NEW."id"; END;
CREATE TRIGGER "BeadFacts_words_delete" AFTER DELETE ON "BeadFacts"
BEGIN DELETE FROM "BeadWords" WHERE rowid = OLD."number"; END;

-- What a bead's next one confirmed: the oldest try's answer stands.
CREATE TRIGGER "BeadFacts_confirmed_update" AFTER UPDATE OF "previousId", "triedCause", "outcome", "place" ON "BeadFacts"
WHEN OLD."previousId" IS NOT NEW."previousId" OR OLD."triedCause" IS NOT NEW."triedCause" OR OLD."outcome" IS NOT NEW."outcome" OR OLD."place" <> NEW."place"
BEGIN
  UPDATE "BeadFacts" SET "confirmedCause" = (
    SELECT n."triedCause" FROM "BeadFacts" n
    WHERE n."previousId" = "BeadFacts"."beadId" AND n."outcome" = 'cured' AND n."triedCause" IS NOT NULL
    ORDER BY n."place" LIMIT 1
  ) WHERE "beadId" IN (OLD."previousId", NEW."previousId");
END;
CREATE TRIGGER "BeadFacts_confirmed_insert" AFTER INSERT ON "BeadFacts"
BEGIN
  UPDATE "BeadFacts" SET "confirmedCause" = (
    SELECT n."triedCause" FROM "BeadFacts" n
    WHERE n."previousId" = NEW."beadId" AND n."outcome" = 'cured' AND n."triedCause" IS NOT NULL
    ORDER BY n."place" LIMIT 1
  ) WHERE "number" = NEW."number";
END;
CREATE TRIGGER "BeadFacts_confirmed_delete" AFTER DELETE ON "BeadFacts" WHEN OLD."previousId" IS NOT NULL
BEGIN
  UPDATE "BeadFacts" SET "confirmedCause" = (
    SELECT n."triedCause" FROM "BeadFacts" n
    WHERE n."previousId" = "BeadFacts"."beadId" AND n."outcome" = 'cured' AND n."triedCause" IS NOT NULL
    ORDER BY n."place" LIMIT 1
  ) WHERE "beadId" = OLD."previousId";
END;

-- Beads from before: a row each, to be worked out.
INSERT INTO "BeadFacts" ("number", "beadId", "place", "day", "titleKey", "welder", "welderKey", "welderId", "jobId", "previousId")
SELECT b."number", b."id",
  printf('%013x%08x', 62135596800000 + CAST(round(unixepoch(b."createdAt", 'subsec') * 1000) AS INTEGER), b."number"),
  substr(b."createdAt", 1, 10), lower(b."title"), coalesce(p."mark", p."name", b."welder"), lower(coalesce(p."mark", p."name", b."welder", '')),
  b."welderId", b."jobId", b."previousId"
FROM "Bead" b LEFT JOIN "Person" p ON p."id" = b."welderId";
