-- What was returned to a student stays whole: beside the frozen text also the draft, author and revision it came
-- from. The student's reply stands beside it and may be written, or taken away with the person.
DROP TRIGGER "Feedback_returned_is_frozen";
CREATE TRIGGER "Feedback_no_update" BEFORE UPDATE OF "handInId", "authorId", "revision", "draft", "returned", "digest", "returnedAt" ON "Feedback"
WHEN OLD."returned" IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'returned feedback is not changed'); END;
-- Fires too when the hand-in, its exercise, its group or its bead is deleted and would take the feedback along.
CREATE TRIGGER "Feedback_no_delete" BEFORE DELETE ON "Feedback"
WHEN OLD."returned" IS NOT NULL
BEGIN SELECT RAISE(ABORT, 'returned feedback is not deleted'); END;
CREATE TRIGGER "ShopCriteria_no_delete" BEFORE DELETE ON "ShopCriteria"
BEGIN SELECT RAISE(ABORT, 'a version of criteria is not deleted'); END;
-- INSERT OR REPLACE takes the old row out without asking the triggers above, so it is met at the insert.
CREATE TRIGGER "LogEntry_no_replace" BEFORE INSERT ON "LogEntry"
WHEN EXISTS (SELECT 1 FROM "LogEntry" WHERE "seq" = NEW."seq" OR "hash" = NEW."hash")
BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
CREATE TRIGGER "SignedRevision_no_replace" BEFORE INSERT ON "SignedRevision"
WHEN EXISTS (SELECT 1 FROM "SignedRevision" WHERE "id" = NEW."id" OR ("inspectionId" = NEW."inspectionId" AND "revision" = NEW."revision"))
BEGIN SELECT RAISE(ABORT, 'a signed record is not changed'); END;
CREATE TRIGGER "Feedback_no_replace" BEFORE INSERT ON "Feedback"
WHEN EXISTS (SELECT 1 FROM "Feedback" WHERE "handInId" = NEW."handInId" AND "returned" IS NOT NULL)
BEGIN SELECT RAISE(ABORT, 'returned feedback is not changed'); END;
CREATE TRIGGER "ShopCriteria_no_replace" BEFORE INSERT ON "ShopCriteria"
WHEN EXISTS (SELECT 1 FROM "ShopCriteria" WHERE "id" = NEW."id" OR ("key" = NEW."key" AND "version" = NEW."version"))
BEGIN SELECT RAISE(ABORT, 'a version of criteria is not changed'); END;
