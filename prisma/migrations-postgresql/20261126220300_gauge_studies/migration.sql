-- CreateTable
CREATE TABLE "GaugeStudy" (
    "id" TEXT COLLATE "C" NOT NULL,
    "instrumentId" TEXT COLLATE "C" NOT NULL,
    "content" JSON NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "GaugeStudy_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "GaugeStudy_instrumentId_idx" ON "GaugeStudy"("instrumentId");

-- AddForeignKey
ALTER TABLE "GaugeStudy" ADD CONSTRAINT "GaugeStudy_instrumentId_fkey" FOREIGN KEY ("instrumentId") REFERENCES "Instrument"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
