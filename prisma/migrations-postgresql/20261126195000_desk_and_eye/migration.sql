-- AlterTable
ALTER TABLE "Feedback" ADD COLUMN "seenAt" TIMESTAMP(3);

-- AlterTable
ALTER TABLE "Phrase" ADD COLUMN "ownerId" TEXT COLLATE "C";

-- CreateTable
CREATE TABLE "EyeRound" (
    "id" TEXT COLLATE "C" NOT NULL,
    "personId" TEXT COLLATE "C",
    "setKey" TEXT COLLATE "C" NOT NULL,
    "content" JSONB NOT NULL,
    "startedAt" TIMESTAMP(3) NOT NULL,
    "finishedAt" TIMESTAMP(3),

    CONSTRAINT "EyeRound_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "EyeRound_personId_idx" ON "EyeRound"("personId");

-- CreateIndex
CREATE INDEX "EyeRound_setKey_idx" ON "EyeRound"("setKey");
