-- CreateTable
CREATE TABLE "Batch" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" INTEGER NOT NULL,
    "revisionId" TEXT NOT NULL,
    "quantity" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "lastSeq" INTEGER NOT NULL,
    "dueOn" TEXT,
    "orderNote" TEXT NOT NULL,
    "openedAt" DATETIME NOT NULL,
    "finishedAt" DATETIME,
    CONSTRAINT "Batch_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Piece" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "batchId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    CONSTRAINT "Piece_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Joint" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "pieceId" TEXT NOT NULL,
    "anchorId" TEXT NOT NULL,
    "mixId" TEXT,
    CONSTRAINT "Joint_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Joint_anchorId_fkey" FOREIGN KEY ("anchorId") REFERENCES "Anchor" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Joint_mixId_fkey" FOREIGN KEY ("mixId") REFERENCES "Mix" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Mix" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "batchId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "materialId" TEXT NOT NULL,
    "massG" REAL NOT NULL,
    "mixedAt" DATETIME NOT NULL,
    CONSTRAINT "Mix_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Mix_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MixLot" (
    "mixId" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,

    PRIMARY KEY ("mixId", "lotId"),
    CONSTRAINT "MixLot_mixId_fkey" FOREIGN KEY ("mixId") REFERENCES "Mix" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "MixLot_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BatchEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "batchId" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "key" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    "personId" TEXT,
    "kind" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    CONSTRAINT "BatchEvent_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "BatchEvent_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Plan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "madeAt" DATETIME NOT NULL,
    "fromOn" TEXT NOT NULL,
    "toOn" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "body" JSONB NOT NULL
);

