-- CreateTable
CREATE TABLE "DeletedBead" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "beadId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "welder" TEXT,
    "welderId" TEXT,
    "deletedAt" DATETIME NOT NULL,
    "content" TEXT
);

-- CreateIndex
CREATE INDEX "DeletedBead_beadId_idx" ON "DeletedBead"("beadId");

-- CreateIndex
CREATE INDEX "DeletedBead_number_idx" ON "DeletedBead"("number");
