-- CreateTable
CREATE TABLE "Scale" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "greatestN" REAL NOT NULL,
    "checkedOn" TEXT,
    "note" TEXT NOT NULL,
    "isArchived" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "PullMix" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "seriesId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "adhesiveMaterialId" TEXT,
    "adhesiveLotCode" TEXT NOT NULL,
    "sheet" JSONB,
    "mixedAt" DATETIME,
    "setAt" DATETIME,
    "note" TEXT NOT NULL,
    "batchMixId" TEXT,
    CONSTRAINT "PullMix_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PullMix_batchMixId_fkey" FOREIGN KEY ("batchMixId") REFERENCES "Mix" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PullSpecimen" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "seriesId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "mixId" TEXT NOT NULL,
    "condition" TEXT NOT NULL,
    "depthMm" REAL NOT NULL,
    "pullOrder" INTEGER NOT NULL,
    "pieceId" TEXT,
    "anchorId" TEXT,
    "setAt" DATETIME,
    CONSTRAINT "PullSpecimen_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PullSpecimen_mixId_fkey" FOREIGN KEY ("mixId") REFERENCES "PullMix" ("id") ON DELETE NO ACTION ON UPDATE CASCADE,
    CONSTRAINT "PullSpecimen_pieceId_fkey" FOREIGN KEY ("pieceId") REFERENCES "Piece" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "PullChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "seriesId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "pullId" TEXT,
    "at" DATETIME NOT NULL,
    "personId" TEXT,
    "kind" TEXT NOT NULL,
    "before" JSONB,
    "after" JSONB,
    CONSTRAINT "PullChange_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PullChange_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Calibration" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "woodMaterialId" TEXT NOT NULL,
    "adhesiveMaterialId" TEXT NOT NULL,
    "wireMaterialId" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "status" TEXT NOT NULL,
    "acceptedAt" DATETIME NOT NULL,
    "personId" TEXT,
    "body" JSONB NOT NULL,
    "note" TEXT NOT NULL,
    "endedAt" DATETIME,
    "endedReason" TEXT,
    CONSTRAINT "Calibration_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_PullSeries" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "plan" JSONB NOT NULL,
    "batchId" TEXT,
    "status" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "closedAt" DATETIME,
    CONSTRAINT "PullSeries_batchId_fkey" FOREIGN KEY ("batchId") REFERENCES "Batch" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_PullSeries" ("createdAt", "id", "name", "status") SELECT "createdAt", "id", "name", "status" FROM "PullSeries";
DROP TABLE "PullSeries";
ALTER TABLE "new_PullSeries" RENAME TO "PullSeries";
CREATE INDEX "PullSeries_status_idx" ON "PullSeries"("status");
CREATE TABLE "new_Pull" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "seriesId" TEXT NOT NULL,
    "specimenId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "loadN" REAL,
    "isLowerBound" BOOLEAN NOT NULL,
    "mode" TEXT NOT NULL,
    "leftDamage" BOOLEAN NOT NULL,
    "angleDeg" REAL NOT NULL,
    "pulledAt" DATETIME NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    "personId" TEXT,
    "releasedAt" DATETIME,
    "cureHours" REAL,
    "scaleId" TEXT,
    "scaleName" TEXT,
    "scaleGreatestN" REAL,
    "scaleCheckedOn" TEXT,
    "excludedReason" TEXT,
    "excludedNote" TEXT NOT NULL,
    "excludedAt" DATETIME,
    "excludedPersonId" TEXT,
    "photoName" TEXT,
    "photoType" TEXT,
    "note" TEXT NOT NULL,
    CONSTRAINT "Pull_seriesId_fkey" FOREIGN KEY ("seriesId") REFERENCES "PullSeries" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Pull_specimenId_fkey" FOREIGN KEY ("specimenId") REFERENCES "PullSpecimen" ("id") ON DELETE NO ACTION ON UPDATE CASCADE,
    CONSTRAINT "Pull_personId_fkey" FOREIGN KEY ("personId") REFERENCES "Person" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Pull_scaleId_fkey" FOREIGN KEY ("scaleId") REFERENCES "Scale" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Pull" ("excludedReason", "id", "isLowerBound", "loadN", "note", "personId", "pulledAt", "seriesId") SELECT "excludedReason", "id", "isLowerBound", "loadN", "note", "personId", "pulledAt", "seriesId" FROM "Pull";
DROP TABLE "Pull";
ALTER TABLE "new_Pull" RENAME TO "Pull";
CREATE UNIQUE INDEX "Pull_key_key" ON "Pull"("key");
CREATE INDEX "Pull_specimenId_idx" ON "Pull"("specimenId");
CREATE UNIQUE INDEX "Pull_seriesId_number_key" ON "Pull"("seriesId", "number");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "Scale_name_key" ON "Scale"("name");

-- CreateIndex
CREATE UNIQUE INDEX "PullMix_seriesId_name_key" ON "PullMix"("seriesId", "name");

-- CreateIndex
CREATE UNIQUE INDEX "PullSpecimen_seriesId_code_key" ON "PullSpecimen"("seriesId", "code");

-- CreateIndex
CREATE UNIQUE INDEX "PullSpecimen_seriesId_pullOrder_key" ON "PullSpecimen"("seriesId", "pullOrder");

-- CreateIndex
CREATE UNIQUE INDEX "PullChange_seriesId_number_key" ON "PullChange"("seriesId", "number");

-- CreateIndex
CREATE UNIQUE INDEX "Calibration_woodMaterialId_adhesiveMaterialId_wireMaterialId_version_key" ON "Calibration"("woodMaterialId", "adhesiveMaterialId", "wireMaterialId", "version");
