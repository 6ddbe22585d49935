-- CreateTable
CREATE TABLE "Trial" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "personId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "TrialBead" (
    "trialId" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "beadId" TEXT NOT NULL,

    PRIMARY KEY ("trialId", "place"),
    CONSTRAINT "TrialBead_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "Trial" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ProcedureCard" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "content" JSONB NOT NULL,
    "personId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retiredAt" DATETIME
);

-- CreateTable
CREATE TABLE "CardBead" (
    "beadId" TEXT NOT NULL PRIMARY KEY,
    "cardId" TEXT NOT NULL,
    CONSTRAINT "CardBead_cardId_fkey" FOREIGN KEY ("cardId") REFERENCES "ProcedureCard" ("id") ON DELETE CASCADE ON UPDATE CASCADE
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
