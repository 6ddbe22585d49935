-- DropIndex
DROP INDEX "SavedSetup_name_key";

-- AlterTable
ALTER TABLE "Exercise" ADD COLUMN "codeSince" DATETIME;

-- AlterTable
ALTER TABLE "SavedSetup" ADD COLUMN "ownerId" TEXT;

-- CreateTable
CREATE TABLE "SecondFactor" (
    "userId" TEXT NOT NULL PRIMARY KEY,
    "secret" TEXT NOT NULL,
    "recovery" JSONB NOT NULL,
    "lastStep" INTEGER NOT NULL DEFAULT 0,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "SecondFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "SavedSetup_ownerId_name_idx" ON "SavedSetup"("ownerId", "name");
