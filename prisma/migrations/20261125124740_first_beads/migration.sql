-- CreateTable
CREATE TABLE "Bead" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "welder" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "setup" JSONB NOT NULL,
    "judgement" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "Photo" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "beadId" TEXT NOT NULL,
    "sha256" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "format" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "widthPx" INTEGER NOT NULL,
    "heightPx" INTEGER NOT NULL,
    "addedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "drawing" JSONB NOT NULL,
    CONSTRAINT "Photo_beadId_fkey" FOREIGN KEY ("beadId") REFERENCES "Bead" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SavedSetup" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "setup" JSONB NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Setting" (
    "key" TEXT NOT NULL PRIMARY KEY,
    "value" JSONB NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "Bead_number_key" ON "Bead"("number");

-- CreateIndex
CREATE INDEX "Bead_createdAt_idx" ON "Bead"("createdAt");

-- CreateIndex
CREATE INDEX "Photo_sha256_idx" ON "Photo"("sha256");

-- CreateIndex
CREATE UNIQUE INDEX "Photo_beadId_sha256_key" ON "Photo"("beadId", "sha256");

-- CreateIndex
CREATE UNIQUE INDEX "SavedSetup_name_key" ON "SavedSetup"("name");
