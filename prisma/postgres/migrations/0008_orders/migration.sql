-- AlterTable
ALTER TABLE "BenchException" ADD COLUMN     "opensHours" BOOLEAN NOT NULL DEFAULT false;

-- CreateTable
CREATE TABLE "StockOrder" (
    "id" TEXT NOT NULL,
    "materialId" TEXT NOT NULL,
    "quantityMilli" BIGINT NOT NULL,
    "quantityUnit" TEXT NOT NULL,
    "expectedOn" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "StockOrder_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "StockOrder_materialId_idx" ON "StockOrder"("materialId");

-- AddForeignKey
ALTER TABLE "StockOrder" ADD CONSTRAINT "StockOrder_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material"("id") ON DELETE CASCADE ON UPDATE CASCADE;
