-- The log and the signed records are written once. The hashes find a change made behind the program's back;
-- these triggers stop one made by mistake.
CREATE TRIGGER "LogEntry_no_update" BEFORE UPDATE ON "LogEntry"
BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
CREATE TRIGGER "LogEntry_no_delete" BEFORE DELETE ON "LogEntry"
BEGIN SELECT RAISE(ABORT, 'the log is append-only'); END;
CREATE TRIGGER "SignedRevision_no_update" BEFORE UPDATE ON "SignedRevision"
BEGIN SELECT RAISE(ABORT, 'a signed record is not changed'); END;
CREATE TRIGGER "SignedRevision_no_delete" BEFORE DELETE ON "SignedRevision"
BEGIN SELECT RAISE(ABORT, 'a signed record is not deleted'); END;
CREATE TRIGGER "Feedback_returned_is_frozen" BEFORE UPDATE ON "Feedback"
WHEN OLD."returned" IS NOT NULL AND (NEW."returned" IS NOT OLD."returned" OR NEW."digest" IS NOT OLD."digest" OR NEW."returnedAt" IS NOT OLD."returnedAt")
BEGIN SELECT RAISE(ABORT, 'returned feedback is not changed'); END;
CREATE TRIGGER "ShopCriteria_no_update" BEFORE UPDATE OF "key", "version", "content" ON "ShopCriteria"
BEGIN SELECT RAISE(ABORT, 'a version of criteria is not changed'); END;
