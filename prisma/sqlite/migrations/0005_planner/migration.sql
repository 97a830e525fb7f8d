-- CreateTable
CREATE TABLE "PlanPin" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "batchId" TEXT NOT NULL,
    "taskKey" TEXT NOT NULL,
    "startAt" DATETIME NOT NULL,
    "personId" TEXT,
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "PlanPin_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PlanPin_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OperationPlanning" (
    "operationId" TEXT NOT NULL PRIMARY KEY,
    "setUpMinutes" REAL NOT NULL,
    "personId" TEXT,
    "skill" TEXT,
    "leastPieceMinutes" REAL,
    "mostPieces" INTEGER,
    "resourceId" TEXT,
    "resourceShare" TEXT NOT NULL,
    "holdsUntil" TEXT NOT NULL,
    "remedyMinutes" REAL,
    CONSTRAINT "OperationPlanning_operationId_fkey" FOREIGN KEY ("operationId") REFERENCES "RouteOperation" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "OperationPlanning_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "OperationPlanning_resourceId_fkey" FOREIGN KEY ("resourceId") REFERENCES "Resource" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CalendarEntry" (
    "uid" TEXT NOT NULL PRIMARY KEY,
    "sequence" INTEGER NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "isCancelled" BOOLEAN NOT NULL,
    "body" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "Resource" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "capacity" INTEGER NOT NULL,
    "openFromMinute" INTEGER,
    "openToMinute" INTEGER,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "ResourceChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "resourceId" TEXT NOT NULL,
    "fromOn" TEXT NOT NULL,
    "toOn" TEXT NOT NULL,
    "capacity" INTEGER NOT NULL,
    "reason" TEXT NOT NULL,
    CONSTRAINT "ResourceChange_resourceId_fkey" FOREIGN KEY ("resourceId") REFERENCES "Resource" ("id") ON DELETE CASCADE ON UPDATE CASCADE
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
    "releaseOn" TEXT,
    "weight" REAL NOT NULL DEFAULT 1,
    "orderNote" TEXT NOT NULL,
    "orderNumber" TEXT NOT NULL DEFAULT '',
    "openedAt" DATETIME NOT NULL,
    "findings" JSONB,
    "rulesVersion" INTEGER,
    "finishedAt" DATETIME,
    CONSTRAINT "Batch_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Batch" ("dueOn", "findings", "finishedAt", "id", "lastSeq", "number", "openedAt", "orderNote", "orderNumber", "quantity", "revisionId", "rulesVersion", "status") SELECT "dueOn", "findings", "finishedAt", "id", "lastSeq", "number", "openedAt", "orderNote", "orderNumber", "quantity", "revisionId", "rulesVersion", "status" FROM "Batch";
DROP TABLE "Batch";
ALTER TABLE "new_Batch" RENAME TO "Batch";
CREATE UNIQUE INDEX "Batch_number_key" ON "Batch"("number");
CREATE INDEX "Batch_status_number_idx" ON "Batch"("status", "number");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "PlanPin_batchId_taskKey_key" ON "PlanPin"("batchId", "taskKey");

-- CreateIndex
CREATE UNIQUE INDEX "Resource_name_key" ON "Resource"("name");

-- CreateIndex
CREATE INDEX "ResourceChange_resourceId_idx" ON "ResourceChange"("resourceId");
