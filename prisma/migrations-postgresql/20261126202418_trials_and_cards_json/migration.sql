-- AlterTable
ALTER TABLE "EyeRound" ALTER COLUMN "content" SET DATA TYPE JSON;

-- CreateTable
CREATE TABLE "Trial" (
    "id" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSON NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "personId" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Trial_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "TrialBead" (
    "trialId" TEXT COLLATE "C" NOT NULL,
    "place" INTEGER NOT NULL,
    "beadId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "TrialBead_pkey" PRIMARY KEY ("trialId","place")
);

-- CreateTable
CREATE TABLE "ProcedureCard" (
    "id" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "content" JSON NOT NULL,
    "personId" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retiredAt" TIMESTAMP(3),

    CONSTRAINT "ProcedureCard_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "CardBead" (
    "beadId" TEXT COLLATE "C" NOT NULL,
    "cardId" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "CardBead_pkey" PRIMARY KEY ("beadId")
);

-- CreateIndex
CREATE UNIQUE INDEX "Trial_number_key" ON "Trial"("number");

-- CreateIndex
CREATE INDEX "Trial_personId_idx" ON "Trial"("personId");

-- CreateIndex
CREATE UNIQUE INDEX "TrialBead_beadId_key" ON "TrialBead"("beadId");

-- CreateIndex
CREATE UNIQUE INDEX "ProcedureCard_number_key" ON "ProcedureCard"("number");

-- CreateIndex
CREATE INDEX "ProcedureCard_personId_idx" ON "ProcedureCard"("personId");

-- CreateIndex
CREATE INDEX "CardBead_cardId_idx" ON "CardBead"("cardId");

-- AddForeignKey
ALTER TABLE "TrialBead" ADD CONSTRAINT "TrialBead_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "CardBead" ADD CONSTRAINT "CardBead_cardId_fkey" FOREIGN KEY ("cardId") REFERENCES "ProcedureCard"("id") ON DELETE CASCADE ON UPDATE CASCADE;
