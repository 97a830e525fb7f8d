-- CreateTable
CREATE TABLE "StockOrder" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "materialId" TEXT NOT NULL,
    "quantityMilli" BIGINT NOT NULL,
    "quantityUnit" TEXT NOT NULL,
    "expectedOn" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "StockOrder_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_BenchException" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT,
    "onDate" TEXT NOT NULL,
    "fromMinute" INTEGER,
    "toMinute" INTEGER,
    "opensHours" BOOLEAN NOT NULL DEFAULT false,
    "reason" TEXT NOT NULL,
    CONSTRAINT "BenchException_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
INSERT INTO "new_BenchException" ("fromMinute", "id", "onDate", "personId", "reason", "toMinute") SELECT "fromMinute", "id", "onDate", "personId", "reason", "toMinute" FROM "BenchException";
DROP TABLE "BenchException";
ALTER TABLE "new_BenchException" RENAME TO "BenchException";
CREATE INDEX "BenchException_onDate_idx" ON "BenchException"("onDate");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "StockOrder_materialId_idx" ON "StockOrder"("materialId");
