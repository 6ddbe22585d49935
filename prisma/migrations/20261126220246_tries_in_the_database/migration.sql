-- CreateTable
CREATE TABLE "Tries" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "times" TEXT NOT NULL,
    "until" DATETIME NOT NULL
);

-- CreateIndex
CREATE INDEX "Tries_kind_until_idx" ON "Tries"("kind", "until");

-- CreateIndex
CREATE INDEX "Tries_until_idx" ON "Tries"("until");