-- CreateTable
CREATE TABLE "Material" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "figures" JSONB,
    "sheetRevision" TEXT NOT NULL,
    "sheetOn" TEXT,
    "note" TEXT NOT NULL,
    "isArchived" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Lot" (
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
    "createdAt" DATETIME NOT NULL,
    CONSTRAINT "Lot_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Model" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "isArchived" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Revision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "modelId" TEXT NOT NULL,
    "letter" TEXT NOT NULL,
    "frozenAt" DATETIME,
    "woodMaterialId" TEXT,
    "lengthMm" REAL NOT NULL,
    "profile" JSONB NOT NULL,
    "lineClassN" REAL,
    "note" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Revision_modelId_fkey" FOREIGN KEY ("modelId") REFERENCES "Model" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Revision_woodMaterialId_fkey" FOREIGN KEY ("woodMaterialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Anchor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "xMm" REAL,
    "shankAngleDeg" REAL,
    "wireMaterialId" TEXT,
    "wireDiameterMm" REAL,
    "bitDiameterMm" REAL,
    "drillDepthMm" REAL,
    "embedmentMm" REAL,
    "adhesiveMaterialId" TEXT,
    "hookMaterialId" TEXT,
    "splitRingMaterialId" TEXT,
    CONSTRAINT "Anchor_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Anchor_wireMaterialId_fkey" FOREIGN KEY ("wireMaterialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Anchor_adhesiveMaterialId_fkey" FOREIGN KEY ("adhesiveMaterialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Anchor_hookMaterialId_fkey" FOREIGN KEY ("hookMaterialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Anchor_splitRingMaterialId_fkey" FOREIGN KEY ("splitRingMaterialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RouteOperation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "attendedMinutes" REAL NOT NULL,
    "materialId" TEXT,
    "anchorPositions" JSONB NOT NULL,
    "caution" TEXT NOT NULL,
    CONSTRAINT "RouteOperation_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "RouteOperation_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OperationNeed" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "operationId" TEXT NOT NULL,
    "afterOperationId" TEXT NOT NULL,
    "wait" TEXT NOT NULL,
    CONSTRAINT "OperationNeed_operationId_fkey" FOREIGN KEY ("operationId") REFERENCES "RouteOperation" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "OperationNeed_afterOperationId_fkey" FOREIGN KEY ("afterOperationId") REFERENCES "RouteOperation" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BillLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "materialId" TEXT NOT NULL,
    "quantity" REAL NOT NULL,
    "quantityUnit" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    CONSTRAINT "BillLine_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "BillLine_materialId_fkey" FOREIGN KEY ("materialId") REFERENCES "Material" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Waiver" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "revisionId" TEXT NOT NULL,
    "ruleId" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "personId" TEXT,
    "grantedAt" DATETIME NOT NULL,
    CONSTRAINT "Waiver_revisionId_fkey" FOREIGN KEY ("revisionId") REFERENCES "Revision" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Waiver_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PullSeries" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "design" JSONB NOT NULL,
    "status" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Pull" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "seriesId" TEXT NOT NULL,
    "orderNumber" INTEGER NOT NULL,
    "level" JSONB NOT NULL,
    "mixId" TEXT,
    "pieceId" TEXT,
    "loadN" REAL,
    "isLowerBound" BOOLEAN NOT NULL DEFAULT false,
    "failureMode" TEXT,
    "pulledAt" DATETIME,
    "personId" TEXT,
    "excludedReason" TEXT,
    "note" TEXT NOT NULL,
    CONSTRAINT "Pull_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Pull_mixId_fkey" FOREIGN KEY ("mixId") REFERENCES "Mix" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Pull_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Pull_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Shop" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "lengthUnit" TEXT NOT NULL,
    "temperatureUnit" TEXT NOT NULL,
    "massUnit" TEXT NOT NULL,
    "forceUnit" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "temperatureProfile" JSONB NOT NULL,
    "profileToleranceC" REAL NOT NULL,
    "floorC" REAL NOT NULL,
    "ceilingC" REAL NOT NULL,
    "sensorToleranceC" REAL NOT NULL,
    "cureSensorId" TEXT,
    "demoLoadedAt" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "skills" JSONB NOT NULL,
    "isActive" BOOLEAN NOT NULL DEFAULT true,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "BenchHours" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "weekday" INTEGER NOT NULL,
    "fromMinute" INTEGER NOT NULL,
    "toMinute" INTEGER NOT NULL,
    CONSTRAINT "BenchHours_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BenchException" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT,
    "onDate" TEXT NOT NULL,
    "fromMinute" INTEGER,
    "toMinute" INTEGER,
    "reason" TEXT NOT NULL,
    CONSTRAINT "BenchException_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AccessToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "scope" TEXT NOT NULL,
    "sensorId" TEXT,
    "secretHash" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "lastUsedAt" DATETIME,
    "expiresAt" DATETIME,
    "revokedAt" DATETIME,
    CONSTRAINT "AccessToken_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ServerRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "startedAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "version" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "Sensor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Reading" (
    "sensorId" TEXT NOT NULL,
    "atMs" BIGINT NOT NULL,
    "temperatureC" REAL NOT NULL,
    "humidityPct" REAL,

    PRIMARY KEY ("sensorId", "atMs"),
    CONSTRAINT "Reading_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingImport" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "sensorId" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "fileHash" TEXT NOT NULL,
    "settings" JSONB NOT NULL,
    "rowsAccepted" INTEGER NOT NULL,
    "rowsDuplicate" INTEGER NOT NULL,
    "rowsRefused" INTEGER NOT NULL,
    "firstAtMs" BIGINT NOT NULL,
    "lastAtMs" BIGINT NOT NULL,
    "importedAt" DATETIME NOT NULL,
    CONSTRAINT "ReadingImport_sensorId_fkey" FOREIGN KEY ("sensorId") REFERENCES "Sensor" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Batch_number_key" ON "Batch"("number");

-- CreateIndex
CREATE INDEX "Batch_status_number_idx" ON "Batch"("status", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Piece_batchId_number_key" ON "Piece"("batchId", "number");

-- CreateIndex
CREATE INDEX "Joint_mixId_idx" ON "Joint"("mixId");

-- CreateIndex
CREATE UNIQUE INDEX "Joint_pieceId_anchorId_key" ON "Joint"("pieceId", "anchorId");

-- CreateIndex
CREATE UNIQUE INDEX "Mix_batchId_number_key" ON "Mix"("batchId", "number");

-- CreateIndex
CREATE INDEX "MixLot_lotId_idx" ON "MixLot"("lotId");

-- CreateIndex
CREATE UNIQUE INDEX "BatchEvent_batchId_seq_key" ON "BatchEvent"("batchId", "seq");

-- CreateIndex
CREATE UNIQUE INDEX "BatchEvent_batchId_key_key" ON "BatchEvent"("batchId", "key");

-- CreateIndex
CREATE UNIQUE INDEX "Material_name_key" ON "Material"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Lot_materialId_code_part_key" ON "Lot"("materialId", "code", "part");

-- CreateIndex
CREATE UNIQUE INDEX "Model_name_key" ON "Model"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Revision_modelId_letter_key" ON "Revision"("modelId", "letter");

-- CreateIndex
CREATE UNIQUE INDEX "Anchor_revisionId_position_key" ON "Anchor"("revisionId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "RouteOperation_revisionId_position_key" ON "RouteOperation"("revisionId", "position");

-- CreateIndex
CREATE UNIQUE INDEX "OperationNeed_operationId_afterOperationId_key" ON "OperationNeed"("operationId", "afterOperationId");

-- CreateIndex
CREATE UNIQUE INDEX "BillLine_revisionId_position_key" ON "BillLine"("revisionId", "position");

-- CreateIndex
CREATE INDEX "Waiver_revisionId_idx" ON "Waiver"("revisionId");

-- CreateIndex
CREATE UNIQUE INDEX "Pull_seriesId_orderNumber_key" ON "Pull"("seriesId", "orderNumber");

-- CreateIndex
CREATE UNIQUE INDEX "Person_name_key" ON "Person"("name");

-- CreateIndex
CREATE INDEX "BenchHours_personId_idx" ON "BenchHours"("personId");

-- CreateIndex
CREATE INDEX "BenchException_onDate_idx" ON "BenchException"("onDate");

-- CreateIndex
CREATE UNIQUE INDEX "Sensor_name_key" ON "Sensor"("name");

-- CreateIndex
CREATE INDEX "ReadingImport_sensorId_idx" ON "ReadingImport"("sensorId");
