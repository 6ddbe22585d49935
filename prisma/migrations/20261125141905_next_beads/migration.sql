-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Bead" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "welder" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "revision" INTEGER NOT NULL DEFAULT 1,
    "setup" JSONB NOT NULL,
    "judgement" JSONB NOT NULL,
    "previousId" TEXT,
    CONSTRAINT "Bead_previousId_fkey" FOREIGN KEY ("previousId") REFERENCES "Bead" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Bead" ("createdAt", "id", "judgement", "number", "revision", "setup", "title", "updatedAt", "welder") SELECT "createdAt", "id", "judgement", "number", "revision", "setup", "title", "updatedAt", "welder" FROM "Bead";
DROP TABLE "Bead";
ALTER TABLE "new_Bead" RENAME TO "Bead";
CREATE UNIQUE INDEX "Bead_number_key" ON "Bead"("number");
CREATE INDEX "Bead_createdAt_idx" ON "Bead"("createdAt");
CREATE INDEX "Bead_previousId_idx" ON "Bead"("previousId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
