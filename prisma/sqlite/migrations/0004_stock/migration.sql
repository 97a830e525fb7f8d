-- AlterTable
ALTER TABLE "Piece" ADD COLUMN "orderNumber" TEXT;

-- AlterTable
ALTER TABLE "Material" ADD COLUMN "leadTimeDays" INTEGER;
ALTER TABLE "Material" ADD COLUMN "packPriceMinor" INTEGER;
ALTER TABLE "Material" ADD COLUMN "packQuantity" REAL;
ALTER TABLE "Material" ADD COLUMN "reorderPoint" REAL;
ALTER TABLE "Material" ADD COLUMN "stockUnit" TEXT;

-- AlterTable
ALTER TABLE "Shop" ADD COLUMN "labourPerHourMinor" INTEGER;
ALTER TABLE "Shop" ADD COLUMN "marginShare" REAL;

-- CreateTable
CREATE TABLE "StockMovement" (
    "id" TEXT NOT NULL PRIMARY KEY,
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
    "at" DATETIME NOT NULL,
    CONSTRAINT "StockMovement_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StockMovement_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "StockMovement_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "StockMovement_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "StockMovement" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Batch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "revisionId" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "lastSeq" INTEGER NOT NULL,
    "dueOn" TEXT,
    "orderNote" TEXT NOT NULL,
    "orderNumber" TEXT NOT NULL DEFAULT '',
    "openedAt" DATETIME NOT NULL,
    "findings" JSONB,
    "rulesVersion" INTEGER,
    "finishedAt" DATETIME,
    CONSTRAINT "Batch_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Batch" ("dueOn", "findings", "finishedAt", "id", "lastSeq", "number", "openedAt", "orderNote", "quantity", "revisionId", "rulesVersion", "status") SELECT "dueOn", "findings", "finishedAt", "id", "lastSeq", "number", "openedAt", "orderNote", "quantity", "revisionId", "rulesVersion", "status" FROM "Batch";
DROP TABLE "Batch";
ALTER TABLE "new_Batch" RENAME TO "Batch";
CREATE UNIQUE INDEX "Batch_number_key" ON "Batch"("number");
CREATE INDEX "Batch_status_number_idx" ON "Batch"("status", "number");
CREATE TABLE "new_Lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "materialId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "part" TEXT NOT NULL,
    "quantity" REAL NOT NULL,
    "quantityUnit" TEXT NOT NULL,
    "receivedOn" TEXT NOT NULL,
    "openedOn" TEXT,
    "expiresOn" TEXT,
    "supplierNote" TEXT NOT NULL,
    "priceMinor" INTEGER,
    "sheetName" TEXT,
    "sheetFile" TEXT,
    "sheetOn" TEXT,
    "movedMilli" BIGINT NOT NULL DEFAULT 0,
    "lastOrder" INTEGER NOT NULL DEFAULT 0,
    "isUsedUp" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Lot_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Lot" ("code", "createdAt", "expiresOn", "id", "materialId", "openedOn", "part", "quantity", "quantityUnit", "receivedOn", "supplierNote") SELECT "code", "createdAt", "expiresOn", "id", "materialId", "openedOn", "part", "quantity", "quantityUnit", "receivedOn", "supplierNote" FROM "Lot";
DROP TABLE "Lot";
ALTER TABLE "new_Lot" RENAME TO "Lot";
CREATE INDEX "Lot_isUsedUp_materialId_idx" ON "Lot"("isUsedUp", "materialId");
CREATE UNIQUE INDEX "Lot_materialId_code_part_key" ON "Lot"("materialId", "code", "part");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

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
