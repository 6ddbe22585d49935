-- CreateTable
CREATE TABLE "Tries" (
    "id" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "times" TEXT COLLATE "C" NOT NULL,
    "until" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Tries_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "Tries_kind_until_idx" ON "Tries"("kind", "until");

-- CreateIndex
CREATE INDEX "Tries_until_idx" ON "Tries"("until");
