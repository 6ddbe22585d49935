-- CreateTable
CREATE TABLE "SigningKey" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "algorithm" TEXT NOT NULL,
    "publicKey" TEXT NOT NULL,
    "origin" TEXT NOT NULL,
    "holder" TEXT NOT NULL,
    "personId" TEXT,
    "from" TEXT NOT NULL,
    "reason" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "KeyEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "keyId" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "whose" TEXT,
    CONSTRAINT "KeyEvent_keyId_fkey" FOREIGN KEY ("keyId") REFERENCES "SigningKey" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SealedKey" (
    "keyId" TEXT NOT NULL PRIMARY KEY,
    "box" JSONB NOT NULL,
    "lockedAt" TEXT NOT NULL,
    "lockedBy" TEXT NOT NULL,
    CONSTRAINT "SealedKey_keyId_fkey" FOREIGN KEY ("keyId") REFERENCES "SigningKey" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "KeySignature" (
    "subject" TEXT NOT NULL PRIMARY KEY,
    "digest" TEXT NOT NULL,
    "keyId" TEXT NOT NULL,
    "algorithm" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "headSeq" INTEGER,
    "headHash" TEXT,
    "signature" TEXT NOT NULL
);

-- CreateIndex
CREATE INDEX "SigningKey_personId_idx" ON "SigningKey"("personId");

-- CreateIndex
CREATE INDEX "KeyEvent_keyId_idx" ON "KeyEvent"("keyId");

-- Keys and signatures are written once; what becomes of a key stands beside it. Only whose the owner says a key is may be
-- emptied: it may be a name. INSERT OR REPLACE takes a row out without asking, so it is met at the insert.
CREATE TRIGGER "SigningKey_no_update" BEFORE UPDATE ON "SigningKey"
BEGIN SELECT RAISE(ABORT, 'a key is not changed'); END;
CREATE TRIGGER "SigningKey_no_delete" BEFORE DELETE ON "SigningKey"
BEGIN SELECT RAISE(ABORT, 'a key is not deleted'); END;
CREATE TRIGGER "SigningKey_no_replace" BEFORE INSERT ON "SigningKey"
WHEN EXISTS (SELECT 1 FROM "SigningKey" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'a key is not changed'); END;
CREATE TRIGGER "KeyEvent_no_update" BEFORE UPDATE OF "id", "keyId", "what", "at", "reason" ON "KeyEvent"
BEGIN SELECT RAISE(ABORT, 'what became of a key is not changed'); END;
CREATE TRIGGER "KeyEvent_no_delete" BEFORE DELETE ON "KeyEvent"
BEGIN SELECT RAISE(ABORT, 'what became of a key is not deleted'); END;
CREATE TRIGGER "KeyEvent_no_replace" BEFORE INSERT ON "KeyEvent"
WHEN EXISTS (SELECT 1 FROM "KeyEvent" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'what became of a key is not changed'); END;
CREATE TRIGGER "KeySignature_no_update" BEFORE UPDATE ON "KeySignature"
BEGIN SELECT RAISE(ABORT, 'a signature is not changed'); END;
CREATE TRIGGER "KeySignature_no_delete" BEFORE DELETE ON "KeySignature"
BEGIN SELECT RAISE(ABORT, 'a signature is not deleted'); END;
CREATE TRIGGER "KeySignature_no_replace" BEFORE INSERT ON "KeySignature"
WHEN EXISTS (SELECT 1 FROM "KeySignature" WHERE "subject" = NEW."subject")
BEGIN SELECT RAISE(ABORT, 'a signature is not changed'); END;
