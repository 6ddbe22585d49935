-- The same guards and the same derived rows as on SQLite; what is said of them there is said once.

CREATE FUNCTION "refuse"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN RAISE EXCEPTION '%', TG_ARGV[0] USING ERRCODE = 'integrity_constraint_violation'; END $$;

-- The log and the signed records are written once. TRUNCATE asks no trigger of a row, so it is met by itself.
CREATE TRIGGER "LogEntry_no_update" BEFORE UPDATE ON "LogEntry"
FOR EACH ROW EXECUTE FUNCTION "refuse"('the log is append-only');
CREATE TRIGGER "LogEntry_no_delete" BEFORE DELETE ON "LogEntry"
FOR EACH ROW EXECUTE FUNCTION "refuse"('the log is append-only');
CREATE TRIGGER "LogEntry_no_truncate" BEFORE TRUNCATE ON "LogEntry"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('the log is append-only');
CREATE TRIGGER "SignedRevision_no_update" BEFORE UPDATE ON "SignedRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a signed record is not changed');
CREATE TRIGGER "SignedRevision_no_delete" BEFORE DELETE ON "SignedRevision"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a signed record is not deleted');
CREATE TRIGGER "SignedRevision_no_truncate" BEFORE TRUNCATE ON "SignedRevision"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('a signed record is not deleted');
CREATE TRIGGER "Feedback_no_update"
BEFORE UPDATE OF "handInId", "authorId", "revision", "draft", "returned", "digest", "returnedAt" ON "Feedback"
FOR EACH ROW WHEN (OLD."returned" IS NOT NULL) EXECUTE FUNCTION "refuse"('returned feedback is not changed');
CREATE TRIGGER "Feedback_no_delete" BEFORE DELETE ON "Feedback"
FOR EACH ROW WHEN (OLD."returned" IS NOT NULL) EXECUTE FUNCTION "refuse"('returned feedback is not deleted');
CREATE TRIGGER "Feedback_no_truncate" BEFORE TRUNCATE ON "Feedback"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('returned feedback is not deleted');
CREATE TRIGGER "ShopCriteria_no_update" BEFORE UPDATE OF "key", "version", "content" ON "ShopCriteria"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a version of criteria is not changed');
CREATE TRIGGER "ShopCriteria_no_delete" BEFORE DELETE ON "ShopCriteria"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a version of criteria is not deleted');
CREATE TRIGGER "ShopCriteria_no_truncate" BEFORE TRUNCATE ON "ShopCriteria"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('a version of criteria is not deleted');
CREATE TRIGGER "SigningKey_no_update" BEFORE UPDATE ON "SigningKey"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a key is not changed');
CREATE TRIGGER "SigningKey_no_delete" BEFORE DELETE ON "SigningKey"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a key is not deleted');
CREATE TRIGGER "SigningKey_no_truncate" BEFORE TRUNCATE ON "SigningKey"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('a key is not deleted');
CREATE TRIGGER "KeyEvent_no_update" BEFORE UPDATE OF "id", "keyId", "what", "at", "reason" ON "KeyEvent"
FOR EACH ROW EXECUTE FUNCTION "refuse"('what became of a key is not changed');
CREATE TRIGGER "KeyEvent_no_delete" BEFORE DELETE ON "KeyEvent"
FOR EACH ROW EXECUTE FUNCTION "refuse"('what became of a key is not deleted');
CREATE TRIGGER "KeyEvent_no_truncate" BEFORE TRUNCATE ON "KeyEvent"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('what became of a key is not deleted');
CREATE TRIGGER "KeySignature_no_update" BEFORE UPDATE ON "KeySignature"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a signature is not changed');
CREATE TRIGGER "KeySignature_no_delete" BEFORE DELETE ON "KeySignature"
FOR EACH ROW EXECUTE FUNCTION "refuse"('a signature is not deleted');
CREATE TRIGGER "KeySignature_no_truncate" BEFORE TRUNCATE ON "KeySignature"
FOR EACH STATEMENT EXECUTE FUNCTION "refuse"('a signature is not deleted');

