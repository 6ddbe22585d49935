-- DropIndex
DROP INDEX "SavedSetup_name_key";

-- AlterTable
ALTER TABLE "Exercise" ADD COLUMN "codeSince" TIMESTAMP(3);

-- AlterTable
ALTER TABLE "SavedSetup" ADD COLUMN "ownerId" TEXT COLLATE "C";

-- CreateTable
CREATE TABLE "SecondFactor" (
    "userId" TEXT COLLATE "C" NOT NULL,
    "secret" TEXT COLLATE "C" NOT NULL,
    "recovery" JSON NOT NULL,
    "lastStep" INTEGER NOT NULL DEFAULT 0,
    "confirmed" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "SecondFactor_pkey" PRIMARY KEY ("userId")
);

-- CreateIndex
CREATE INDEX "SavedSetup_ownerId_name_idx" ON "SavedSetup"("ownerId", "name");

-- AddForeignKey
ALTER TABLE "SecondFactor" ADD CONSTRAINT "SecondFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User"("id") ON DELETE CASCADE ON UPDATE CASCADE;
