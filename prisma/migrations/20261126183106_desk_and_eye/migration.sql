-- AlterTable
ALTER TABLE "Feedback" ADD COLUMN "seenAt" DATETIME;

-- AlterTable
ALTER TABLE "Phrase" ADD COLUMN "ownerId" TEXT;

-- CreateTable
CREATE TABLE "EyeRound" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT,
    "setKey" TEXT NOT NULL,
    "content" JSONB NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "finishedAt" DATETIME
);

-- CreateIndex
CREATE INDEX "EyeRound_personId_idx" ON "EyeRound"("personId");

-- CreateIndex
CREATE INDEX "EyeRound_setKey_idx" ON "EyeRound"("setKey");
