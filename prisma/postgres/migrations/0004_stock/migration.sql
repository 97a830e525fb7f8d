-- AlterTable
ALTER TABLE "Batch" ADD COLUMN     "orderNumber" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "Piece" ADD COLUMN     "orderNumber" TEXT;

-- AlterTable
ALTER TABLE "Material" ADD COLUMN     "leadTimeDays" INTEGER,
ADD COLUMN     "packPriceMinor" INTEGER,
ADD COLUMN     "packQuantity" DOUBLE PRECISION,
ADD COLUMN     "reorderPoint" DOUBLE PRECISION,
ADD COLUMN     "stockUnit" TEXT;

-- AlterTable
ALTER TABLE "Lot" ADD COLUMN     "isUsedUp" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "lastOrder" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "movedMilli" BIGINT NOT NULL DEFAULT 0,
ADD COLUMN     "priceMinor" INTEGER,
ADD COLUMN     "sheetFile" TEXT,
ADD COLUMN     "sheetName" TEXT,
ADD COLUMN     "sheetOn" TEXT;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN     "labourPerHourMinor" INTEGER,
ADD COLUMN     "marginShare" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "StockMovement" (
    "id" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "order" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "quantityMilli" BIGINT NOT NULL,
    "leftMilli" BIGINT NOT NULL,
    "reason" TEXT NOT NULL,
    "batchId" TEXT,
    "mixId" TEXT,
    "personId" TEXT,
    "priceMinor" INTEGER,
    "correctsId" TEXT,
    "key" TEXT NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "StockMovement_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "StockMovement_key_key" ON "StockMovement"("key");

-- CreateIndex
CREATE INDEX "StockMovement_batchId_idx" ON "StockMovement"("batchId");

-- CreateIndex
CREATE INDEX "StockMovement_mixId_idx" ON "StockMovement"("mixId");

-- CreateIndex
CREATE INDEX "StockMovement_correctsId_idx" ON "StockMovement"("correctsId");

-- CreateIndex
CREATE UNIQUE INDEX "StockMovement_lotId_order_key" ON "StockMovement"("lotId", "order");

-- CreateIndex
CREATE INDEX "Lot_isUsedUp_materialId_idx" ON "Lot"("isUsedUp", "materialId");

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "StockMovement" ADD CONSTRAINT "StockMovement_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "StockMovement"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