-- Words of the beads, for searching, as lib/db takes them out of a text.
CREATE TABLE "BeadWords" ("number" INTEGER PRIMARY KEY, "words" tsvector NOT NULL);
CREATE INDEX "BeadWords_words_idx" ON "BeadWords" USING gin ("words");

-- Whatever writes a bead, knowingly or not, leaves its row either worked out anew or marked as not being so.
CREATE FUNCTION "Bead_facts_insert"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO "BeadFacts" ("number", "beadId", "place", "day", "titleKey", "welder", "welderKey", "welderId", "jobId", "previousId")
  VALUES (
    NEW."number", NEW."id",
    lpad(to_hex(62135596800000 + round(extract(epoch FROM NEW."createdAt") * 1000)::bigint), 13, '0')
      || lpad(to_hex(NEW."number"), 8, '0'),
    to_char(NEW."createdAt", 'YYYY-MM-DD'), lower(NEW."title"), NEW."welder", lower(coalesce(NEW."welder", '')),
    NEW."welderId", NEW."jobId", NEW."previousId"
  );
  RETURN NULL;
END $$;
CREATE TRIGGER "Bead_facts_insert" AFTER INSERT ON "Bead" FOR EACH ROW EXECUTE FUNCTION "Bead_facts_insert"();

CREATE FUNCTION "Bead_facts_update"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = NEW."id" AND "stamp" <> '';
  RETURN NULL;
END $$;
CREATE TRIGGER "Bead_facts_update" AFTER UPDATE OF "title", "createdAt", "revision", "setup", "judgement" ON "Bead"
FOR EACH ROW EXECUTE FUNCTION "Bead_facts_update"();

CREATE FUNCTION "Bead_facts_owner"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '', "welderId" = NEW."welderId", "previousId" = NEW."previousId" WHERE "beadId" = NEW."id";
  RETURN NULL;
END $$;
CREATE TRIGGER "Bead_facts_owner" AFTER UPDATE OF "welderId", "previousId" ON "Bead" FOR EACH ROW
WHEN (OLD."welderId" IS DISTINCT FROM NEW."welderId" OR OLD."previousId" IS DISTINCT FROM NEW."previousId")
EXECUTE FUNCTION "Bead_facts_owner"();

CREATE FUNCTION "Bead_facts_job"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "jobId" = NEW."jobId" WHERE "beadId" = NEW."id";
  RETURN NULL;
END $$;
CREATE TRIGGER "Bead_facts_job" AFTER UPDATE OF "jobId" ON "Bead" FOR EACH ROW EXECUTE FUNCTION "Bead_facts_job"();

-- A name that was taken off a bead or a person is gone from here at once, words included, not when somebody comes by.
CREATE FUNCTION "Bead_facts_welder"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  DELETE FROM "BeadWords" WHERE "number" = NEW."number";
  DELETE FROM "BeadCard" WHERE "number" = NEW."number";
  UPDATE "BeadFacts" SET "stamp" = '', "welderKey" = '',
    "welder" = coalesce((SELECT coalesce("mark", "name") FROM "Person" WHERE "id" = NEW."welderId"), NEW."welder")
  WHERE "beadId" = NEW."id";
  RETURN NULL;
END $$;
CREATE TRIGGER "Bead_facts_welder" AFTER UPDATE OF "welder" ON "Bead" FOR EACH ROW
WHEN (OLD."welder" IS DISTINCT FROM NEW."welder") EXECUTE FUNCTION "Bead_facts_welder"();

CREATE FUNCTION "Person_facts_update"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  DELETE FROM "BeadWords" WHERE "number" IN (SELECT "number" FROM "BeadFacts" WHERE "welderId" = NEW."id");
  DELETE FROM "BeadCard" WHERE "number" IN (SELECT "number" FROM "BeadFacts" WHERE "welderId" = NEW."id");
  UPDATE "BeadFacts" SET "stamp" = '', "welderKey" = '',
    "welder" = coalesce(NEW."mark", NEW."name", (SELECT "welder" FROM "Bead" WHERE "id" = "BeadFacts"."beadId"))
  WHERE "welderId" = NEW."id";
  RETURN NULL;
END $$;
CREATE TRIGGER "Person_facts_update" AFTER UPDATE OF "name", "mark" ON "Person" FOR EACH ROW
WHEN (OLD."name" IS DISTINCT FROM NEW."name" OR OLD."mark" IS DISTINCT FROM NEW."mark")
EXECUTE FUNCTION "Person_facts_update"();

CREATE FUNCTION "Photo_facts_insert"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = NEW."beadId" AND "stamp" <> '';
  RETURN NULL;
END $$;
CREATE TRIGGER "Photo_facts_insert" AFTER INSERT ON "Photo" FOR EACH ROW EXECUTE FUNCTION "Photo_facts_insert"();
CREATE FUNCTION "Photo_facts_update"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" IN (OLD."beadId", NEW."beadId") AND "stamp" <> '';
  RETURN NULL;
END $$;
CREATE TRIGGER "Photo_facts_update" AFTER UPDATE ON "Photo" FOR EACH ROW EXECUTE FUNCTION "Photo_facts_update"();
CREATE FUNCTION "Photo_facts_delete"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = OLD."beadId" AND "stamp" <> '';
  RETURN NULL;
END $$;
CREATE TRIGGER "Photo_facts_delete" AFTER DELETE ON "Photo" FOR EACH ROW EXECUTE FUNCTION "Photo_facts_delete"();

-- Limits that a bead named before they were here.
CREATE FUNCTION "ShopCriteria_facts_insert"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  UPDATE "BeadFacts" SET "stamp" = '' WHERE "criteriaId" = NEW."id";
  RETURN NULL;
END $$;
CREATE TRIGGER "ShopCriteria_facts_insert" AFTER INSERT ON "ShopCriteria"
FOR EACH ROW EXECUTE FUNCTION "ShopCriteria_facts_insert"();

CREATE FUNCTION "BeadFacts_words_delete"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  DELETE FROM "BeadWords" WHERE "number" = OLD."number";
  RETURN NULL;
END $$;
CREATE TRIGGER "BeadFacts_words_delete" AFTER DELETE ON "BeadFacts"
FOR EACH ROW EXECUTE FUNCTION "BeadFacts_words_delete"();

-- What a bead's next one confirmed: the oldest try's answer stands.
CREATE FUNCTION "confirm_cause"(bead text) RETURNS void LANGUAGE sql AS $$
  UPDATE "BeadFacts" SET "confirmedCause" = (
    SELECT n."triedCause" FROM "BeadFacts" n
    WHERE n."previousId" = "BeadFacts"."beadId" AND n."outcome" = 'cured' AND n."triedCause" IS NOT NULL
    ORDER BY n."place" LIMIT 1
  ) WHERE "beadId" = bead
$$;
CREATE FUNCTION "BeadFacts_confirmed_update"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM "confirm_cause"(OLD."previousId");
  IF NEW."previousId" IS DISTINCT FROM OLD."previousId" THEN PERFORM "confirm_cause"(NEW."previousId"); END IF;
  RETURN NULL;
END $$;
CREATE TRIGGER "BeadFacts_confirmed_update" AFTER UPDATE OF "previousId", "triedCause", "outcome", "place" ON "BeadFacts"
FOR EACH ROW WHEN (
  OLD."previousId" IS DISTINCT FROM NEW."previousId" OR OLD."triedCause" IS DISTINCT FROM NEW."triedCause"
  OR OLD."outcome" IS DISTINCT FROM NEW."outcome" OR OLD."place" <> NEW."place"
) EXECUTE FUNCTION "BeadFacts_confirmed_update"();
CREATE FUNCTION "BeadFacts_confirmed_insert"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM "confirm_cause"(NEW."beadId");
  RETURN NULL;
END $$;
CREATE TRIGGER "BeadFacts_confirmed_insert" AFTER INSERT ON "BeadFacts"
FOR EACH ROW EXECUTE FUNCTION "BeadFacts_confirmed_insert"();
CREATE FUNCTION "BeadFacts_confirmed_delete"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  PERFORM "confirm_cause"(OLD."previousId");
  RETURN NULL;
END $$;
CREATE TRIGGER "BeadFacts_confirmed_delete" AFTER DELETE ON "BeadFacts" FOR EACH ROW
WHEN (OLD."previousId" IS NOT NULL) EXECUTE FUNCTION "BeadFacts_confirmed_delete"();
